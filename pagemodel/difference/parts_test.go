package difference

import (
	"slices"
	"testing"

	"headland/pagemodel"
)

// twoParts is a book of a section and a poem in parts, as the case wants it.
type twoParts struct {
	section, heading string
	epigraph         []string
	kind             pagemodel.StanzaKind
	oneStanza        bool // the second part is a stanza of the first
	about            pagemodel.About
	matter           pagemodel.Matter
}

func (c twoParts) book(t *testing.T) *pagemodel.Collection {
	t.Helper()
	b := pagemodel.NewBuilder(c.about, pagemodel.DefaultDesign())
	b.Section(c.section, c.epigraph)
	upper := pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line(salt)})
	lower := pagemodel.NewStanza(c.kind, []pagemodel.Line{b.Line(moon)})
	parts := []pagemodel.Part{pagemodel.NewPart("1", []pagemodel.Stanza{upper}), pagemodel.NewPart(c.heading, []pagemodel.Stanza{lower})}
	if c.oneStanza {
		parts = []pagemodel.Part{pagemodel.NewPart("1", []pagemodel.Stanza{upper, lower})}
	}
	b.Poem(pagemodel.PoemHead{Title: "Ovens"}, parts)
	if err := b.Matter(c.matter); err != nil {
		t.Fatal(err)
	}
	return b.Collection()
}

// TestPartsAndSections pins what no edit can change but a manuscript can: parts,
// their headings, prose, sections, what is true of the book.
func TestPartsAndSections(t *testing.T) {
	plain := twoParts{section: "Before light", heading: "2", matter: pagemodel.UsualMatter()}
	for _, tc := range []struct {
		name   string
		change func(*twoParts)
		want   []wanted
	}{
		{"section title", func(c *twoParts) { c.section = "Before dawn" }, []wanted{{Substitute, 0, "section title", 7, 12, "“light”", "“dawn”"}}},
		{"section epigraph", func(c *twoParts) { c.epigraph = []string{"flour", "nobody"} },
			[]wanted{{Insert, 0, "section epigraph", 0, 0, "nothing", "“flour / nobody”"}}},
		{"heading", func(c *twoParts) { c.heading = "Two" }, []wanted{{Substitute, 2, "part heading", 0, 0, "“2”", "“Two”"}}},
		{"no heading", func(c *twoParts) { c.heading = "" }, []wanted{{Delete, 2, "part heading", 0, 0, "“2”", "nothing"}}},
		{"prose", func(c *twoParts) { c.kind = pagemodel.Prose }, []wanted{{Prose, 2, "", 0, 0, "“a moon of dough” as verse", "“a moon of dough” as prose"}}},
		{"no part", func(c *twoParts) { c.oneStanza = true },
			[]wanted{{Part, 1, "", 16, 16, "a part begins with “a moon of dough”", "no part begins with “a moon of dough”"}}},
		{"language", func(c *twoParts) { c.about.Language = "de" }, []wanted{{Design, 0, "language", 0, 0, "en", "de"}}},
		{"poet", func(c *twoParts) { c.about.Poet = "A Poet" }, []wanted{{Insert, 0, "poet", 0, 0, "nothing", "“A Poet”"}}},
		{"book epigraph", func(c *twoParts) { c.about.Epigraph = []string{"flour"} }, []wanted{{Insert, 0, "book epigraph", 0, 0, "nothing", "“flour”"}}},
		{"roman folios", func(c *twoParts) { c.matter.Roman = true }, []wanted{{Design, 0, "roman folios in the prelims", 0, 0, "no", "yes"}}},
		{"parts in the contents", func(c *twoParts) { c.matter.Parts = true }, []wanted{{Design, 0, "parts in the contents", 0, 0, "no", "yes"}}},
		{"index", func(c *twoParts) { c.matter.Alphabet = pagemodel.LetterByLetter },
			[]wanted{{Design, 0, "order of the index", 0, 0, "word by word", "letter by letter"}}},
		{"heading of the contents", func(c *twoParts) {
			c.matter = c.matter.With(pagemodel.MatterPage{Kind: pagemodel.ContentsPage, Title: "Inside"})
		}, []wanted{{Insert, 0, "contents heading", 0, 0, "nothing", "“Inside”"}}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			other := plain
			tc.change(&other)
			was, is := plain.book(t), other.book(t)
			changes := Between(was, is)
			mustGive(t, 0, was, is, changes)
			mustMirror(t, was, is)
			if len(changes) != len(tc.want) {
				t.Fatalf("got %d changes:\n%s", len(changes), listed(changes))
			}
			poem := was.Order()[1].Poem
			refs := []pagemodel.LineRef{{Poem: poem.ID(), Line: poem.Parts()[0].Stanzas()[0].Lines()[0].ID()}, {Poem: poem.ID(), Line: poem.Parts()[1].Stanzas()[0].Lines()[0].ID()}}
			for i := range changes {
				mustBe(t, &changes[i], tc.want[i], refs)
			}
		})
	}
}

// TestNewPoemsAlone sees where a poem goes whose neighbour, new like itself, is not
// put in.
func TestNewPoemsAlone(t *testing.T) {
	is := bakery()
	was := is.Only(0, 5)
	changes := Between(was, is)
	last := changes[len(changes)-1]
	got, err := Apply(TextOf(was), []Change{last})
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"Loaf 3", "", "one loaf on the shelf", "one in the hand", "", ""}; !slices.Equal(last.Matter(), want) {
		t.Errorf("the new poem’s words are %q, want %q", last.Matter(), want)
	}
	if n := len(got.entries); n != 6 || got.entries[5].name != nameOf(is.Order()[6]) || last.Kind != Insert {
		t.Errorf("the last poem alone gave %d entries:\n%s", n, got)
	}
}

// TestMatter pins the words that are to be put in.
func TestMatter(t *testing.T) {
	was, refs := poemOf([]string{"and bread", moon})
	for _, tc := range []struct {
		edits []pagemodel.Edit
		want  []string
	}{
		{edits(retype(refs[0], "and warm bread")), []string{"warm"}},
		{edits(retype(refs[0], "and bread salt on the sill"), pagemodel.Break{LineRef: refs[0], At: 10}), []string{"salt on the sill"}},
		{edits(retype(refs[1], "a small round loaf")), []string{"small round loaf"}},
		{edits(retype(refs[1], "a moon")), nil},
		{edits(pagemodel.Indent{LineRef: refs[1], To: pagemodel.OneEm}), nil},
	} {
		is := was
		for _, e := range tc.edits {
			next, err := e.Apply(is)
			if err != nil {
				t.Fatal(err)
			}
			is = next
		}
		changes := Between(was, is)
		if got := changes[0].Matter(); len(changes) != 1 || !slices.Equal(got, tc.want) {
			t.Errorf("%q is to be put in, not %q: %s", got, tc.want, listed(changes))
		}
	}
}
