package typeset_test

import (
	"fmt"
	"slices"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// stanzas is a poem to build: its head and how many lines each stanza has, each
// line one row.
type stanzas struct {
	head  pagemodel.PoemHead
	lines []int
}

// stanzasOf is a book of such poems.
func stanzasOf(d pagemodel.Design, poems ...stanzas) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	for _, p := range poems {
		var all []pagemodel.Stanza
		for _, n := range p.lines {
			var lines []pagemodel.Line
			for range n {
				lines = append(lines, b.Line(oneRow[0]))
			}
			all = append(all, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(p.head, []pagemodel.Part{pagemodel.NewPart("", all)})
	}
	return b.Collection()
}

// poemOf is a poem of one stanza without a title, or of several.
func poemOf(form pagemodel.Form, lines ...int) []stanzas {
	return []stanzas{{pagemodel.PoemHead{Form: form}, lines}}
}

// TestJudge holds the judge to pages scored by hand. A page has 7 rows, a poem
// begins on the second, and one blank row stands between stanzas.
func TestJudge(t *testing.T) {
	titled := pagemodel.PoemHead{Title: "Loaf"}
	shared := pagemodel.PoemHead{Start: pagemodel.SharedPage}
	for _, tc := range []struct {
		name  string
		poems []stanzas
		ends  []int // the pieces that pages begin with, but the first
		want  typeset.Cost
	}{
		{"a page end between stanzas, on a recto, two rows short", poemOf("", 4, 4), []int{4}, typeset.Cost{Pages: 2, Unfaced: 1, Slack: 4}},
		{"one line of a quatrain left at the foot of a recto", poemOf("", 4, 4), []int{5}, typeset.Cost{Forbidden: 1, Turned: 1, AgainstRule: 1, Pages: 2, Unfaced: 1}},
		{"parted at a turn and at the gutter", poemOf("", 14), []int{6, 12}, typeset.Cost{Turned: 1, Split: 1, Pages: 3, Slack: 1}},
		{"a tercet parted", poemOf("", 3, 3), []int{4}, typeset.Cost{Forbidden: 1, Turned: 1, Pages: 2, Unfaced: 1, Slack: 1}},
		{"a pair parted", poemOf(pagemodel.Couplets, 8), []int{5}, typeset.Cost{Forbidden: 1, Turned: 1, Pages: 2, Unfaced: 1, Slack: 1}},
		{"a sestet parted 3 and 3", poemOf("", 6), []int{3}, typeset.Cost{Turned: 1, Pages: 2, Unfaced: 1, Slack: 9}},
		{"two declared sestets parted 5 and 1, and 1 and 5", poemOf(pagemodel.Sestets, 12), []int{5, 7}, typeset.Cost{Turned: 1, Split: 1, AgainstRule: 2, Pages: 3, Slack: 1 + 25}},
		{"declared quatrains parted between two", poemOf(pagemodel.Quatrains, 8), []int{4}, typeset.Cost{Turned: 1, Pages: 2, Unfaced: 1, Slack: 4}},
		{"a single line parted from the stanza above", poemOf("", 2, 1, 2), []int{2}, typeset.Cost{Forbidden: 1, Pages: 2, Unfaced: 1, Slack: 16}},
		{"six rows of stanza-less verse, then seven", poemOf(pagemodel.Stanzaless, 16), []int{6, 13}, typeset.Cost{Turned: 1, Split: 1, Pages: 3, Uneven: 1 + 2}},
		{"a title parted from its lines", []stanzas{{titled, []int{2}}}, []int{1}, typeset.Cost{Forbidden: 1, Pages: 2, Unfaced: 1, Slack: 36}},
		{"two poems on a page", []stanzas{{pagemodel.PoemHead{}, []int{2}}, {shared, []int{2}}}, nil, typeset.Cost{Pages: 1}},
	} {
		b := bookOf(typeset.NewSetter(typeset.Bundled()), stanzasOf(smallDesign(7, 1, 2, 1), tc.poems...))
		var sheets []sheet
		from := 0
		for _, end := range append(slices.Clone(tc.ends), len(b.pieces)) {
			s := b.lay(from, end)
			s.number = len(sheets) + 1
			sheets = append(sheets, s)
			from = end
		}
		if got := b.score(sheets); got != tc.want {
			t.Errorf("%s: %+v, want %+v\npages%s", tc.name, got, tc.want, sheetList(sheets))
		}
	}
}

// TestJudgeTriesEveryWay: eleven lines on pages that hold them all may end pages in
// 2^10 ways. Where the first page holds one line and the others two, there are as
// many as there are ways to climb ten stairs by one or two at a time.
func TestJudgeTriesEveryWay(t *testing.T) {
	for _, tc := range []struct{ run, want int }{{0, 1 << 10}, {-11, 89}} {
		head := pagemodel.PoemHead{Run: tc.run}
		b := bookOf(typeset.NewSetter(typeset.Bundled()), stanzasOf(smallDesign(13, 1, 2, 1), stanzas{head, []int{11}}))
		seen := map[string]bool{}
		b.everyWay(0, len(b.pieces), 1, 1, map[[2]int]sheet{}, nil, func(sheets []sheet) {
			seen[fmt.Sprint(sheetList(sheets))] = true
		})
		if len(seen) != tc.want {
			t.Errorf("pages of %d rows: %d ways, want %d", b.room(0), len(seen), tc.want)
		}
	}
}
