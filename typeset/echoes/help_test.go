package echoes

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/pagemodel/manuscript"
	"headland/typeset"
)

// read is a manuscript, set.
func read(t testing.TB, text string) *typeset.Setting {
	t.Helper()
	c, _, err := manuscript.Read("book.md", []byte(text), pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	return typeset.NewSetter(typeset.Bundled()).Set(nil, c)
}

// edited is a book after edits, set anew.
func edited(t testing.TB, set *typeset.Setting, edits ...pagemodel.Edit) *typeset.Setting {
	t.Helper()
	c := set.Collection()
	for _, e := range edits {
		after, err := e.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		c = after
	}
	return typeset.NewSetter(typeset.Bundled()).Set(nil, c)
}

// demo is the demo collection, set.
func demo(t testing.TB) *typeset.Setting { return read(t, string(assets.Demo())) }

// find finds the echoes of a book, and sees that every place of each is one.
func find(t testing.TB, set *typeset.Setting) []Echo {
	t.Helper()
	found := new(Finder).Of(set)
	for _, e := range found {
		valid(t, set, e)
	}
	return found
}

// valid sees that an echo's places lie in the book, in its order, each once, and
// that poems and gaps are those of the places, pair by pair.
func valid(t testing.TB, set *typeset.Setting, e Echo) {
	t.Helper()
	var before [4]int
	poems := map[int]bool{}
	for i, o := range e.Found {
		p, number, _ := set.Collection().Poem(o.Ref.Poem)
		at := [4]int{number, 0, o.From, o.To}
		page, _ := set.PageOfPoem(o.Ref.Poem)
		if o.Ref.Line != 0 {
			_, place, err := set.Collection().Line(o.Ref)
			if err != nil || o.From < 0 || o.From >= o.To || o.To > len(p.Line(place).Text()) {
				t.Fatalf("%s is found at %+v, which is no place: %v", e.Name, o, err)
			}
			at[1] = 1_000_000*(place.Part+1) + 1000*place.Stanza + place.Line
			page, _ = set.PageOfLine(o.Ref)
		}
		if i > 0 && slices.Compare(before[:], at[:]) >= 0 {
			t.Errorf("%s is found at %v after %v", e.Name, at, before)
		}
		if o.Number != number || o.Page != page || page == 0 {
			t.Errorf("%s is found in poem %d on page %d, want %d and %d", e.Name, o.Number, o.Page, number, page)
		}
		before, poems[number] = at, true
	}
	if nearest := nearestOf(e.Found); e.Nearest != nearest || e.Poems != len(poems) {
		t.Errorf("%s is nearest at %+v in %d poems, want %+v in %d", e.Name, e.Nearest, e.Poems, nearest, len(poems))
	}
}

// nearestOf looks at every pair of places.
func nearestOf(found []Occurrence) Gap {
	var nearest Gap
	for _, a := range found {
		for _, b := range found {
			if gap := (Gap{b.Number - a.Number, b.Page - a.Page}); gap.Poems > 0 && nearest.Poems == 0 {
				nearest = gap
			} else if gap.Poems > 0 {
				nearest = Gap{min(nearest.Poems, gap.Poems), min(nearest.Pages, gap.Pages)}
			}
		}
	}
	return nearest
}

// called is the echo of that name.
func called(t testing.TB, echoes []Echo, name string) Echo {
	t.Helper()
	i := slices.IndexFunc(echoes, func(e Echo) bool { return e.Name == name })
	if i < 0 {
		t.Fatalf("%q is not among the echoes %q", name, names(echoes))
	}
	return echoes[i]
}

func names(echoes []Echo) []string {
	var all []string
	for _, e := range echoes {
		all = append(all, e.Name)
	}
	return all
}

// places are the places of an echo in words, as "2: the [ovens] roar".
func places(t testing.TB, set *typeset.Setting, e Echo) []string {
	t.Helper()
	var all []string
	for _, o := range e.Found {
		text := ""
		if o.Ref.Line != 0 {
			p, at, err := set.Collection().Line(o.Ref)
			if err != nil {
				t.Fatal(err)
			}
			text = p.Line(at).Text()
		}
		all = append(all, strings.TrimSpace(fmt.Sprintf("%d: %s[%s]%s", o.Number, text[:o.From], text[o.From:o.To], text[o.To:])))
	}
	return all
}

// lineOf is a line by the numbers of its poem, stanza and line.
func lineOf(t testing.TB, set *typeset.Setting, poem, stanza, line int) pagemodel.LineRef {
	t.Helper()
	p, err := set.Collection().PoemCalled(fmt.Sprintf("#%d", poem))
	if err != nil {
		t.Fatal(err)
	}
	at, err := p.At(stanza, line)
	if err != nil {
		t.Fatal(err)
	}
	return pagemodel.LineRef{Poem: p.ID(), Line: p.Line(at).ID()}
}
