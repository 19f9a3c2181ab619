package difference

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// TestNothingGoesUntold holds that an edit of which no change is told leaves every
// glyph on every page where it was. The measure is narrow, so that many lines turn.
// The one edit left aside, which only a whole history can make, is a break of this
// edition that becomes the poem's: it prints alike, though a page may end there.
func TestNothingGoesUntold(t *testing.T) {
	design := pagemodel.DefaultDesign()
	design.Margins.Outer += pagemodel.MM(35)
	first, err := pagemodel.SetDesign{Design: design}.Apply(bakery())
	if err != nil {
		t.Fatal(err)
	}
	setter := typeset.NewSetter(typeset.Bundled())
	untold := 0
	for seed := range uint64(3000) {
		r := chooser{rand.New(rand.NewPCG(seed, 99))}
		was := r.history(first, 6)
		edit := r.edit(first, was)
		is, err := edit.Apply(was)
		if err != nil || is == was || len(Between(was, is)) > 0 {
			continue
		}
		untold++
		if before, after := inked(setter.Set(nil, was)), inked(setter.Set(nil, is)); before != after {
			t.Errorf("history %d: nothing is told of %T %+v, which prints otherwise", seed, edit, edit)
		}
	}
	if untold < 100 {
		t.Errorf("only %d edits went untold: too few to say anything", untold)
	}
}

// inked is every glyph of a book and where it stands.
func inked(s *typeset.Setting) string {
	var b strings.Builder
	for n := 1; n <= s.Extent(); n++ {
		p := s.Page(n)
		fmt.Fprintln(&b, "page", n, p.Folio)
		for i := range p.Rows {
			row := &p.Rows[i]
			fmt.Fprintln(&b, row.X, row.Baseline)
			for _, run := range row.Runs {
				fmt.Fprintln(&b, run.X, run.Size, run.Glyphs)
			}
		}
	}
	return b.String()
}
