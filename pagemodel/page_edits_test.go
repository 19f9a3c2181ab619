package pagemodel

import "testing"

// wholePoem is the identities of the first poem's lines, in order.
func wholePoem(c *Collection) (PoemID, []LineID) {
	_, p := firstPoem(c)
	var ids []LineID
	for _, l := range p.Lines() {
		ids = append(ids, l.ID())
	}
	return p.ID(), ids
}

func flags(t *testing.T, c *Collection, id PoemID) (tied, opens []bool) {
	t.Helper()
	p, _, _ := c.Poem(id)
	for _, l := range p.Lines() {
		tied, opens = append(tied, l.Tied()), append(opens, l.OpensPage())
	}
	return tied, opens
}

func mustApply(t *testing.T, c *Collection, e Edit) *Collection {
	t.Helper()
	next, err := e.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	return next
}

func TestKeepTogetherAndPageBreakAnswerEachOther(t *testing.T) {
	c := testBook()
	poem, ids := wholePoem(c)
	c = mustApply(t, c, KeepTogether{LineRef: LineRef{poem, ids[1]}, Through: ids[3]})
	if tied, _ := flags(t, c, poem); tied[0] || !tied[1] || !tied[2] || tied[3] {
		t.Fatalf("tied %v: the second and third line should be, through the stanza break", tied)
	}
	c = mustApply(t, c, PageBreak{LineRef: LineRef{poem, ids[2]}})
	tied, opens := flags(t, c, poem)
	if tied[1] || !tied[2] || !opens[2] {
		t.Fatalf("after a page break before the third line: tied %v, opens %v", tied, opens)
	}
	c = mustApply(t, c, KeepTogether{LineRef: LineRef{poem, ids[0]}, Through: ids[2]})
	if _, opens := flags(t, c, poem); opens[2] {
		t.Fatal("lines kept together still begin a page in their midst")
	}
	if _, err := (KeepTogether{LineRef: LineRef{poem, ids[3]}, Through: ids[0]}).Apply(c); err == nil {
		t.Fatal("lines were kept together from below to above")
	}
	if _, err := (PageBreak{LineRef: LineRef{poem, ids[0]}}).Apply(c); err == nil {
		t.Fatal("a page break before the first line was taken, which the poem's opening says")
	}
}

func TestBreakingALineLeavesPagesAsSaid(t *testing.T) {
	c := testBook()
	poem, ids := wholePoem(c)
	c = mustApply(t, c, PageBreak{LineRef: LineRef{poem, ids[1]}})
	c = mustApply(t, c, Break{LineRef: LineRef{poem, ids[1]}, At: 9})
	if _, opens := flags(t, c, poem); !opens[1] || opens[2] {
		t.Fatalf("opens %v: the head of the broken line alone should begin the page", opens)
	}
	c = mustApply(t, c, Join{LineRef: LineRef{poem, ids[1]}})
	if _, opens := flags(t, c, poem); !opens[1] || opens[2] {
		t.Fatalf("joined again, opens %v", opens)
	}
}

func TestProposedForm(t *testing.T) {
	b := NewBuilder(About{}, DefaultDesign())
	stanzas := func(lengths ...int) []Part {
		var all []Stanza
		for _, n := range lengths {
			var lines []Line
			for range n {
				lines = append(lines, b.Line("a line"))
			}
			all = append(all, NewStanza(Verse, lines))
		}
		return []Part{NewPart("", all)}
	}
	for _, c := range []struct {
		lengths []int
		want    Form
	}{
		{[]int{2, 2, 2}, Couplets}, {[]int{3, 3}, Tercets}, {[]int{4, 4, 4}, Quatrains}, {[]int{6, 6}, Sestets},
		{[]int{4, 4, 3}, NoForm}, {[]int{14}, NoForm}, {[]int{30}, Stanzaless}, {[]int{5, 5}, NoForm},
	} {
		if got := ProposedForm(NewPoem(1, PoemHead{}, stanzas(c.lengths...))); got != c.want {
			t.Errorf("stanzas of %v: proposed %q, want %q", c.lengths, got, c.want)
		}
	}
}

func TestMatterKeepsTheOrderOfTheBook(t *testing.T) {
	m := UsualMatter().With(MatterPage{Kind: NotesPage}).With(MatterPage{Kind: DedicationPage, Text: []string{"for the ovens"}})
	var kinds []MatterKind
	for _, p := range m.Pages {
		kinds = append(kinds, p.Kind)
	}
	want := []MatterKind{HalfTitle, TitlePage, DedicationPage, ContentsPage, NotesPage}
	for i := range want {
		if len(kinds) != len(want) || kinds[i] != want[i] {
			t.Fatalf("the matter stands as %v, want %v (New Hart's Rules 1.2.1)", kinds, want)
		}
	}
	if NotesPage.Prelim() || !ContentsPage.Prelim() {
		t.Error("notes are end matter, the contents a prelim")
	}
	if _, err := (SetMatter{Matter{Pages: []MatterPage{{Kind: "colophon"}}}}).Apply(testBook()); err == nil {
		t.Error("a kind that there is none of was taken")
	}
}

func TestAcrossOpensOnAVerso(t *testing.T) {
	c := testBook()
	_, p := firstPoem(c)
	h := p.Head()
	h.Lie = Across
	c = mustApply(t, c, SetHead{p.ID(), h})
	for _, start := range []Start{OnRecto, SharedPage, FacingPage} {
		if _, err := (SetStart{Poem: p.ID(), Start: start}).Apply(c); err == nil {
			t.Errorf("a poem across the spread was let start on %v", start)
		}
	}
	mustApply(t, c, SetStart{Poem: p.ID(), Start: OnVerso})
}
