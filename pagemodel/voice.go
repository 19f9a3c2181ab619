package pagemodel

import "fmt"

// Voice is what the time of a reading is reckoned from. The zero Voice stands for
// [UsualVoice].
type Voice struct {
	Syllables float64 `json:"syllables"` // a minute
	LineEnd   float64 `json:"line_end"`  // seconds of silence at a line's end
	RunOn     float64 `json:"run_on"`    // and where the line runs on
	Stanza    float64 `json:"stanza"`    // and at a stanza's end
	Title     float64 `json:"title"`     // seconds for a title and the silence after it
	Words     float64 `json:"words"`     // of talk, a minute
}

// UsualVoice is the voice of somebody who has not been timed. A line of ten
// syllables is spoken in 3.25 s, between the 3.0 and 3.5 s of the median line in
// performance (after Fabb 2013): that is 185 syllables a minute, where prose is read
// at 250 (Crystal 1988, at second hand). Talk runs at 150 words a minute, of the 125
// to 150 that are usual (Lucas 2004, at second hand). The silences are our own
// choice; at a line's end, within the 0.2 to 1.0 s of pauses in reading (Campione
// and Véronis 2002).
func UsualVoice() Voice {
	return Voice{Syllables: 185, LineEnd: 0.3, RunOn: 0.15, Stanza: 0.9, Title: 2, Words: 150}
}

// Voice is the author's, the usual one where none was set.
func (c *Collection) Voice() Voice {
	if c.voice == (Voice{}) {
		return UsualVoice()
	}
	return c.voice
}

// SetVoice sets what the time of a reading is reckoned from; the zero Voice goes
// back to the usual one.
type SetVoice struct {
	Voice Voice `json:"voice"`
}

// Kind is "voice".
func (SetVoice) Kind() string { return "voice" }

// Label says what it does.
func (SetVoice) Label() string { return "change the voice" }

// Apply sets it.
func (e SetVoice) Apply(c *Collection) (*Collection, error) {
	if e.Voice == c.voice || e.Voice == UsualVoice() && c.voice == (Voice{}) {
		return c, nil
	}
	if e.Voice != (Voice{}) {
		if err := e.Voice.check(); err != nil {
			return nil, err
		}
	}
	return c.with(func(d *Collection) { d.voice = e.Voice }), nil
}

func (v Voice) check() error {
	if !(v.Syllables >= 30 && v.Syllables <= 1000 && v.Words >= 20 && v.Words <= 600) {
		return fmt.Errorf("nobody reads %g syllables or says %g words a minute: write from 30 to 1000 syllables, from 20 to 600 words", v.Syllables, v.Words)
	}
	for _, seconds := range []float64{v.LineEnd, v.RunOn, v.Stanza, v.Title} {
		if !(seconds >= 0 && seconds <= 60) {
			return fmt.Errorf("a silence of %g seconds is none: write from 0 to 60", seconds)
		}
	}
	return nil
}
