package typeset

import "headland/pagemodel"

// runningHead sets what stands over a page: the one text over a verso, the
// other over a recto, in small capitals of four fifths of the verse's size, its
// baseline one line and a half above the text, over the folio's edge. It is
// false where there is nothing to say, where the head margin has no room, and
// where the text is wider than the measure: a shorter title mends that.
//
// A running head never stands over the opening of a poem, a section or a piece
// of matter (New Hart's Rules 1.3; from memory): whoever calls sees to it.
func (s *Setting) runningHead(p *Page, verso, recto string) (Row, bool) {
	d := &s.design
	text := verso
	if p.Side == pagemodel.Recto {
		text = recto
	}
	text = oneLine(text)
	if text == "" || d.Margins.Head < 2*d.Leading {
		return Row{}, false
	}
	run := s.setter.Words(text, WordStyle{Family: d.Face, Size: d.Size * 4 / 5, SmallCaps: true})
	if run.Width > p.Text.W {
		return Row{}, false
	}
	return Row{
		Role: RoleRunning, X: p.Text.X + besideText(p, run.Width, d.Folios == pagemodel.FolioCentre),
		Baseline: p.Text.Y - d.Leading*3/2, Width: run.Width, Room: p.Text.W, End: len(text), Runs: []Run{run},
	}, true
}

// runningTexts are what stands over the verso and the recto of a poem in a
// section; section is "" where the book has none, and the book's title then
// stands for it.
func runningTexts(heads pagemodel.RunningHeads, about pagemodel.About, section, poem string) (verso, recto string) {
	if section == "" {
		section = about.Title
	}
	switch heads {
	case pagemodel.PoetAndBook:
		return about.Poet, about.Title
	case pagemodel.BookAndSection:
		return about.Title, section
	case pagemodel.SectionAndPoem:
		return section, poem
	}
	return "", ""
}
