package typeset

import (
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// runningBook is a section with a poem of three pages, and long notes.
func runningBook(t *testing.T, heads pagemodel.RunningHeads) *Setting {
	b := bakery()
	b.Section("Ovens", nil)
	lines := make([]pagemodel.Line, 3*testDesign().Rows()-10)
	for i := range lines {
		lines[i] = b.Line("the dough comes up in the dark")
	}
	b.Poem(pagemodel.PoemHead{Title: "On the Rising of the Dough", Short: "Dough"}, []pagemodel.Part{
		pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)}),
	})
	c := b.Collection()
	d := c.Design()
	d.Running = heads
	c = mustApply(t, c, pagemodel.SetDesign{Design: d})
	text := slices.Repeat([]string{strings.Repeat("crust and crumb ", 6)}, 20)
	return setOf(withMatter(t, c, pagemodel.Matter{}.With(pagemodel.MatterPage{Kind: pagemodel.NotesPage, Text: text})))
}

// TestRunningHeads: never over a page that begins something, nor over a blank:
// the section's page 1, the blank 2, the poem's first page 3, the blank 6, the
// first of the notes 7.
func TestRunningHeads(t *testing.T) {
	for heads, want := range map[pagemodel.RunningHeads][]string{
		pagemodel.HeadsOff:       {"", "", "", "", "", "", "", ""},
		pagemodel.PoetAndBook:    {"", "", "", "Ada Field", "The Night Oven", "", "", "Notes"},
		pagemodel.BookAndSection: {"", "", "", "The Night Oven", "Ovens", "", "", "Notes"},
		pagemodel.SectionAndPoem: {"", "", "", "Ovens", "Dough", "", "", "Notes"},
	} {
		s := runningBook(t, heads)
		var got []string
		for n := 1; n <= s.Extent(); n++ {
			text := ""
			for _, r := range rowsOfRole(s.Page(n), RoleRunning) {
				text += rowText(&r)
			}
			got = append(got, text)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%v: %q, want %q", heads, got, want)
		}
	}
}

// TestRunningHeadsPlace: at the outer edge, a line and a half above the text, in
// type of four fifths; none where the head margin is less than two lines.
func TestRunningHeadsPlace(t *testing.T) {
	s := runningBook(t, pagemodel.PoetAndBook)
	for n := 4; n <= 5; n++ {
		p := s.Page(n)
		r := rowsOfRole(p, RoleRunning)[0]
		edge, at := p.Text.X, r.X
		if p.Side == pagemodel.Recto {
			edge, at = p.Text.X+p.Text.W, r.X+r.Width
		}
		if at != edge || r.Baseline != p.Text.Y-s.design.Leading*3/2 || r.Runs[0].Size != s.design.Size*4/5 {
			t.Errorf("page %d: its edge is at %v, want %v; baseline %v; size %v", n, at, edge, r.Baseline, r.Runs[0].Size)
		}
	}
	d := s.design
	d.Margins.Head = 2*d.Leading - 1
	low := setOf(mustApply(t, s.collection, pagemodel.SetDesign{Design: d}))
	for n := 1; n <= low.Extent(); n++ {
		if len(rowsOfRole(low.Page(n), RoleRunning)) != 0 {
			t.Errorf("page %d has a running head where there is no room", n)
		}
	}
}
