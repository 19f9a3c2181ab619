package choices

import (
	"fmt"
	"slices"

	"headland/pagemodel"
)

// Space that means something: how far a line begins from the left, white within
// it, white above it, and, in drop.go, whether it begins where the line above
// ended. Each is told of like a break.

// mostIndents is how many indents are shown: those that the poem has come first.
const mostIndents = 6

// gapWidth is the white that a choice puts into a line.
const gapWidth = 2 * pagemodel.OneEm

// mostWhite is how many lines of white above a line are shown.
const mostWhite = 2

// shape are the choices of space, for any line.
func (f *finder) shape() {
	f.indents()
	f.drop()
	f.white()
	f.gaps()
}

// indents are no indent, those of the poem's other lines, and one and two ems. A
// line that is centred or dropped does not begin at its indent.
func (f *finder) indents() {
	if f.line.Range() == pagemodel.RangeCentre || f.line.Dropped() {
		return
	}
	all := []pagemodel.Em{0}
	for _, l := range f.poem.Lines() {
		all = append(all, l.Indent())
	}
	all = append(all, pagemodel.OneEm, 2*pagemodel.OneEm)
	var shown []pagemodel.Em
	for _, e := range all {
		if e != f.line.Indent() && !slices.Contains(shown, e) && len(shown) < mostIndents {
			shown = append(shown, e)
		}
	}
	slices.Sort(shown)
	for _, e := range shown {
		title := fmt.Sprintf("indented by %v", e)
		if e == 0 {
			title = "not indented"
		}
		f.choose(title, pagemodel.Indent{LineRef: f.ref, To: e})
	}
}

// white is lines of white above the line. A poem's first line has none.
func (f *finder) white() {
	if f.at == (pagemodel.Place{}) {
		return
	}
	for n := 0; n <= mostWhite; n++ {
		if n == f.line.Above() {
			continue
		}
		title := counted(n, "line") + " of white above"
		if n == 0 {
			title = "no white above"
		}
		e := pagemodel.SetAbove{LineRef: f.ref, Lines: n}
		tried, ok := f.try(e)
		if !ok {
			continue
		}
		c := Choice{Head: Space, Title: title, Edit: e}
		if n > 0 && tried.beginsPage(f.ref) {
			c.Says = append(c.Says, "a page begins with the line, and the white is not seen")
		}
		f.tell(c, tried, f.ref.Line)
	}
}

// gaps are white before each word, or where there is a gap or a tab, none.
func (f *finder) gaps() {
	text := f.line.Text()
	for i, w := range pagemodel.Words(text) {
		if i == 0 {
			continue
		}
		word := titled(text, []int{w.Start})
		switch g := slices.IndexFunc(f.line.Gaps(), func(g pagemodel.Gap) bool { return g.At == w.Start }); {
		case g < 0:
			f.choose(fmt.Sprintf("a gap of %v before %s", gapWidth, word), pagemodel.SetGap{LineRef: f.ref, At: w.Start, Width: gapWidth})
		case f.line.Gaps()[g].Tab:
			f.choose("no tab before "+word, pagemodel.SetTab{LineRef: f.ref, At: w.Start})
		default:
			f.choose("no gap before "+word, pagemodel.SetGap{LineRef: f.ref, At: w.Start})
		}
	}
}
