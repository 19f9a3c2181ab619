package aloud

import "headland/pagemodel"

// A Constant is one of the numbers that make a voice.
type Constant int

// The constants, in the order of [pagemodel.Voice].
const (
	Pace      Constant = iota // of the text
	LineEnd                   // the silence at a line's end
	RunOn                     // and where the line runs on
	StanzaEnd                 // and at a stanza's end
	TitleTime                 // for a title
	TalkPace                  // of what is said between

	constants
)

var constantNames = [constants]string{
	"the pace", "the silence at a line’s end", "the silence where a line runs on", "the silence at a stanza’s end",
	"the time for a title", "the pace of talk",
}

// String is the constant in words.
func (k Constant) String() string { return constantNames[k] }

// vector has a number for each constant: counts, or seconds for one of these.
type vector [constants]float64

// vector is how often each constant comes into the time.
func (c Counts) vector() vector {
	titles := 0
	if c.Titled {
		titles = 1
	}
	return vector{
		Pace: float64(c.Syllables), LineEnd: float64(c.Ends), RunOn: float64(c.RunOns), StanzaEnd: float64(c.Stanzas),
		TitleTime: float64(titles), TalkPace: float64(c.TalkWords),
	}
}

// ratesOf are a voice's constants in seconds.
func ratesOf(v pagemodel.Voice) vector {
	v = orUsual(v)
	return vector{
		Pace: 60 / v.Syllables, LineEnd: v.LineEnd, RunOn: v.RunOn, StanzaEnd: v.Stanza,
		TitleTime: v.Title, TalkPace: 60 / v.Words,
	}
}

// orUsual is a voice, the usual one for the zero Voice.
func orUsual(v pagemodel.Voice) pagemodel.Voice {
	if v == (pagemodel.Voice{}) {
		return pagemodel.UsualVoice()
	}
	return v
}

// withRate is a voice with one constant changed, in seconds.
func withRate(v pagemodel.Voice, k Constant, seconds float64) pagemodel.Voice {
	switch k {
	case Pace:
		v.Syllables = 60 / seconds
	case LineEnd:
		v.LineEnd = seconds
	case RunOn:
		v.RunOn = seconds
	case StanzaEnd:
		v.Stanza = seconds
	case TitleTime:
		v.Title = seconds
	case TalkPace:
		v.Words = 60 / seconds
	}
	return v
}

// times is the seconds of counts at those rates.
func (r vector) times(counts vector) (seconds float64) {
	for k := range r {
		seconds += r[k] * counts[k]
	}
	return seconds
}
