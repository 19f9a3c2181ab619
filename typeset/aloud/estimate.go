package aloud

import (
	"headland/pagemodel"
)

// Counts are what the time of an item is reckoned from.
type Counts struct {
	Words     int `json:"words"`     // of the text
	Syllables int `json:"syllables"` // as they are said
	Guessed   int `json:"guessed"`   // words whose syllables are guessed

	Lines   int `json:"lines"`   // of verse
	Ends    int `json:"ends"`    // of those, they end with a silence of their own
	RunOns  int `json:"run_ons"` // and they run on; the rest end stanzas
	Stanzas int `json:"stanzas"` // ends of stanzas, paragraphs and headings

	Titled    bool    `json:"titled"`
	TalkWords int     `json:"talk_words"` // said before, where their seconds are not given
	TalkGiven float64 `json:"talk_given"` // seconds of talk, where they are
}

// Estimate is the time of an item, and what it was reckoned from.
type Estimate struct {
	Counts
	Seconds float64 `json:"seconds"` // all of it
	Talk    float64 `json:"talk_s"`  // of those, what is said before
	Title   float64 `json:"title_s"` // and the title with the silence after it
}

// In is the time that the counts take in a voice.
func (c Counts) In(v pagemodel.Voice) Estimate {
	x, rates := c.vector(), ratesOf(v)
	e := Estimate{Counts: c, Title: x[TitleTime] * rates[TitleTime], Talk: c.TalkGiven + x[TalkPace]*rates[TalkPace]}
	e.Seconds = e.Talk + e.Title
	for _, k := range []Constant{Pace, LineEnd, RunOn, StanzaEnd} {
		e.Seconds += x[k] * rates[k]
	}
	return e
}

// poemOf finds a poem in the book, where it has a number, or left out of it; nil
// where it is in neither.
func poemOf(c *pagemodel.Collection, id pagemodel.PoemID) (p *pagemodel.Poem, number int) {
	if p, number, ok := c.Poem(id); ok {
		return p, number
	}
	for _, p := range c.LeftOut() {
		if p.ID() == id {
			return p, 0
		}
	}
	return nil, 0
}
