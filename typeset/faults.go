package typeset

import "headland/pagemodel"

// FaultKind is what is wrong, as reports name it.
type FaultKind string

// The faults that the setting finds. What is unsettled is not among them: see
// [Setting.Turnovers].
const (
	MissingGlyph FaultKind = "missing-glyph" // the face has no such character
	AbsentFace   FaultKind = "absent-face"   // the design's face, or one of its styles, is not here
	OverMeasure  FaultKind = "over-measure"  // a word wider than the measure
	SplitStanza  FaultKind = "split-stanza"  // a stanza parted at the gutter
	TurnedStanza FaultKind = "turned-stanza" // a stanza parted at a turn of the leaf
)

// Fault is one thing that somebody should look at.
type Fault struct {
	Kind FaultKind
	Poem pagemodel.PoemID // 0 where it is of the whole book
	Page int              // 0 where it is of the whole book
	Row  int              // among the page's rows of the poet's words, from 1; 0 for none
	Text string           // in words
}

// poemFault is a fault before it is known which page it is on.
type poemFault struct {
	kind FaultKind
	line pagemodel.LineID
	page int // within the poem, from 0
	row  int
	text string
}

// words says what the fault is.
func (f *poemFault) words() string {
	switch f.kind {
	case MissingGlyph:
		return "the face has no “" + f.text + "”"
	case AbsentFace:
		return "the family has no face for the style of “" + f.text + "”"
	case OverMeasure:
		return "“" + f.text + "” is wider than the measure"
	case SplitStanza:
		return "the page ends within a stanza, before “" + f.text + "”"
	}
	return f.text
}

// findFaults looks through the finished pages of a poem.
func (s *poemSetting) findFaults(noted []poemFault) {
	for _, f := range noted {
		if f.line == 0 {
			s.faults = append(s.faults, f)
		}
	}
	for page, rows := range s.pages {
		for i := range rows {
			s.faultsOf(noted, &rows[i], page)
		}
		if len(rows) > 0 && page > 0 && s.opensWithin(page) {
			s.faults = append(s.faults, poemFault{kind: SplitStanza, page: page, row: rows[0].Number, text: rowText(&rows[0])})
		}
	}
}

func (s *poemSetting) faultsOf(noted []poemFault, r *Row, page int) {
	for _, f := range noted {
		if f.line != 0 && f.line == r.Line {
			f.page, f.row = page, r.Number
			s.faults = append(s.faults, f)
		}
	}
	if r.Line != 0 && r.Width > r.Room {
		s.faults = append(s.faults, poemFault{kind: OverMeasure, line: r.Line, page: page, row: r.Number, text: rowText(r)})
	}
}

func rowText(r *Row) string {
	text := ""
	for i, run := range r.Runs {
		if i > 0 && run.X > r.Runs[i-1].X+r.Runs[i-1].Width {
			text += " "
		}
		text += run.Text
	}
	return text
}
