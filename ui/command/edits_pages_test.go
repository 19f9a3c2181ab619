package command

import (
	"strings"
	"testing"
)

// TestEditsOfPages does each edit about pages, heads and white to a fresh book, and
// looks at what became of the first poem in its manuscript.
func TestEditsOfPages(t *testing.T) {
	const one = `"poem":1,"stanza":1,"line":1`
	const second = `"poem":1,"stanza":1,"line":2`
	tests := []struct {
		name, script, old, new string
	}{
		{"together through a line", `{"edit":"together",` + one + `,"through":{"stanza":2,"line":1}}`,
			"One loaf on the sill,\nthe other", "[together] One loaf on the sill,\n[together] the other"},
		{"together by count", `{"edit":"together",` + one + `,"lines":2}`, "One loaf", "[together] One loaf"},
		{"together no more", `{"edit":"together",` + one + `,"lines":3}` + "\n" + `{"edit":"together",` + second + `,"lines":2,"off":true}`, "One loaf", "[together] One loaf"},
		{"page", `{"edit":"page",` + second + `}`, "the other", "[page] the other"},
		{"page no more", `{"edit":"page",` + second + "}\n" + `{"edit":"page",` + second + `,"off":true}`, "", ""},
		{"start", `{"edit":"start","poem":1,"start":"recto","blank":true}`, "## Bread\n", "## Bread\n[start: recto]\n[blank: before]\n"},
		{"start, the blank left as it was", `{"edit":"start","poem":1,"blank":true}` + "\n" + `{"edit":"start","poem":1,"start":"shared page"}`,
			"## Bread\n", "## Bread\n[start: shared page]\n[blank: before]\n"},
		{"form", `{"edit":"form","poem":1,"form":"Tercets"}`, "## Bread\n", "## Bread\n[form: tercets]\n"},
		{"form taken back", `{"edit":"form","poem":1,"form":"tercets"}` + "\n" + `{"edit":"form","poem":1,"form":""}`, "", ""},
		{"run", `{"edit":"run","poem":1,"lines":-1}`, "## Bread\n", "## Bread\n[run: -1]\n"},
		{"range", `{"edit":"range",` + second + `,"to":"right"}`, "the other", "[right] the other"},
		{"drop", `{"edit":"drop",` + second + `}`, "the other", "[drop] the other"},
		{"drop no more", `{"edit":"drop",` + second + "}\n" + `{"edit":"drop",` + second + `,"off":true}`, "", ""},
		{"tab after a word", `{"edit":"tab",` + one + `,"after":2,"em":12}`, "loaf on", "loaf [tab 12] on"},
		{"tab after a character", `{"edit":"tab",` + one + `,"at":6,"em":1.5}`, "One loaf", "One lo[tab 1.5]af"},
		{"tab cleared", `{"edit":"tab",` + one + `,"after":2,"em":12}` + "\n" + `{"edit":"tab",` + one + `,"after":2,"em":0}`, "", ""},
		{"words of the head", `{"edit":"head","poem":1,"short_title":"B","subtitle":"at four","dedication":"for M.","note":"rye","epigraph":["one","two"]}`,
			"## Bread\n", "## Bread\n[short_title: B]\n[subtitle: at four]\n[dedication: for M.]\n[note: rye]\n> one\n> two\n"},
		{"values of the head", `{"edit":"head","poem":1,"size_pt":9.5,"edge":"centred","lie":"turned"}`,
			"## Bread\n", "## Bread\n[size: 9.5pt]\n[edge: centred]\n[lie: turned]\n"},
		{"the head, what is not said left as it was", `{"edit":"head","poem":1,"title":"Bread","size_pt":9.5,"epigraph":["one"]}` + "\n" + `{"edit":"head","poem":1,"size_pt":0}`,
			"## Bread\n", "## Bread\n> one\n"},
		{"place and title", `{"edit":"head","poem":1,"title":"Loaf","place":"1911"}`, bread, strings.Replace(bread, "Bread", "Loaf", 1) + "\n[place: 1911]\n"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			file := book(t)
			done(t, test.script, "edit", file, "-")
			want := strings.Replace(bread, test.old, test.new, 1) + "\n## Weights"
			if got := exported(t, file); !strings.HasPrefix(got, want) {
				t.Errorf("the first poem is\n%s\nwant\n%s", got[:min(len(want), len(got))], want)
			}
		})
	}
}

// frontMatter is what a file's manuscript says of the whole book.
func frontMatter(t *testing.T, file string) string {
	t.Helper()
	path := t.TempDir() + "/out.md"
	done(t, "", "export", file, "--manuscript", path)
	head, _, ok := strings.Cut(strings.TrimPrefix(read(t, path), "---\n"), "---\n")
	if !ok {
		t.Fatalf("no front matter in\n%s", read(t, path))
	}
	return head
}

// TestEditsOfTheBook does edits about the book one after another, and looks at
// what its manuscript says of the whole of it.
func TestEditsOfTheBook(t *testing.T) {
	file := book(t)
	const about = "title: Four Poems\npoet: A. N. Other\n"
	for _, test := range []struct{ script, want string }{
		{`{"edit":"matter","kind":"contents"}`, about + "page: contents\n"},
		{`{"edit":"matter","kind":"imprint","text":["Baked 1911","","twice"],"roman":true}`,
			about + "page: imprint\ntext: Baked 1911\ntext: \"\"\ntext: twice\npage: contents\nroman: yes\n"},
		{`{"edit":"matter","kind":"imprint","title":"Proof"}`,
			about + "page: imprint\nheading: Proof\ntext: Baked 1911\ntext: \"\"\ntext: twice\npage: contents\nroman: yes\n"},
		{`{"edit":"matter","kind":"imprint","off":true}`, about + "page: contents\nroman: yes\n"},
		{`{"edit":"matter","roman":false,"parts":true,"alphabet":"letter by letter"}`, about + "page: contents\nparts: yes\nalphabet: letter by letter\n"},
		{`{"edit":"undo"}`, about + "page: contents\nroman: yes\n"},
		{`{"edit":"about","title":"Short Weight","epigraph":["Weigh","again."]}`,
			"title: Short Weight\npoet: A. N. Other\nepigraph: Weigh\nepigraph: again.\npage: contents\nroman: yes\n"},
		{`{"edit":"about","language":"cy","epigraph":[]}`, "title: Short Weight\npoet: A. N. Other\nlanguage: cy\npage: contents\nroman: yes\n"},
	} {
		done(t, test.script, "edit", file, "-")
		if got := frontMatter(t, file); got != test.want {
			t.Errorf("after %s the book says\n%s\nwant\n%s", test.script, got, test.want)
		}
	}
}

// TestKeptDesigns keeps a design by name, leaves it and comes back to it.
func TestKeptDesigns(t *testing.T) {
	file := book(t)
	before := reported(t, file).Design
	done(t, `{"edit":"keep-design","name":"first"}
		{"edit":"design","trim":"Demy octavo","size_pt":12}
		{"edit":"keep-design","name":"wide"}`, "edit", file, "-")
	wide := reported(t, file)
	if got := strings.Join(wide.Designs, ", "); got != "first, wide" || wide.Design == before {
		t.Fatalf("kept are %s, the design is %+v", got, wide.Design)
	}
	for _, test := range []struct {
		script, kept string
		want         designReport
	}{
		{`{"edit":"use-design","name":"first"}`, "first, wide", before},
		{`{"edit":"use-design","name":"wide"}`, "first, wide", wide.Design},
		{`{"edit":"drop-design","name":"wide"}`, "first", wide.Design},
		{`{"edit":"undo"}`, "first, wide", wide.Design},
	} {
		done(t, test.script, "edit", file, "-")
		got := reported(t, file)
		if kept := strings.Join(got.Designs, ", "); got.Design != test.want || kept != test.kept {
			t.Errorf("after %s kept are %s, the design is %+v", test.script, kept, got.Design)
		}
	}
}

// TestDesignStaysAsItIs sees that setting every value of the design that a report
// gives, as it gives it, changes nothing: there is nothing to undo but the edit
// before.
func TestDesignStaysAsItIs(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"about","title":"Mark"}
		{"edit":"design","margins_mm":{"inner":16,"outer":19},"size_pt":11,"edge":"left","title_size_pt":0,"signature":16,"paper":{"gsm":80,"volume":18},"folios":"outer","titles":"roman"}
		{"edit":"undo"}`, "edit", file, "-")
	if got := reported(t, file); got.Title != "Four Poems" {
		t.Errorf("setting the design to what it is was an edit; the title is %q, the design %+v", got.Title, got.Design)
	}
}

// TestEveryEditIsExplained sees that help has each edit, and every field of it.
func TestEveryEditIsExplained(t *testing.T) {
	help := done(t, "", "help", "edit")
	for _, m := range makers {
		if !strings.Contains(help, `{"edit":"`+m.kind+`"`) && !strings.Contains(help, m.kind) {
			t.Errorf("help edit does not have %q", m.kind)
		}
		if m.kind == "design" {
			continue // its fields are the report's
		}
		for _, name := range m.fields {
			if !strings.Contains(help, name) {
				t.Errorf("help edit does not have %q of %q", name, m.kind)
			}
		}
	}
}
