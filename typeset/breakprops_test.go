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
var everything = said{poems: 4, pieces: 12, overrules: true, forms: true, starts: true, heads: true, prose: true, parts: true, runs: true}

// together is the same of poems that share pages, fewer and shorter, since all
// that hang together are judged as one.
var together = said{poems: 3, pieces: 6, overrules: true, forms: true, shares: true, heads: true, prose: true, parts: true, runs: true}

// TestBestPageEnds: no other way to end the pages is better than the setting's,
// none that is as good fills the first pages more, and the setting knows what its
// page ends cost.
func TestBestPageEnds(t *testing.T) {
	for name, what := range map[string]said{
		"plain":          {poems: 3, pieces: 14},
		"forms":          {poems: 3, pieces: 14, forms: true, runs: true},
		"starts":         {poems: 4, pieces: 10, starts: true, heads: true, forms: true},
		"overrules":      {poems: 3, pieces: 14, overrules: true, parts: true},
		"everything":     everything,
		"shared":         {poems: 3, pieces: 7, shares: true},
		"shared, others": together,
	} {
		t.Run(name, func(t *testing.T) {
			setter := typeset.NewSetter(typeset.Bundled())
			rapid.Check(t, func(t *rapid.T) { judged(t, setter, drawBook(t, what)) })
		})
	}
}

// fataler is a test, or a draw of one.
type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

// judged sets a collection and has the judge look at it. It gives the finished
// pages.
func judged(t fataler, setter *typeset.Setter, c *pagemodel.Collection) ([]sheet, typeset.Cost) {
	t.Helper()
	b, s := bookOf(setter, c), setter.Set(nil, c)
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
	return sheets, best.cost
}

func sameSheet(a, b sheet) bool {
	return a.number == b.number && a.from == b.from && a.to == b.to && a.depth == b.depth && slices.Equal(a.grids, b.grids)
}
