package typeset_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
	"headland/typeset"
)

// everything is all that a poet can say, of a book as large as the judge can
// bear.
var everything = said{poems: 4, pieces: 12, overrules: true, forms: true, starts: true, heads: true, prose: true, parts: true, runs: true, white: true}

// together is the same of poems that share pages, fewer and shorter, since all
// that hang together are judged as one.
var together = said{poems: 3, pieces: 6, overrules: true, forms: true, shares: true, heads: true, prose: true, parts: true, runs: true, white: true}

// TestBestPageEnds: no other way to end the pages is better than the setting's,
// none that is as good fills the first pages more, and the setting knows what its
// page ends cost.
func TestBestPageEnds(t *testing.T) {
	for name, what := range map[string]said{
		"plain":          {poems: 3, pieces: 14},
		"forms":          {poems: 3, pieces: 14, forms: true, runs: true},
		"starts":         {poems: 4, pieces: 10, starts: true, heads: true, forms: true},
		"overrules":      {poems: 3, pieces: 14, overrules: true, parts: true},
		"white":          {poems: 3, pieces: 14, parts: true, heads: true, prose: true, white: true},
		"everything":     everything,
		"shared":         {poems: 3, pieces: 7, shares: true},
		"shared, others": together,
		"spreads":        {poems: 3, pieces: 10, overrules: true, forms: true, starts: true, runs: true, parts: true, spreads: true, white: true},
	} {
		t.Run(name, func(t *testing.T) {
			setter := typeset.NewSetter(typeset.Bundled())
			rapid.Check(t, func(t *rapid.T) {
				c := drawBook(t, what)
				judge(t, bookOf(setter, c), setter.Set(nil, c))
			})
		})
	}
}

// fataler is a test, or a draw of one.
type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// judge compares the pages of a setting with the best that there are, and what it
// says that they cost with what they do.
func judge(t fataler, b *book, s *typeset.Setting) {
	t.Helper()
	sheets, err := b.finished(s)
	if err != nil {
		t.Fatalf("%v\n%v", err, b)
	}
	if cost := b.score(sheets); cost != s.Cost() {
		t.Fatalf("the pages cost %+v; the setting says %+v\npages%s\n%v", cost, s.Cost(), sheetList(sheets), b)
	}
	best := b.best()
	if best.cost != s.Cost() {
		t.Fatalf("the best pages cost %+v, the setting's %+v\nbest%s\nset %s\n%v", best.cost, s.Cost(), sheetList(best.sheets), sheetList(sheets), b)
	}
	if !slices.EqualFunc(best.sheets, sheets, sameSheet) {
		t.Fatalf("other pages of the same cost %+v\nbest%s\nset %s\n%v", best.cost, sheetList(best.sheets), sheetList(sheets), b)
	}
}

func sameSheet(a, b sheet) bool {
	return a.number == b.number && a.from == b.from && a.to == b.to && a.depth == b.depth && slices.Equal(a.grids, b.grids)
}

// TestBestAfterEdits: after every one of some random edits of what bears on page
// ends, the book set on from the setting before has the best page ends.
func TestBestAfterEdits(t *testing.T) {
	setter := typeset.NewSetter(typeset.Bundled())
	what := said{poems: 4, pieces: 5, overrules: true, forms: true, starts: true, shares: true, heads: true, parts: true, runs: true, white: true}
	rapid.Check(t, func(t *rapid.T) {
		c := drawBook(t, what)
		s := setter.Set(nil, c)
		for range rapid.IntRange(1, 5).Draw(t, "edits") {
			next, err := drawPageEdit(t, c).Apply(c)
			if err != nil {
				continue
			}
			c, s = next, setter.Set(s, next)
			judge(t, bookOf(setter, c), s)
		}
	})
}

// drawPageEdit is a random edit of what bears on page ends.
func drawPageEdit(t *rapid.T, c *pagemodel.Collection) pagemodel.Edit {
	var poems []*pagemodel.Poem
	for _, p := range c.Poems() {
		poems = append(poems, p)
	}
	p := rapid.SampledFrom(poems).Draw(t, "poem")
	var lines []pagemodel.Line
	for _, l := range p.Lines() {
		lines = append(lines, l)
	}
	at := rapid.IntRange(0, len(lines)-1).Draw(t, "line")
	ref := pagemodel.LineRef{Poem: p.ID(), Line: lines[at].ID()}
	through := lines[min(len(lines)-1, at+rapid.IntRange(1, 3).Draw(t, "through"))].ID()
	off := rapid.Bool().Draw(t, "off")
	d := c.Design()
	d.StanzaGap = 3 - d.StanzaGap
	return rapid.SampledFrom([]pagemodel.Edit{
		pagemodel.KeepTogether{LineRef: ref, Through: through, Off: off}, pagemodel.PageBreak{LineRef: ref, Off: off},
		pagemodel.SetStart{Poem: p.ID(), Start: pagemodel.Start(rapid.IntRange(0, 3).Draw(t, "start")), Blank: off},
		pagemodel.SetForm{Poem: p.ID(), Form: rapid.SampledFrom(pagemodel.Forms).Draw(t, "form")},
		pagemodel.SetRun{Poem: p.ID(), Lines: rapid.IntRange(-1, 1).Draw(t, "run")},
		pagemodel.StanzaBreak{LineRef: ref, Open: off}, pagemodel.Retype{LineRef: ref, Text: drawText(t)},
		pagemodel.Move{Poem: p.ID()}, pagemodel.Move{Poem: p.ID(), Before: poems[0].ID()}, pagemodel.SetDesign{Design: d},
	}).Draw(t, "edit")
}

// TestNoFillingIsBetter: filling page after page as far as the rules allow, which
// is what a setter does by hand, is never better, in books that are too large to
// try every way.
func TestNoFillingIsBetter(t *testing.T) {
	setter := typeset.NewSetter(typeset.Bundled())
	what := said{poems: 8, pieces: 60, overrules: true, forms: true, starts: true, shares: true, heads: true, prose: true, parts: true, runs: true, white: true}
	rapid.Check(t, func(t *rapid.T) {
		c := drawBook(t, what)
		b, s := bookOf(setter, c), setter.Set(nil, c)
		sheets, err := b.finished(s)
		if err != nil {
			t.Fatalf("%v\n%v", err, b)
		}
		filled := b.filled()
		cost := b.score(filled)
		if s.Cost() != b.score(sheets) || cost.Compare(s.Cost()) < 0 {
			t.Fatalf("filling costs %+v, the setting's pages %+v; the setting says %+v\nfilled%s\nset   %s\n%v", cost, b.score(sheets), s.Cost(), sheetList(filled), sheetList(sheets), b)
		}
	})
}

// TestDesignsAtTheirLimits: the least and the most that a design may be are set,
// every line once and in order, and what is wrong is said in words.
func TestDesignsAtTheirLimits(t *testing.T) {
	least, most := pagemodel.MM(40), pagemodel.MM(1000)
	for name, change := range map[string]func(*pagemodel.Design){
		"least trim": func(d *pagemodel.Design) {
			d.Trim.Width, d.Trim.Height, d.Margins = least, least, pagemodel.Margins{}
			d.Size, d.Leading = pagemodel.Pt(4), pagemodel.Pt(4)
		},
		"most rows": func(d *pagemodel.Design) {
			d.Trim.Width, d.Trim.Height = most, most
			d.Size, d.Leading = pagemodel.Pt(4), pagemodel.Pt(2)
		},
		"four ems of the largest type": func(d *pagemodel.Design) {
			d.Trim.Width, d.Trim.Height, d.Margins = pagemodel.Pt(4*72), most, pagemodel.Margins{}
			d.Size, d.Leading = pagemodel.Pt(72), pagemodel.Pt(200)
		},
		"deepest sink":   func(d *pagemodel.Design) { d.PoemRow = d.Rows() - 3; d.TitleRow = d.PoemRow - 1 },
		"widest gap":     func(d *pagemodel.Design) { d.StanzaGap = 8 },
		"no room for it": func(d *pagemodel.Design) { d.StanzaGap, d.PoemRow, d.TitleRow = 8, d.Rows()-3, 1 },
	} {
		d := pagemodel.DefaultDesign()
		change(&d)
		if err := d.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		allLinesOnce(t, name, stanzasOf(d,
			stanzas{pagemodel.PoemHead{Title: "Long", Run: -2}, []int{40, 1, 40}},
			stanzas{pagemodel.PoemHead{Title: "Shared", Start: pagemodel.SharedPage, Run: 2}, []int{2, 3, 4, 6}},
			stanzas{pagemodel.PoemHead{Form: pagemodel.Stanzaless, Start: pagemodel.OnVerso, Blank: true}, []int{90}},
		))
	}
}

// allLinesOnce holds that every line of a book stands on its pages once and in
// order, and that every fault has words.
func allLinesOnce(t *testing.T, name string, c *pagemodel.Collection) {
	t.Helper()
	s := typeset.NewSetter(typeset.Bundled()).Set(nil, c)
	var want, got []pagemodel.LineID
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			want = append(want, l.ID())
		}
	}
	for n := 1; n <= s.Extent(); n++ {
		for _, r := range s.Page(n).Rows {
			if r.Line != 0 && r.Start == 0 {
				got = append(got, r.Line)
			}
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("%s: %d of %d lines stand, or in another order", name, len(got), len(want))
	}
	for _, f := range s.Faults() {
		if f.Text == "" {
			t.Errorf("%s: a fault %s without words", name, f.Kind)
		}
	}
}
