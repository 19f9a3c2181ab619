package typeset

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// referred are the rows of a page that refer to others: their words, and the
// folio at their end.
func referred(p *Page) (words, folios []string) {
	for i := range p.Rows {
		r := &p.Rows[i]
		if r.Role != RoleContents {
			continue
		}
		last := r.Runs[len(r.Runs)-1]
		if last.Start+len(last.Text) != r.End || r.X+r.Width != p.Text.X+p.Text.W || strings.Trim(last.Text, "0123456789ivxlc") != "" {
			words, folios = append(words, rowText(r)), append(folios, "")
			continue
		}
		title := *r
		title.Runs = r.Runs[:len(r.Runs)-1]
		words, folios = append(words, rowText(&title)), append(folios, last.Text)
	}
	return words, folios
}

func referredIn(s *Setting) (words, folios []string) {
	for n := 1; n <= s.Extent(); n++ {
		w, f := referred(s.Page(n))
		words, folios = append(words, w...), append(folios, f...)
	}
	return words, folios
}

// TestContentsAreRight: whatever is edited, every section and poem stands in
// the contents in order with the number of the page on which it begins.
func TestContentsAreRight(t *testing.T) {
	setter := NewSetter(Bundled())
	rapid.Check(t, func(t *rapid.T) {
		m := matterOf(pagemodel.HalfTitle)
		m = m.With(pagemodel.MatterPage{Kind: pagemodel.ContentsPage})
		m.Roman = rapid.Bool().Draw(t, "roman")
		c := withMatter(t, smallBook(), m)
		s := setter.Set(nil, c)
		for range rapid.IntRange(1, 6).Draw(t, "edits") {
			e := drawEdit(t, c)
			if _, ok := e.(pagemodel.SetMatter); ok {
				continue // the contents stay
			}
			if next, err := e.Apply(c); err == nil {
				c, s = next, setter.Set(s, next)
			}
		}
		_, folios := referredIn(s)
		folios = slices.DeleteFunc(folios, func(f string) bool { return f == "" })
		var want []string
		for _, e := range s.Contents() {
			want = append(want, s.FolioOf(e.Page))
		}
		if !slices.Equal(folios, want) {
			t.Fatalf("the contents say %q, want %q", folios, want)
		}
	})
}

// TestContentsNames: sections, short titles, poems under their first lines, the
// parts where they are asked for, and the end matter.
func TestContentsNames(t *testing.T) {
	b := bakery()
	stanza := func(text string) []pagemodel.Stanza {
		return []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{b.Line(text), b.Line("and on")})}
	}
	b.Section("Ovens", nil)
	b.Poem(pagemodel.PoemHead{Title: "On the Rising of the Dough", Short: "Dough", Subtitle: "a study"}, []pagemodel.Part{
		pagemodel.NewPart("First rise", stanza("At ten")), pagemodel.NewPart("*", stanza("At two")),
	})
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", stanza("Lamps, lamps,"))})
	c := b.Collection()
	m := pagemodel.Matter{}.With(pagemodel.MatterPage{Kind: pagemodel.ContentsPage}).With(pagemodel.MatterPage{Kind: pagemodel.Acknowledgements, Text: []string{"thanks"}})
	s := setOf(withMatter(t, c, m))
	words, folios := referredIn(s)
	if want := []string{"Ovens", "Dough", "“Lamps, lamps”", "Acknowledgements"}; !slices.Equal(words, want) {
		t.Errorf("%q, want %q", words, want)
	}
	if folios[len(folios)-1] != s.FolioOf(s.Extent()) {
		t.Errorf("the acknowledgements are on page %s, want %s", folios[len(folios)-1], s.FolioOf(s.Extent()))
	}
	m.Parts = true
	words, _ = referredIn(setOf(withMatter(t, c, m)))
	if want := []string{"Ovens", "Dough", "First rise", "“Lamps, lamps”", "Acknowledgements"}; !slices.Equal(words, want) {
		t.Errorf("with parts: %q, want %q", words, want)
	}
}

// TestFoliosDoNotFeedBack: however the pages are numbered, and however many
// figures their numbers have, the contents and the index are set alike, and the
// folios keep to their column.
func TestFoliosDoNotFeedBack(t *testing.T) {
	var poems []poemNamed
	for _, title := range lineList(60) {
		poems = append(poems, poemNamed{pagemodel.PoemHead{Title: title + " " + title}, title, 3})
	}
	c := bakery(poems...).Collection()
	m := matterOf(pagemodel.HalfTitle, pagemodel.ContentsPage, pagemodel.IndexPage)
	setter := NewSetter(Bundled())
	arabic := setter.Set(nil, withMatter(t, c, m))
	m.Roman = true
	roman := setter.Set(nil, withMatter(t, c, m))
	if !reflect.DeepEqual(arabic.matter.prelims, roman.matter.prelims) || !reflect.DeepEqual(arabic.matter.end, roman.matter.end) {
		t.Error("roman and arabic numbers are set otherwise")
	}
	f := matterFlow{blocks: &blocks{fitter: fitter{compositor: &compositor{shaper: newShaper(), faces: &arabic.faces, size: c.Design().Size}}}}
	page := arabic.Page(3)
	for _, folio := range []string{"8", "88", "1000", "9999", "8888", "4040"} {
		for _, row := range arabic.matterRows(page, &arabic.matter.prelims[2], func(pageReference) string { return folio }) {
			last := row.Runs[len(row.Runs)-1]
			if last.Text == folio && row.X+last.X < page.Text.X+page.Text.W-f.folioColumn() {
				t.Fatalf("%q stands %v left of the column", folio, page.Text.X+page.Text.W-f.folioColumn()-row.X-last.X)
			}
		}
	}
}

// TestLongTitlesTurn: a title too long for its line in the contents turns over,
// the rest indented, the folio on the last row and clear of the words.
func TestLongTitlesTurn(t *testing.T) {
	title := "On the Long Rising of the Dough in the Cold Back Room of the Bakery at Night"
	c := bakery(poemNamed{pagemodel.PoemHead{Title: title}, "All night", 3}).Collection()
	s := setOf(withMatter(t, c, matterOf(pagemodel.ContentsPage)))
	words, folios := referredIn(s)
	if len(words) != 2 || strings.Join(words, " ") != title || folios[0] != "" || folios[1] != "3" {
		t.Fatalf("%q with %q", words, folios)
	}
	rows := s.matter.prelims[0].rows
	if first, last := rows[len(rows)-2], rows[len(rows)-1]; last.X != first.X+s.design.Size {
		t.Errorf("the second row begins at %v, the first at %v", last.X, first.X)
	}
}

// TestTitlesOfTwoLines: a title that the poet set in two lines runs on in the
// contents, the notes and the index.
func TestTitlesOfTwoLines(t *testing.T) {
	c := bakery(poemNamed{pagemodel.PoemHead{Title: "Flour\nand Water", Note: "A note."}, "All night", 3}).Collection()
	m := pagemodel.Matter{}
	for _, kind := range []pagemodel.MatterKind{pagemodel.ContentsPage, pagemodel.NotesPage, pagemodel.IndexPage} {
		m = m.With(pagemodel.MatterPage{Kind: kind})
	}
	s := setOf(withMatter(t, c, m))
	stands := 0
	for _, row := range textOf(slices.Concat(s.matter.prelims, s.matter.end)...) {
		if row == "Flour and Water" {
			stands++
		}
	}
	if stands != 3 {
		t.Errorf("the title stands on one line %d times, want 3", stands)
	}
}
