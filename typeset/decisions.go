package typeset

import (
	"strings"

	"headland/pagemodel"
)

// Decision is a line that needs one, or that somebody has decided about: an
// overlong line, one let turn, one broken in this edition, or the place at which
// the poem's own line was broken.
type Decision struct {
	Ref          pagemodel.LineRef
	Number       int // of the poem in the book, from 1
	Stanza, Line int // from 1; stanzas are counted through the poem
	Page, Row    int // of the line's first row, from 1; Row 0 where it has none
	Text         string
	Overrun      Length          // by how much the line exceeds its room, 0 where it fits
	State        pagemodel.State // as the setting sees it
	InPoem       bool            // Broken, in the poem: Ref is the line that was broken, Made the one that the break made
	Made         pagemodel.LineRef
	Asleep       bool   // let turn, and not turning now
	Why          string // why a line that was let turn is unsettled again, in words; else ""
	On           string // the day, ISO 8601; "" where nobody noted it
	Reason       string
	Shown        bool // the reason may go out
}

// Decisions are every overlong line and every line that somebody decided about,
// in the order of the pages. Those that are unsettled are as many as
// [Setting.Unsettled] counts. A break in the poem is one as long as both lines
// that it made are there; its reason is that of the line that was broken.
func (s *Setting) Decisions() []Decision {
	var all []Decision
	for number, p := range s.collection.Poems() {
		i, _ := s.collection.IndexOf(p.ID())
		all = append(all, s.decisionsIn(i, number, p)...)
	}
	return all
}

// decisionsIn are those of one poem, which stands at an entry of the order.
func (s *Setting) decisionsIn(entry, number int, p *pagemodel.Poem) []Decision {
	own := s.entries.At(entry)
	made := madeIn(p)
	var all []Decision
	for at, l := range p.Lines() {
		t := own.overlongAt(l.ID())
		lines := made[l.ID()]
		if t == nil && l.State() == pagemodel.Unsettled && len(lines) == 0 {
			continue
		}
		d := Decision{
			Ref: pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}, Number: number,
			Stanza: p.StanzaNumber(at), Line: at.Line + 1, Text: l.Text(),
			State: l.State(), On: l.On(), Reason: l.Reason(), Shown: l.Shown(),
		}
		d.Page, d.Row = s.rowAt(entry, max(0, own.unitOf(l.ID())))
		if t != nil {
			d.Overrun, d.State, d.Why = t.overrun, t.state, t.why
		}
		d.Asleep = d.State == pagemodel.Kept && (t == nil || t.words == "")
		if t != nil || l.State() != pagemodel.Unsettled {
			all = append(all, d)
		}
		for _, m := range lines {
			all = append(all, d.breakInPoem(m))
		}
	}
	return all
}

// breakInPoem is the decision that made a line of its own, where d is about the
// line that was broken.
func (d Decision) breakInPoem(made pagemodel.Line) Decision {
	d.State, d.InPoem, d.Asleep, d.Why = pagemodel.Broken, true, false, ""
	d.Made, d.On = pagemodel.LineRef{Poem: d.Ref.Poem, Line: made.ID()}, made.From().On
	return d
}

// madeIn are the lines of a poem that breaks made, by the line that was broken.
func madeIn(p *pagemodel.Poem) map[pagemodel.LineID][]pagemodel.Line {
	made := map[pagemodel.LineID][]pagemodel.Line{}
	for _, l := range p.Lines() {
		if from := l.From(); from != nil {
			made[from.Line] = append(made[from.Line], l)
		}
	}
	return made
}

// StateOf is what has been done about a line, as the setting sees it, and why a
// line that was let turn is unsettled again, in words; "" for any other. A line
// broken in this edition is settled only if no piece of it still turns. A line
// that is not in the book is unsettled.
func (s *Setting) StateOf(ref pagemodel.LineRef) (pagemodel.State, string) {
	if t := s.overlong(ref); t != nil {
		return t.state, t.why
	}
	p, at, err := s.collection.Line(ref)
	if err != nil {
		return pagemodel.Unsettled, ""
	}
	return p.Line(at).State(), ""
}

// TurnWords are the words at which the line turns as it is set now, a space
// between them; "" where it does not turn. A word is what stands between two
// spaces, without the signs around it that are neither letters nor digits; of a
// word that is parted after a dash or hyphen it is what is carried over.
func (s *Setting) TurnWords(ref pagemodel.LineRef) string {
	if t := s.overlong(ref); t != nil {
		return t.words
	}
	return ""
}

// overlong is what the setting noted of a line that exceeds its room, or nil.
func (s *Setting) overlong(ref pagemodel.LineRef) *overlong {
	if i, ok := s.collection.IndexOf(ref.Poem); ok {
		return s.entries.At(i).overlongAt(ref.Line)
	}
	return nil
}

func (s *poemSetting) overlongAt(line pagemodel.LineID) *overlong {
	for i := range s.turned {
		if s.turned[i].line == line {
			return &s.turned[i]
		}
	}
	return nil
}

// settled is the state of a line that exceeds its room and turns at those words,
// and why a line that was let turn is unsettled again. It is so only if it turned
// at other words then; where nobody noted them it stays settled, and so it does
// while it does not turn, whatever was noted.
func settled(f *fitted, words string) (pagemodel.State, string) {
	state := f.line.State()
	switch was := f.line.Turned(); {
	case state == pagemodel.Broken && f.turned:
		return pagemodel.Unsettled, ""
	case state != pagemodel.Kept || words == "" || was == "" || sameWords(was, words):
		return state, ""
	default:
		return pagemodel.Unsettled, "It turned at " + quotedWords(was) + " when you let it turn; now it turns at " + quotedWords(words) + "."
	}
}

// quotedWords are words with a space between them, as they are read: “and” and
// “curtain”.
func quotedWords(words string) string {
	all := strings.Split(words, " ")
	for i, w := range all {
		all[i] = "“" + w + "”"
	}
	if n := len(all); n > 1 {
		return strings.Join(all[:n-1], ", ") + " and " + all[n-1]
	}
	return all[0]
}
