package pagemodel

import (
	"slices"
	"testing"
)

// TestInEdition: what parts the lines belongs to none of them, and what is said of
// the line's head or foot is said of the first or the last of them.
func TestInEdition(t *testing.T) {
	l := NewLine(7, "the long line of the poem").WithSpans([]Span{{4, 13, Italic}}).WithIndent(500).WithRange(RangeRight)
	l = l.WithGap(9, 2000).WithGap(17, 1000).WithDropped(true).WithAbove(2).WithOpensPage(true).WithTied(true)
	if got := l.InEdition(); len(got) != 1 || got[0].Text() != l.Text() {
		t.Errorf("without breaks it is %+v", got)
	}
	l.breaks = []int{9, 21}
	lines := l.InEdition()
	var texts []string
	for _, p := range lines {
		texts = append(texts, p.Text())
		if p.ID() != 7 || p.Indent() != 500 || p.Range() != RangeRight || len(p.Breaks()) != 0 {
			t.Errorf("%+v is not set as the line", p)
		}
	}
	if want := []string{"the long", "line of the", "poem"}; !slices.Equal(texts, want) {
		t.Fatalf("the lines are %q, want %q", texts, want)
	}
	first, second, last := lines[0], lines[1], lines[2]
	if !first.Dropped() || first.Above() != 2 || !first.OpensPage() || first.Tied() {
		t.Errorf("the first is %+v", first)
	}
	if second.Dropped() || second.Above() != 0 || second.OpensPage() || second.Tied() {
		t.Errorf("the second is %+v", second)
	}
	if !slices.Equal(second.Gaps(), []Gap{{At: 8, Width: 1000}}) {
		t.Errorf("the second's gaps are %v: the one at the break goes with the white, the other stays", second.Gaps())
	}
	if !slices.Equal(first.Spans(), []Span{{4, 8, Italic}}) || !slices.Equal(second.Spans(), []Span{{0, 4, Italic}}) {
		t.Errorf("the styles are %v and %v", first.Spans(), second.Spans())
	}
	if last.Dropped() || !last.Tied() {
		t.Errorf("the last is %+v", last)
	}
}
