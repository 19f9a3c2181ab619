package ui

import (
	"slices"

	"headland/pagemodel"
)

// matterSheet is the leaf on which the prelims and the end matter are made up,
// with the book's title and poet. Each change is the book's at once, one step
// of the history; what is being typed is shown on the page and is the book's
// when the line is left.
type matterSheet struct {
	w     *Window
	leaf  *leaf
	at    matterPlace
	rows  []matterPlace
	page  int // that the kind at hand begins on, 0 for none
	typed *typing
}

// matterPlace is a row of the sheet by what it says.
type matterPlace struct {
	part matterPart
	kind pagemodel.MatterKind // of a page, its heading and its lines
	line int                  // of a page's text, from 0
}

// matterPart is what a row of the sheet is about.
type matterPart int

const (
	bookName matterPart = iota
	bookPoet
	matterPage    // whether the page is in the book
	matterHeading // its heading
	matterLine    // a line of its text, or the one after the last
	matterRoman
	matterParts
	matterAlphabet
)

const (
	matterHelp = "↑ ↓ to a row · ← → puts a page in or takes it out · type or Enter writes a line · Esc lifts the sheet"
	lineHelp   = "Type the line · Enter keeps it and goes on to the next · Esc puts it back"
)

// askMatter lays the sheet of the prelims and the end matter.
func (w *Window) askMatter() {
	w.desk.settleHand()
	if _, only := w.session.ReadOnly(); only {
		w.desk.tell(readOnlyWords)
		return
	}
	s := &matterSheet{w: w, at: matterPlace{part: matterPage, kind: pagemodel.MatterKinds[0]}}
	s.leaf = newLeaf(w, "Prelims and end matter", s, 32)
	s.show()
	s.leaf.lay()
	s.open()
	s.show()
}

// matter is the prelims and end matter as the book has them.
func (s *matterSheet) matter() pagemodel.Matter { return s.w.session.Collection().Matter() }

// places are the rows of the sheet. The page at hand has its heading and its
// lines below it.
func (s *matterSheet) places() []matterPlace {
	all := []matterPlace{{part: bookName}, {part: bookPoet}}
	for _, kind := range pagemodel.MatterKinds {
		all = append(all, matterPlace{part: matterPage, kind: kind})
		page, in := s.matter().Page(kind)
		if !in || kind != s.at.kind {
			continue
		}
		all = append(all, matterPlace{part: matterHeading, kind: kind})
		lines := len(page.Text)
		if s.typed != nil && s.at.part == matterLine {
			lines = max(lines, s.at.line) // white may lie above a line that is begun
		}
		for i := range lines + 1 {
			all = append(all, matterPlace{matterLine, kind, i})
		}
	}
	return append(all, matterPlace{part: matterRoman}, matterPlace{part: matterParts}, matterPlace{part: matterAlphabet})
}

// show draws the sheet as it is now.
func (s *matterSheet) show() {
	s.rows = s.places()
	at := max(0, slices.Index(s.rows, s.at))
	s.at = s.rows[at]
	rows := make([]leafRow, len(s.rows))
	for i, p := range s.rows {
		rows[i] = s.rowOf(p)
	}
	rows[at].typed = s.typed
	s.leaf.rows, s.leaf.at = rows, at
	s.leaf.side = s.leaf.facing()
	s.leaf.show(rows, nil)
	s.leaf.walk(at)
	help := matterHelp
	if s.typed != nil {
		help = lineHelp
	}
	s.w.desk.tell(help)
}

// goTo puts another row at hand, and opens the book at its page.
func (s *matterSheet) goTo(row int) {
	was := s.at
	s.at = s.rows[max(0, min(row, len(s.rows)-1))]
	if s.at.kind != was.kind {
		s.open()
	}
	s.show()
}

// open opens the book at the page at hand.
func (s *matterSheet) open() {
	s.page = 0
	if page, ok := s.w.session.Setting().PageOfMatter(s.at.kind); ok {
		s.page = page
		s.w.desk.showPage(page)
	}
}

// step puts a page in or takes it out, or changes how all are set.
func (s *matterSheet) step(row, _ int) {
	s.keep()
	p, m := s.rows[min(row, len(s.rows)-1)], s.matter()
	s.at = p
	switch _, in := m.Page(p.kind); p.part {
	case matterPage:
		if in {
			m = m.Without(p.kind)
		} else {
			m = m.With(pagemodel.MatterPage{Kind: p.kind})
		}
	case matterRoman:
		m.Roman = !m.Roman
	case matterParts:
		m.Parts = !m.Parts
	case matterAlphabet:
		m.Alphabet = 1 - m.Alphabet
	}
	s.do(pagemodel.SetMatter{Matter: m})
	s.open()
	s.show()
}

// do does an edit and says why if it can't be done.
func (s *matterSheet) do(e pagemodel.Edit) {
	s.leaf.said = ""
	if err := s.w.session.Do(e); err != nil {
		s.leaf.said = errorWords(err) + "."
	}
	s.w.desk.forgetGlimpse()
}
