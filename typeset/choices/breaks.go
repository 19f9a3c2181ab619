package choices

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// breaks are the breaks in the poem and in this edition, and taking back those
// that this edition has.
func (f *finder) breaks() {
	all := places(f.line.Text())
	widths := make([]brokenAt, 0, len(all))
	fits := false
	for _, at := range all {
		if b, ok := f.breakAt(pagemodel.InPoem, at); ok {
			widths = append(widths, b)
			fits = fits || b.fits
		}
	}
	var threes [][]int
	several := 0
	if !fits && f.overrun > 0 {
		threes, several = f.threes(widths)
	}
	f.breakInThree(pagemodel.InPoem, threes, several)
	for _, at := range all {
		f.breakAt(pagemodel.InEdition, at)
	}
	f.breakInThree(pagemodel.InEdition, threes, several)
	if whole := f.whole(); whole != nil {
		if tried, ok := f.try(whole[0]); ok {
			f.tell(Choice{Head: InEdition, Title: "as one line", Edit: whole[0]}, tried, f.ref.Line)
		}
	}
}

// breakAt tells of one break.
func (f *finder) breakAt(in pagemodel.In, at ...int) (brokenAt, bool) {
	c := Choice{Head: headOf(in), Title: "before " + titled(f.line.Text(), at), At: at, Edit: f.breaking(in, at)}
	tried, ok := f.try(c.Edit)
	if !ok {
		return brokenAt{}, false
	}
	lines := []pagemodel.LineID{f.ref.Line}
	if in == pagemodel.InEdition {
		c.Parts = f.piecesOf(at)
	} else {
		lines = f.linesAt(tried, len(at)+1)
	}
	f.tell(c, tried, lines...)
	told := &f.all[len(f.all)-1]
	if in == pagemodel.InPoem {
		f.remember(told)
	}
	return widthsOf(told), true
}

func headOf(in pagemodel.In) Head {
	if in == pagemodel.InEdition {
		return InEdition
	}
	return InPoem
}

// breaking is the edit that breaks the line at just those places. The last is
// broken first, so that the others stay where they are.
func (f *finder) breaking(in pagemodel.In, at []int) pagemodel.Edit {
	first := f.whole()
	if in == pagemodel.InEdition {
		first = f.undecided()
	}
	if len(at) == 1 {
		return after(first, pagemodel.Break{LineRef: f.ref, At: at[0], In: in})
	}
	e := steps{Edits: first[:len(first):len(first)], label: "break a line in three"}
	for _, o := range slices.Backward(at) {
		e.Edits = append(e.Edits, pagemodel.Break{LineRef: f.ref, At: o, In: in})
	}
	return e
}

// linesAt are so many lines of the poem from where the line stood.
func (f *finder) linesAt(tried *look, n int) []pagemodel.LineID {
	p, _, _ := tried.Collection().Poem(f.ref.Poem)
	var ids []pagemodel.LineID
	for _, l := range p.Stanza(f.at).Lines()[f.at.Line : f.at.Line+n] {
		ids = append(ids, l.ID())
	}
	return ids
}

// piecesOf are the parts that breaks of this edition make. What they overrun is
// what the poem's own breaks there overrun: but for lines with tab stops, they are
// set alike.
func (f *finder) piecesOf(at []int) []Part {
	var parts []Part
	for _, span := range f.spans(at) {
		text := strings.TrimRightFunc(f.line.Text()[span[0]:span[1]], pagemodel.IsSpace)
		parts = append(parts, Part{Text: text, Overrun: f.pieces[span]})
	}
	return parts
}

// overrunAsSet has parts that breaks of this edition make overrun only where they
// do as set. A line with a tab stop may not be tightened, while the part that a
// break in the poem takes from it may; the part then overruns by what is carried
// over.
func overrunAsSet(parts []Part, rows []typeset.Row) {
	carried, part := make([]typeset.Length, len(parts)), -1
	for i := range rows {
		row := &rows[i]
		if row.Turn != typeset.Turnover {
			part++
		}
		if part < len(parts) && (row.Turn == typeset.Turnover || row.Width > row.Room) {
			carried[part] += row.Width
		}
	}
	for i := range parts {
		if parts[i].Overrun == 0 || carried[i] == 0 {
			parts[i].Overrun = carried[i]
		}
	}
}

// spans are the offsets between which the parts stand.
func (f *finder) spans(at []int) [][2]int {
	var spans [][2]int
	start := 0
	for _, o := range append(slices.Clone(at), len(f.line.Text())) {
		spans = append(spans, [2]int{start, o})
		start = o
	}
	return spans
}

// heard is how the parts of a break in the poem sound, and what they echo.
type heard struct {
	parts  []Part
	echoes []string
}

// remember keeps of a break in the poem what one of this edition shares with it.
func (f *finder) remember(c *Choice) {
	f.heard[fmt.Sprint(c.At)] = heard{c.Parts, c.Echoes}
	for i, span := range f.spans(c.At) {
		if i < len(c.Parts) {
			f.pieces[span] = c.Parts[i].Overrun
		}
	}
}

// heardBefore fills in how a break of this edition sounds: as one in the poem does
// at the same places, where the parts have the same words.
func (f *finder) heardBefore(c *Choice) bool {
	if c.Head != InEdition || len(c.At) == 0 {
		return false
	}
	h := f.heard[fmt.Sprint(c.At)]
	if !slices.EqualFunc(h.parts, c.Parts, func(a, b Part) bool { return a.Text == b.Text }) {
		return false
	}
	for i, p := range h.parts {
		p.Overrun = c.Parts[i].Overrun
		c.Parts[i] = p
	}
	c.Echoes = h.echoes
	return true
}

func fits(parts []Part) bool {
	return !slices.ContainsFunc(parts, func(p Part) bool { return p.Overrun > 0 })
}
