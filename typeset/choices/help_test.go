package choices

import (
	"fmt"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/pagemodel/manuscript"
	"headland/typeset"
	"headland/typeset/prosody"
)

// table is a book that is set, to choose in.
type table struct {
	t      testing.TB
	setter *typeset.Setter
	set    *typeset.Setting
}

func set(t testing.TB, c *pagemodel.Collection) *table {
	setter := typeset.NewSetter(typeset.Bundled())
	return &table{t, setter, setter.Set(nil, c)}
}

// read is a manuscript, set.
func read(t testing.TB, text string) *table {
	t.Helper()
	c, _, err := manuscript.Read("book.md", []byte(text), pagemodel.DefaultDesign())
	if err != nil {
		t.Fatal(err)
	}
	return set(t, c)
}

// demo is the demo collection, set.
func demo(t testing.TB) *table { return read(t, string(assets.Demo())) }

// edited is the book after an edit.
func (tb *table) edited(e pagemodel.Edit) *table {
	tb.t.Helper()
	c, err := e.Apply(tb.set.Collection())
	if err != nil {
		tb.t.Fatal(err)
	}
	return set(tb.t, c)
}

// line is a line by the numbers of its poem, stanza and line.
func (tb *table) line(poem, stanza, line int) pagemodel.LineRef {
	tb.t.Helper()
	p, err := tb.set.Collection().PoemCalled(fmt.Sprintf("#%d", poem))
	if err != nil {
		tb.t.Fatal(err)
	}
	at, err := p.At(stanza, line)
	if err != nil {
		tb.t.Fatal(err)
	}
	return pagemodel.LineRef{Poem: p.ID(), Line: p.Line(at).ID()}
}

// of are the choices for a line.
func (tb *table) of(ref pagemodel.LineRef) []Choice {
	tb.t.Helper()
	all, err := Of(tb.setter, tb.set, ref, prosody.English())
	if err != nil {
		tb.t.Fatal(err)
	}
	return all
}

// find is the choice of that head and title.
func find(t testing.TB, all []Choice, h Head, title string) *Choice {
	t.Helper()
	for i := range all {
		if all[i].Head == h && all[i].Title == title {
			return &all[i]
		}
	}
	var titles []string
	for i := range all {
		if all[i].Head == h {
			titles = append(titles, all[i].Title)
		}
	}
	t.Fatalf("%v: no choice %q among %q", h, title, titles)
	return nil
}

// has says that there is a choice of that head and title.
func has(all []Choice, h Head, title string) bool {
	for i := range all {
		if all[i].Head == h && all[i].Title == title {
			return true
		}
	}
	return false
}
