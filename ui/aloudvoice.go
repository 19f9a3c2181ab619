package ui

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"headland/pagemodel"
	"headland/typeset/aloud"
)

// voiceSheet is the leaf on which the voice is set: what the times are reckoned
// from. Each change is the book's at once, one step of the history.
type voiceSheet struct {
	a     *aloudView
	leaf  *leaf
	typed *typing // what is typed for the value at hand, or nil
	fit   *aloud.Fitness
	found pagemodel.Voice // that it came to
}

// voiceValue is one constant of a voice, in words.
type voiceValue struct {
	name  string
	field func(*pagemodel.Voice) *float64
	step  float64
	unit  string
}

var voiceValues = [...]voiceValue{
	{"reads", func(v *pagemodel.Voice) *float64 { return &v.Syllables }, 5, "syllables a minute"},
	{"at a line’s end", func(v *pagemodel.Voice) *float64 { return &v.LineEnd }, 0.05, "s of silence"},
	{"where it runs on", func(v *pagemodel.Voice) *float64 { return &v.RunOn }, 0.05, "s of silence"},
	{"at a stanza’s end", func(v *pagemodel.Voice) *float64 { return &v.Stanza }, 0.1, "s of silence"},
	{"for a title", func(v *pagemodel.Voice) *float64 { return &v.Title }, 0.1, "s with its silence"},
	{"talks", func(v *pagemodel.Voice) *float64 { return &v.Words }, 5, "words a minute"},
}

// The rows below the constants.
const (
	voiceFit = len(voiceValues) + iota
	voiceUsual

	voiceRows
)

const voiceHelp = "↑ ↓ to a value · ← → change it, or type it · Enter on the last rows does them · Esc lifts the sheet, and Ctrl Z undoes"

// askVoice lays the sheet on which the voice is set.
func (a *aloudView) askVoice() {
	s := &voiceSheet{a: a}
	s.leaf = newLeaf(a.w, "The voice", s, voiceRows)
	s.show()
	s.leaf.lay()
	s.show()
}

// voice is the voice as the file has it.
func (s *voiceSheet) voice() pagemodel.Voice { return s.a.w.session.Collection().Voice() }

// rows are the constants, and what else can be done.
func (s *voiceSheet) rows() []leafRow {
	v, found := s.voice(), s.found
	rows := make([]leafRow, 0, voiceRows)
	for i, value := range voiceValues {
		row := leafRow{name: value.name, value: value.words(*value.field(&v)), steps: true}
		if i == 0 {
			row.group = "the voice"
		}
		if now := *value.field(&found); s.fit != nil && now != *value.field(&v) {
			row.value += "; fitted " + decimal(now)
		}
		rows = append(rows, row)
	}
	fit := "fit it to what was timed"
	if s.fit != nil {
		fit = "take the fitted voice"
	}
	rows = append(rows, leafRow{group: "timed", name: "run-throughs", value: fit, quiet: s.fit == nil},
		leafRow{name: "the usual", value: "back to the usual voice", quiet: true})
	if s.typed != nil {
		rows[s.leaf.at].typed = s.typed
	}
	return rows
}

// words are a constant with its unit.
func (v *voiceValue) words(n float64) string { return decimal(n) + " " + v.unit }

// decimal is a number to a hundredth at most.
func decimal(n float64) string { return strconv.FormatFloat(math.Round(n*100)/100, 'f', -1, 64) }

// foot says what the running order takes in this voice, and how far off the voice
// was.
func (s *voiceSheet) foot() []leafFoot {
	foot := []leafFoot{{left: "the running order", right: againstSlot(&s.a.plan)}}
	if s.fit == nil {
		return foot
	}
	return append(foot,
		leafFoot{left: timedWords(s.fit), right: "off by " + missWords(s.fit.Was)},
		leafFoot{left: "as fitted", right: "off by " + missWords(s.fit.Is)})
}

// timedWords say what was gone by, and what was passed over.
func timedWords(f *aloud.Fitness) string {
	words := "timed: " + counted(f.Timings, "poem", "poems")
	if f.Passed > 0 {
		words += fmt.Sprintf(", %d passed over", f.Passed)
	}
	return words
}

// missWords say how far off a voice is for what was timed.
func missWords(m aloud.Miss) string {
	return fmt.Sprintf("%s s a poem, %s s at worst", decimal1(m.Mean), decimal1(m.Worst))
}

func decimal1(n float64) string { return strconv.FormatFloat(n, 'f', 1, 64) }

// leftWords name the constants that the timings could not move.
func (s *voiceSheet) leftWords() string {
	var names []string
	for _, k := range append(append([]aloud.Constant(nil), s.fit.Unheard...), s.fit.Untold...) {
		names = append(names, k.String())
	}
	if len(names) == 0 {
		return ""
	}
	return "Left as it was, since the timings don’t tell it: " + strings.Join(names, ", ") + "."
}

// show draws the sheet as it is now.
func (s *voiceSheet) show() {
	s.leaf.side = s.leaf.facing()
	s.leaf.show(s.rows(), s.foot())
	help := voiceHelp
	if s.typed != nil {
		help = typedHelp
	}
	s.a.w.desk.tell(help)
}

// set sets the voice; what is refused is said on the sheet.
func (s *voiceSheet) set(v pagemodel.Voice) bool {
	s.leaf.said = ""
	err := s.a.w.session.Do(pagemodel.SetVoice{Voice: v})
	if err != nil {
		s.leaf.said = errorWords(err) + "."
	}
	s.a.read()
	s.show()
	return err == nil
}

// step goes to the next value.
func (s *voiceSheet) step(row, by int) {
	s.typed = nil
	if row >= len(voiceValues) {
		return
	}
	v, value := s.voice(), &voiceValues[row]
	n := value.field(&v)
	*n = (math.Round(*n/value.step) + float64(by)) * value.step
	s.set(v)
}

// press opens a value to be typed, or takes what a row offers.
func (s *voiceSheet) press(row int) {
	s.typed = nil
	switch {
	case row < len(voiceValues):
		s.typed = &typing{}
		s.show()
	case row == voiceFit:
		s.fitted()
	case row == voiceUsual:
		s.fit = nil
		s.set(pagemodel.Voice{})
	}
}

// fitted has the voice fitted to what was timed; the second time it is taken.
func (s *voiceSheet) fitted() {
	if s.fit != nil {
		s.fit = nil
		s.set(s.found)
		return
	}
	v, fit, err := s.a.w.session.FitVoice()
	switch {
	case err != nil:
		s.leaf.said = errorWords(err) + "."
	case fit.Timings == 0:
		s.leaf.said = "Nothing has been timed yet: read a running order through with the clock."
	default:
		s.found, s.fit = v, &fit
		s.leaf.said = s.leftWords()
	}
	s.show()
}
