package difference

import (
	"testing"

	"headland/pagemodel"
)

// poemOf is a book of one poem: stanzas, which are lists of lines.
func poemOf(stanzas ...[]string) (*pagemodel.Collection, []pagemodel.LineRef) {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, pagemodel.DefaultDesign())
	var all []pagemodel.Stanza
	var ids []pagemodel.LineID
	for _, texts := range stanzas {
		var lines []pagemodel.Line
		for _, text := range texts {
			l := b.Line(text)
			lines, ids = append(lines, l), append(ids, l.ID())
		}
		all = append(all, pagemodel.NewStanza(pagemodel.Verse, lines))
	}
	b.Poem(pagemodel.PoemHead{Title: "Ovens"}, []pagemodel.Part{pagemodel.NewPart("", all)})
	c := b.Collection()
	refs := make([]pagemodel.LineRef, len(ids))
	for i, id := range ids {
		refs[i] = pagemodel.LineRef{Poem: c.Order()[0].Poem.ID(), Line: id}
	}
	return c, refs
}

// wanted is a change as a table has it. Line counts the poem's lines from 1; 0 is
// none.
type wanted struct {
	kind     Kind
	line     int
	field    string
	from, to int
	was, is  string
}

type kindCase struct {
	name    string
	stanzas [][]string
	edits   func(l []pagemodel.LineRef) []pagemodel.Edit
	want    []wanted
}

const (
	breathe = "the ovens breathe and someone counts the trays"
	salt    = "salt on the sill"
	moon    = "a moon of dough"
)

func one(texts ...string) [][]string { return [][]string{texts} }

func edits(e ...pagemodel.Edit) []pagemodel.Edit { return e }

// TestKinds pins the words and the places of each kind of change.
func TestKinds(t *testing.T) {
	for _, tc := range append(append(lineCases, wordCases...), headCases...) {
		t.Run(tc.name, func(t *testing.T) {
			was, refs := poemOf(tc.stanzas...)
			is := was
			for _, e := range tc.edits(refs) {
				next, err := e.Apply(is)
				if err != nil {
					t.Fatal(err)
				}
				is = next
			}
			changes := Between(was, is)
			mustGive(t, 0, was, is, changes)
			if len(changes) != len(tc.want) {
				t.Fatalf("got %d changes:\n%s", len(changes), listed(changes))
			}
			for i := range changes {
				mustBe(t, &changes[i], tc.want[i], refs)
			}
			mustMirror(t, was, is)
		})
	}
}

func mustBe(t *testing.T, ch *Change, want wanted, refs []pagemodel.LineRef) {
	t.Helper()
	got := wanted{ch.Kind, 0, ch.Field, ch.From, ch.To, ch.Was, ch.Is}
	for n, ref := range refs {
		if ch.Line == ref {
			got.line = n + 1
		}
	}
	if got != want {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

// mustMirror sees that the way back is exact too.
func mustMirror(t *testing.T, was, is *pagemodel.Collection) {
	t.Helper()
	mustGive(t, 1, is, was, Between(is, was))
}

var lineCases = []kindCase{
	{"a break in the poem", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Break{LineRef: l[0], At: 18})
	}, []wanted{
		{NewLine, 1, "", 18, 18, "“the ovens breathe and someone counts the trays”", "“the ovens breathe / and someone counts the trays”"},
	}},
	{"a break in this edition", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Break{LineRef: l[0], At: 18, In: pagemodel.InEdition})
	}, []wanted{
		{NewLine, 1, "", 18, 18, "“the ovens breathe and someone counts the trays”", "“the ovens breathe / and someone counts the trays”"},
	}},
	{"a break before a dash", one("dark—light, and bread"), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Break{LineRef: l[0], At: 4})
	}, []wanted{
		{NewLine, 1, "", 4, 4, "“dark—light,”", "“dark / —light,”"},
	}},
	{"run on", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Join{LineRef: l[0]})
	}, []wanted{
		{RunOn, 1, "", 16, 16, "“salt on the sill / a moon of dough”", "“salt on the sill a moon of dough”"},
	}},
	{"a word carried over a break", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Carry{LineRef: l[0], Count: 1})
	}, []wanted{
		{NewLine, 1, "", 12, 12, "“salt on the sill”", "“salt on the / sill”"},
		{RunOn, 1, "", 16, 16, "“salt on the sill / a moon of dough”", "“salt on the sill a moon of dough”"},
	}},
	{"turn at another word", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Keep{LineRef: l[0], Turns: []int{18}})
	}, []wanted{
		{TurnAt, 1, "", 18, 21, "“the ovens breathe and someone counts the trays” turned wherever the measure ends", "turned between “ovens breathe” and “and someone”"},
	}},
	{"indent", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Indent{LineRef: l[1], To: 2 * pagemodel.OneEm})
	}, []wanted{
		{IndentLine, 2, "", 0, 0, "“a moon of dough” not indented", "“a moon of dough” indented 2 em"},
	}},
	{"open a stanza", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.StanzaBreak{LineRef: l[0], Open: true})
	}, []wanted{
		{OpenStanza, 1, "", 16, 16, "“salt on the sill / a moon of dough”", "“salt on the sill // a moon of dough”"},
	}},
	{"close a stanza", [][]string{{salt}, {moon}}, func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.StanzaBreak{LineRef: l[0]})
	}, []wanted{
		{CloseStanza, 1, "", 16, 16, "“salt on the sill // a moon of dough”", "“salt on the sill / a moon of dough”"},
	}},
	{"a gap", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetGap{LineRef: l[0], At: 5, Width: 2 * pagemodel.OneEm})
	}, []wanted{
		{Space, 1, "", 5, 5, "“salt on” with a word space", "“salt on” with 2 em of white"},
	}},
	{"a tab", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetTab{LineRef: l[0], At: 5, Stop: 6 * pagemodel.OneEm})
	}, []wanted{
		{Space, 1, "", 5, 5, "“salt on” with a word space", "“salt on” with a tab to 6 em"},
	}},
	{"ranged right", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetRange{LineRef: l[0], To: pagemodel.RangeRight})
	}, []wanted{
		{Space, 1, "", 0, 0, "“salt on the sill” ranged left", "“salt on the sill” ranged right"},
	}},
	{"dropped", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Drop{LineRef: l[1], Dropped: true})
	}, []wanted{
		{Space, 2, "", 0, 0, "“a moon of dough” begun at the left edge", "“a moon of dough” begun where the line above ends"},
	}},
	{"white above", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetAbove{LineRef: l[1], Lines: 2})
	}, []wanted{
		{Space, 2, "", 0, 0, "“a moon of dough” with no white above", "“a moon of dough” with 2 lines of white above"},
	}},
	{"page break", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.PageBreak{LineRef: l[1]})
	}, []wanted{
		{Design, 2, "page break", 0, 0, "“a moon of dough” wherever it falls", "“a moon of dough” at the head of a page"},
	}},
	{"kept together", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.KeepTogether{LineRef: l[0], Through: l[1].Line})
	}, []wanted{
		{Design, 2, "keep together", 0, 0, "“a moon of dough” on that page or the next", "“a moon of dough” on the page of the line above"},
	}},
	{"a reason is no difference", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetReason{LineRef: l[0], Reason: "so", Shown: true}, pagemodel.Keep{LineRef: l[0], On: "2026-11-25"})
	}, nil},
}

func retype(ref pagemodel.LineRef, text string) pagemodel.Edit {
	return pagemodel.Retype{LineRef: ref, Text: text}
}

var wordCases = []kindCase{
	{"substitute", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "the ovens breathe and someone counts the loaves"))
	}, []wanted{
		{Substitute, 1, "", 41, 46, "“trays”", "“loaves”"},
	}},
	{"insert", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "salt on the cold sill"))
	}, []wanted{
		{Insert, 1, "", 11, 11, "nothing between “the” and “sill”", "“cold”"},
	}},
	{"insert at the beginning of a line", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[1], "then a moon of dough"))
	}, []wanted{
		{Insert, 2, "", 0, 0, "nothing before “a”", "“then”"},
	}},
	{"insert at the end of a line", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "salt on the sill still"))
	}, []wanted{
		{Insert, 1, "", 16, 16, "nothing after “sill”", "“still”"},
	}},
	{"delete", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "the ovens breathe and counts the trays"))
	}, []wanted{
		{Delete, 1, "", 22, 29, "“someone”", "nothing"},
	}},
	{"delete the first word", one(salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[1], "moon of dough"))
	}, []wanted{
		{Delete, 2, "", 0, 1, "“a”", "nothing"},
	}},
	{"transpose words", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "the ovens breathe and counts someone the trays"))
	}, []wanted{
		{Transpose, 1, "", 22, 36, "“someone counts”", "“counts someone”"},
	}},
	{"transpose lines", one("and bread", salt, moon, "and bread again"), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[1], moon), retype(l[2], salt))
	}, []wanted{
		{Transpose, 2, "", 0, 16, "“salt on the sill / a moon of dough”", "“a moon of dough / salt on the sill”"},
	}},
	{"two words with a short one between", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "the ovens sleep or nobody counts the trays"))
	}, []wanted{
		{Substitute, 1, "", 10, 29, "“breathe and someone”", "“sleep or nobody”"},
	}},
	{"two substitutions", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "the windows breathe and someone counts the loaves"))
	}, []wanted{
		{Substitute, 1, "", 4, 9, "“ovens”", "“windows”"},
		{Substitute, 1, "", 41, 46, "“trays”", "“loaves”"},
	}},
	{"a line taken out", one("and bread", salt, moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Join{LineRef: l[0]}, retype(l[0], "and bread"))
	}, []wanted{
		{Delete, 2, "", 0, 16, "“/ salt on the sill”", "nothing"},
	}},
	{"a line put in", one("and bread", moon), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "and bread salt on the sill"), pagemodel.Break{LineRef: l[0], At: 10})
	}, []wanted{
		{Insert, 1, "", 9, 9, "nothing after “bread”", "“/ salt on the sill”"},
	}},
	{"italic", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Restyle{LineRef: l[0], Start: 4, End: 17, Style: pagemodel.Italic})
	}, []wanted{
		{Italic, 1, "", 4, 17, "“ovens breathe” in roman", "“ovens breathe” in italic"},
	}},
	{"italic with a word of the line changed", one(breathe), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "the ovens breathe and someone counts the loaves"), pagemodel.Restyle{LineRef: l[0], Start: 41, End: 47, Style: pagemodel.Italic})
	}, []wanted{
		{Substitute, 1, "", 41, 46, "“trays”", "“loaves” in italic"},
	}},
	{"bold", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Restyle{LineRef: l[0], Start: 0, End: 4, Style: pagemodel.Bold})
	}, []wanted{
		{Bold, 1, "", 0, 4, "“salt” in the usual weight", "“salt” in bold"},
	}},
	{"small capitals", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.Restyle{LineRef: l[0], Start: 0, End: 4, Style: pagemodel.SmallCaps})
	}, []wanted{
		{SmallCapitals, 1, "", 0, 4, "“salt” in lower case", "“salt” in small capitals"},
	}},
	{"close up", one("to day and salt"), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "today and salt"))
	}, []wanted{
		{Space, 1, "", 0, 6, "“to day” with a word space", "“today” with nothing between"},
	}},
	{"two word spaces", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(retype(l[0], "salt  on the sill"))
	}, []wanted{
		{Space, 1, "", 5, 5, "“salt on” with a word space", "“salt on” with 2 word spaces"},
	}},
}

var headCases = []kindCase{
	{"title", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetHead{Poem: l[0].Poem, Head: pagemodel.PoemHead{Title: "The Ovens", Dedication: "for the night shift"}})
	}, []wanted{
		{Insert, 0, "title", 0, 0, "nothing before “Ovens”", "“The”"},
		{Insert, 0, "dedication", 0, 0, "nothing", "“for the night shift”"},
	}},
	{"form", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetForm{Poem: l[0].Poem, Form: pagemodel.Couplets})
	}, []wanted{
		{Design, 0, "form", 0, 0, "none", "couplets"},
	}},
	{"book", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetAbout{About: pagemodel.About{Title: "Bakery at Night"}})
	}, []wanted{
		{Delete, 0, "book title", 0, 5, "“Night”", "nothing"},
		{Insert, 0, "book title", 12, 12, "nothing after “Bakery”", "“at Night”"},
	}},
	{"matter", one(salt), func(l []pagemodel.LineRef) []pagemodel.Edit {
		return edits(pagemodel.SetMatter{Matter: pagemodel.Matter{Pages: []pagemodel.MatterPage{{Kind: pagemodel.DedicationPage, Text: []string{"for the", "night shift"}}}}})
	}, []wanted{
		{Insert, 0, "dedication", 0, 0, "nothing", "“for the / night shift”"},
		{Insert, 0, "dedication page", 0, 0, "not in the book", "in the book"},
	}},
}
