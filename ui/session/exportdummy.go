package session

import (
	"fmt"

	"headland/typeset"
	"headland/typeset/order"
	"headland/typeset/pdf"
)

// Dummy is the book laid out to be printed at home on both sides of the paper,
// folded and held. It is made where the session is used, and may be written on
// another goroutine.
type Dummy struct {
	export *Export
	plan   order.Dummy
	labels []typeset.Run // of each side of each sheet, front and back in turn
}

// DummyOptions say what a dummy is printed on and how it is folded.
type DummyOptions struct {
	Paper   string // "A4" or "Letter"
	Section int    // pages that are folded together: see [order.Sections]; 0 is all of them
}

// Dummy lays out the committed book as a dummy. It is refused where [Session.Export]
// is, and where the paper or the sections are none.
func (s *Session) Dummy(o DummyOptions) (*Dummy, error) {
	x, err := s.Export()
	if err != nil {
		return nil, err
	}
	paper, err := order.PaperNamed(o.Paper)
	if err != nil {
		return nil, err
	}
	design := s.Collection().Design()
	plan, err := order.NewDummy(len(x.pages), design.Trim, paper, o.Section)
	if err != nil {
		return nil, err
	}
	d := &Dummy{export: x, plan: plan}
	for i := range plan.Sheets {
		for _, front := range [...]bool{true, false} {
			style := typeset.WordStyle{Family: design.Face, Size: order.LabelSize}
			d.labels = append(d.labels, s.setter.Words(plan.LabelOf(i, front), style))
		}
	}
	return d, nil
}

// Instructions say how the dummy is printed and folded, and what to look out for
// where a poem lies across a spread of two sheets.
func (d *Dummy) Instructions() string {
	said := d.plan.Instructions()
	if n := len(d.parted()); n > 0 {
		said += fmt.Sprintf("; lines cross the gutter on %s whose halves are on different sheets", counted(n, "spread"))
	}
	return said
}

// parted are the versos that a line runs over from onto a recto that is printed
// on another sheet.
func (d *Dummy) parted() []int {
	whole := map[int]bool{}
	for _, spread := range order.OneSheetSpreads(d.plan.Pages, d.plan.Section) {
		whole[spread.Verso] = true
	}
	var versos []int
	for i, page := range d.export.pages {
		if n := i + 1; n%2 == 0 && !whole[n] && runsOver(page) {
			versos = append(versos, n)
		}
	}
	return versos
}

// runsOver says that a row of a verso goes on over the spine.
func runsOver(verso *typeset.Page) bool {
	for i := range verso.Rows {
		if r := &verso.Rows[i]; !r.Turned && r.X+r.Width > verso.Trim.Width {
			return true
		}
	}
	return false
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Write writes the dummy to path as a PDF, as [Export.PDF] writes pages.
func (d *Dummy) Write(path string, progress func(done, of int) bool) error {
	x := d.export
	doc := pdf.Document{
		Title: x.about.Title, Author: x.about.Poet, Lang: languageOf(x.about), Pages: x.pages, Outline: x.outline,
	}
	for i, sheet := range d.plan.Sheets {
		doc.Sides = append(doc.Sides, d.side(i, true, sheet.Front), d.side(i, false, sheet.Back))
	}
	return x.writePDF(path, doc, progress)
}

// side is one side of sheet i.
func (d *Dummy) side(i int, front bool, pages order.Side) pdf.Side {
	at := 2 * i
	if !front {
		at++
	}
	s := pdf.Side{
		Label: d.plan.LabelOf(i, front), Paper: d.plan.Size(), Area: d.plan.Area(), Rules: d.plan.Ticks(),
		Rows: []typeset.Row{d.plan.Label(d.labels[at])},
	}
	for _, p := range [...]struct {
		page  int
		right bool
	}{{pages.Left, false}, {pages.Right, true}} {
		if d.plan.Has(p.page) {
			s.Pages = append(s.Pages, pdf.Placed{Page: p.page - 1, Corner: d.plan.Corner(p.right), Percent: d.plan.Percent})
		}
	}
	return s
}
