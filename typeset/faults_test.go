package typeset

import (
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// said is a fault as the tests want it.
type said struct {
	kind      FaultKind
	page, row int
}

func faultsSaid(s *Setting) []said {
	var all []said
	for _, f := range s.Faults() {
		all = append(all, said{f.Kind, f.Page, f.Row})
	}
	return all
}

// tiedFrom is the book with lines of the first poem kept together, by their
// numbers from 0: so its pages must end elsewhere, whatever comes of it.
func tiedFrom(t *testing.T, c *pagemodel.Collection, from, through int) *pagemodel.Collection {
	t.Helper()
	p := c.Order()[0].Poem
	var ids []pagemodel.LineID
	for _, l := range p.Lines() {
		ids = append(ids, l.ID())
	}
	return mustApply(t, c, pagemodel.KeepTogether{LineRef: pagemodel.LineRef{Poem: p.ID(), Line: ids[from]}, Through: ids[through]})
}

// TestEveryFaultIsNamed makes each fault of the page ends and sees its kind, its
// page and its row.
func TestEveryFaultIsNamed(t *testing.T) {
	d := depthOf(9, 3)
	short := depthOf(9, 3)
	short.Margins.Foot = short.Leading // no room under the text for a folio and a row
	short.Trim.Height += short.Leading
	narrowInner := testDesign()
	narrowInner.Margins.Inner, narrowInner.RunOut = pagemodel.MM(2), 0
	narrowInner.Binding = pagemodel.PerfectBound
	deepLine := strings.Repeat("many words of one line ", 11) // five rows or six
	page := func(form pagemodel.Form, stanzas ...int) *pagemodel.Collection {
		return bookShaped(d, shape{pagemodel.PoemHead{Form: form}, stanzas})
	}
	for _, tc := range []struct {
		name string
		book *pagemodel.Collection
		want said
	}{
		{"widow", tiedFrom(t, page("", 8), 0, 6), said{Widow, 2, 1}},
		{"orphan", tiedFrom(t, bookShaped(d, shape{pagemodel.PoemHead{Start: pagemodel.OnVerso}, []int{5, 10}}), 5, 14), said{Orphan, 2, 6}},
		{"couplet", poemOf(d, "", deepLine+"\n"+deepLine), said{SplitCouplet, 2, 1}},
		{"declared pair", tiedFrom(t, page(pagemodel.Couplets, 14), 0, 6), said{SplitCouplet, 2, 1}},
		{"tercet", poemOf(d, "", deepLine+"\na short line\n"+deepLine), said{SplitTercet, 2, 1}},
		{"turned stanza", page("", 12), said{TurnedStanza, 2, 1}},
		{"split stanza", bookShaped(d, shape{stanzas: []int{4}}, shape{stanzas: []int{12}}), said{SplitStanza, 3, 1}},
		{"unfaced", page("", 4, 4), said{UnfacedPoem, 1, 1}},
		{"short last page", page("", 5, 3), said{ShortLastPage, 2, 1}},
		{"hidden stanza break", page("", 4, 5), said{HiddenBreak, 2, 1}},
		{"over foot", bookShaped(short, shape{pagemodel.PoemHead{Run: 2}, []int{9}}), said{OverFoot, 1, 9}},
		{"near gutter", poemOf(narrowInner, "", "a line\nanother"), said{NearGutter, 1, 1}},
		{"stranded title", poemOf(depthOf(9, 6), strings.Repeat("a title of many words ", 30), "a line\nanother"), said{StrandedTitle, 0, 0}},
		{"parted turnover", poemOf(d, "", strings.Repeat("many words of one line ", 100)), said{PartedLine, 2, 1}},
	} {
		s := setOf(tc.book)
		got := faultsSaid(s)
		found := slices.ContainsFunc(got, func(f said) bool {
			return f.kind == tc.want.kind && (tc.want.page == 0 || f.page == tc.want.page && f.row == tc.want.row)
		})
		if !found {
			t.Errorf("%s: want %v among %v; pieces %v", tc.name, tc.want, got, piecesOf(s, 0))
		}
	}
}

// TestHeadingLeftAtTheFoot: where the poet begins a page below a part's heading,
// the heading is left at the foot, and that is a fault although it was asked for.
func TestHeadingLeftAtTheFoot(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{}, depthOf(12, 3))
	stanza := func() []pagemodel.Stanza {
		return []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line("a line"), b.Line("and another")})}
	}
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("1", stanza()), pagemodel.NewPart("2", stanza())})
	c := b.Collection()
	p := c.Order()[0].Poem
	third, err := p.At(2, 1)
	if err != nil {
		t.Fatal(err)
	}
	c = mustApply(t, c, pagemodel.PageBreak{LineRef: pagemodel.LineRef{Poem: p.ID(), Line: p.Line(third).ID()}})
	if got := faultsSaid(setOf(c)); !slices.ContainsFunc(got, func(f said) bool { return f.kind == StrandedTitle && f.page == 1 }) {
		t.Errorf("faults %v", got)
	}
}

// TestNoFaultWhereTheFormShowsIt: a page end between stanzas that are all alike,
// or that the design shows, or that the poet asked for, is none.
func TestNoFaultWhereTheFormShowsIt(t *testing.T) {
	d := depthOf(9, 3)
	signed := d
	signed.Hidden = pagemodel.HiddenSign
	asked := bookShaped(d, shape{stanzas: []int{4, 5}})
	p := asked.Order()[0].Poem
	fifth, err := p.At(2, 1)
	if err != nil {
		t.Fatal(err)
	}
	asked = mustApply(t, asked, pagemodel.PageBreak{LineRef: pagemodel.LineRef{Poem: p.ID(), Line: p.Line(fifth).ID()}})
	for name, c := range map[string]*pagemodel.Collection{
		"quatrains": bookShaped(d, shape{stanzas: []int{4, 4, 4}}),
		"a sign":    bookShaped(signed, shape{stanzas: []int{4, 5}}),
		"asked for": asked,
	} {
		s := setOf(c)
		if s.Extent() < 2 {
			t.Fatalf("%s: one page", name)
		}
		for _, f := range s.Faults() {
			if f.Kind == HiddenBreak {
				t.Errorf("%s: %v", name, f)
			}
		}
	}
}

// TestHiddenBreaksShow: by the sign at the foot, by the white at the next head,
// and in words on the page end in any case.
func TestHiddenBreaksShow(t *testing.T) {
	for hidden, grid := range map[pagemodel.HiddenBreaks]int{pagemodel.HiddenPlain: 1, pagemodel.HiddenSign: 1, pagemodel.HiddenWhite: 2} {
		d := depthOf(9, 3)
		d.Hidden = hidden
		s := setOf(bookShaped(d, shape{stanzas: []int{4, 5}}))
		signs := 0
		for _, r := range s.Page(1).Rows {
			if r.Role == RoleSign {
				signs++
			}
		}
		if want := hidden == pagemodel.HiddenSign; (signs == 1) != want {
			t.Errorf("%v: %d signs at the foot", hidden, signs)
		}
		if got := s.Page(2).Rows[0].Grid; got != grid {
			t.Errorf("%v: the next page begins on row %d, want %d", hidden, got, grid)
		}
		if e := s.PageEnd(1); e.Kind != BetweenStanzas || !e.HidesBreak || e.Text == "" {
			t.Errorf("%v: page 1 ends %+v", hidden, e)
		}
		if e := s.PageEnd(2); e.Kind != EndOfPoem {
			t.Errorf("%v: page 2 ends %+v", hidden, e)
		}
	}
}

// TestRemediesMend: every remedy that is offered, when it is taken, mends the
// fault, and says in words what it costs; and nothing is offered that can't be
// done.
func TestRemediesMend(t *testing.T) {
	d := depthOf(9, 3)
	s := setOf(bookShaped(d, shape{stanzas: []int{4}}, shape{stanzas: []int{4}}, shape{stanzas: []int{4, 5}}, shape{stanzas: []int{5, 3}}, shape{stanzas: []int{12}}))
	offered := 0
	for _, f := range s.Faults() {
		for _, r := range s.Remedies(f) {
			offered++
			next := mustApply(t, s.collection, r.Edit)
			after := setOf(next)
			for _, g := range after.Faults() {
				if g.Kind == f.Kind && g.Poem == f.Poem && g.Line == f.Line {
					t.Errorf("%s at %v: after %q it is still there", f.Kind, f.Line, r.Text)
				}
			}
			if was, is := ofKind(s, f), ofKind(after, f); is >= was {
				t.Errorf("%s: after %q the poem has %d of them, and had %d", f.Kind, r.Text, is, was)
			}
			if what, cost, ok := strings.Cut(r.Text, ": "); !ok || what == "" || cost == "" {
				t.Errorf("%q does not say what it costs", r.Text)
			}
		}
	}
	if offered < 8 {
		t.Errorf("only %d remedies were offered", offered)
	}
}

// TestGutterIsToldOnce: what is too near the spine for every line of a page is one
// fault, at the first, which counts the others.
func TestGutterIsToldOnce(t *testing.T) {
	d := testDesign()
	d.Margins.Inner = 0
	s := setOf(poemOf(d, "", strings.Repeat("a line\n", 6)+"the last"))
	var told []string
	for _, f := range s.Faults() {
		if f.Kind == NearGutter {
			told = append(told, f.Text)
		}
	}
	if len(told) != 1 || !strings.HasSuffix(told[0], "and 6 lines more of the page with it") {
		t.Errorf("%q", told)
	}
}

// ofKind is how many faults of the fault's kind its poem has.
func ofKind(s *Setting, f Fault) int {
	n := 0
	for _, g := range s.Faults() {
		if g.Kind == f.Kind && g.Poem == f.Poem {
			n++
		}
	}
	return n
}

// TestRemediesLeavePairsTogether: no remedy parts an original from its
// translation.
func TestRemediesLeavePairsTogether(t *testing.T) {
	s := setOf(bookShaped(depthOf(9, 3), shape{stanzas: []int{5, 3}}, shape{stanzas: []int{4}}, shape{pagemodel.PoemHead{Start: pagemodel.FacingPage}, []int{4}}, shape{stanzas: []int{5, 3}}))
	for _, f := range s.Faults() {
		for _, r := range s.Remedies(f) {
			next := mustApply(t, s.collection, r.Edit)
			for i, e := range next.Order() {
				if e.Poem.Head().Start == pagemodel.FacingPage && next.Order()[i-1].Poem.ID() != s.collection.Order()[1].Poem.ID() {
					t.Errorf("%q puts another poem before the translation", r.Text)
				}
			}
		}
	}
}

// TestWhyAPageEnds: the words name what would be worse.
func TestWhyAPageEnds(t *testing.T) {
	d := depthOf(9, 3)
	deep := setOf(bookShaped(d, shape{stanzas: []int{12}}))
	if e := deep.PageEnd(1); !strings.Contains(e.Text, "the stanza takes 12 lines, and a page has 9") {
		t.Errorf("a stanza deeper than a page: %q", e.Text)
	}
	whole := setOf(bookShaped(d, shape{stanzas: []int{5, 4}}))
	if e := whole.PageEnd(1); !strings.Contains(e.Text, "else a stanza would be parted") {
		t.Errorf("a page that ends at a stanza break: %q", e.Text)
	}
}

// TestFaultsSayWhy: a fault of a page end says what would come of another.
func TestFaultsSayWhy(t *testing.T) {
	s := setOf(bookShaped(depthOf(9, 3), shape{stanzas: []int{12}}, shape{stanzas: []int{4, 5}}))
	why := map[FaultKind]string{}
	for _, f := range s.Faults() {
		why[f.Kind] = s.Why(f)
	}
	if got := why[TurnedStanza]; got != "the stanza takes 12 lines, and a page has 9" {
		t.Errorf("a stanza deeper than a page: %q", got)
	}
	if got := why[HiddenBreak]; !strings.HasPrefix(got, "else ") {
		t.Errorf("a hidden stanza break: %q", got)
	}
	if got := why[UnfacedPoem]; got != "" {
		t.Errorf("a poem that does not face itself is no matter of one page end: %q", got)
	}
}
