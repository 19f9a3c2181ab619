package pagemodel

import "testing"

func TestSetTab(t *testing.T) {
	c := testBook()
	poem, ids := wholePoem(c)
	ref := LineRef{poem, ids[0]}
	gaps := func() []Gap {
		p, at, err := c.Line(ref)
		if err != nil {
			t.Fatal(err)
		}
		return p.Line(at).Gaps()
	}
	c = mustApply(t, c, SetGap{ref, 4, 2 * OneEm})
	c = mustApply(t, c, SetTab{ref, 3, 12 * OneEm})
	if got := gaps(); len(got) != 1 || got[0] != (Gap{4, 12 * OneEm, true}) {
		t.Fatalf("a tab before the second word, where a gap was, gives %v", got)
	}
	if same := mustApply(t, c, SetTab{ref, 4, 12 * OneEm}); same != c {
		t.Error("the same tab again is another book")
	}
	old := c
	c = mustApply(t, c, SetTab{ref, 4, 0})
	if got := gaps(); len(got) != 0 {
		t.Fatalf("a tab cleared leaves %v", got)
	}
	back, err := c.With(Reversed(Between(old, c)))
	if err != nil || hashOf(back) != hashOf(old) {
		t.Errorf("the tab taken back is not there: %v", err)
	}
	for _, bad := range []SetTab{{ref, 4, -1}, {ref, 4, 61 * OneEm}, {ref, 0, OneEm}, {LineRef{poem, 999}, 4, OneEm}} {
		if _, err := bad.Apply(c); err == nil {
			t.Errorf("%+v was taken", bad)
		}
	}
}

func TestBuilderRefusesImpossibleMatter(t *testing.T) {
	b := NewBuilder(About{}, DefaultDesign())
	if err := b.Matter(Matter{Pages: []MatterPage{{Kind: "colophon"}}}); err == nil {
		t.Error("a kind that there is none of was taken")
	}
	if err := b.Matter(UsualMatter()); err != nil || len(b.Collection().Matter().Pages) != 3 {
		t.Errorf("the usual matter: %v", err)
	}
}
