package command

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// TestPagesRefused goes through what can be wrong with edits about pages, heads,
// the book and its designs: nothing is done, and the words say which line of which
// script, what is wrong, and what to write.
func TestPagesRefused(t *testing.T) {
	line := `"poem":1,"stanza":1,"line":1`
	tests := []struct {
		bad  string
		want []string
	}{
		{`{"edit":"together",` + line + `}`, []string{`either "through"`, `or "lines"`}},
		{`{"edit":"together",` + line + `,"lines":2,"through":{"stanza":1,"line":2}}`, []string{`either "through"`}},
		{`{"edit":"together",` + line + `,"lines":1}`, []string{"1 lines can't be kept together", "Bread has 3 lines", "from 2 to 3"}},
		{`{"edit":"together",` + line + `,"lines":-9223372036854775808}`, []string{"from 2 to 3"}},
		{`{"edit":"together",` + line + `,"lines":4}`, []string{"from 2 to 3"}},
		{`{"edit":"together","poem":1,"stanza":2,"line":1,"lines":2}`, []string{"a line higher up"}},
		{`{"edit":"together",` + line + `,"through":{"stanza":9,"line":1}}`, []string{"Bread has 2 stanzas", "no stanza 9"}},
		{`{"edit":"together",` + line + `,"through":{"stanza":2}}`, []string{`"through" must be a stanza and a line`}},
		{`{"edit":"together",` + line + `,"through":7}`, []string{`"through" must be a stanza and a line`}},
		{`{"edit":"together","poem":1,"stanza":2,"line":1,"through":{"stanza":1,"line":1}}`, []string{"name the upper line first"}},
		{`{"edit":"page",` + line + `}`, []string{"begins its poem", "how the poem opens"}},
		{`{"edit":"page",` + line + `,"off":"yes"}`, []string{`"off" must be true or false`}},
		{`{"edit":"start","poem":1}`, []string{`needs "start"`, `"blank"`}},
		{`{"edit":"start","poem":1,"start":"left"}`, []string{`"left" is no start`, "fresh page, verso, recto, shared page, facing"}},
		{`{"edit":"form","poem":1}`, []string{`needs "form"`}},
		{`{"edit":"run","poem":1,"lines":3}`, []string{"at most two lines"}},
		{`{"edit":"run","poem":1,"lines":1e99}`, []string{`"lines" must be a whole number`}},
		{`{"edit":"range",` + line + `,"to":"middle"}`, []string{`"middle" is no range`, "left, centre, right"}},
		{`{"edit":"range",` + line + `}`, []string{`needs "to"`}},
		{`{"edit":"tab",` + line + `,"after":2}`, []string{`needs "em"`}},
		{`{"edit":"tab",` + line + `,"em":2}`, []string{`either "after"`}},
		{`{"edit":"tab",` + line + `,"after":2,"em":61}`, []string{"61em", "choose from 0 to 60em"}},
		{`{"edit":"tab",` + line + `,"after":2,"em":-1}`, []string{"-1em", "choose from 0"}},
		{`{"edit":"head","poem":1}`, []string{"something to change", "short_title"}},
		{`{"edit":"head","poem":1,"size_pt":1}`, []string{"type of 1pt", "4pt to 72pt"}},
		{`{"edit":"head","poem":1,"size_pt":-11}`, []string{"type of -11pt", "4pt to 72pt"}},
		{`{"edit":"head","poem":1,"epigraph":"one"}`, []string{`"epigraph" must be a list of lines`}},
		{`{"edit":"head","poem":1,"edge":"right"}`, []string{`"right" is no left edge`, "as the book"}},
		{`{"edit":"head","poem":1,"lie":"down"}`, []string{`"down" is no lie`}},
		{`{"edit":"head","poem":1,"form":"couplets"}`, []string{`takes no field "form"`}},
		{`{"edit":"matter"}`, []string{"something to do"}},
		{`{"edit":"matter","kind":"colophon"}`, []string{`"colophon" is no page`, "half-title, also by"}},
		{`{"edit":"matter","text":["x"]}`, []string{`needs "kind"`}},
		{`{"edit":"matter","kind":"index","off":true}`, []string{`no page of the kind "index"`}},
		{`{"edit":"matter","kind":"index","off":true,"title":"x"}`, []string{"leave them out"}},
		{`{"edit":"matter","alphabet":"backwards"}`, []string{"word by word, letter by letter"}},
		{`{"edit":"about"}`, []string{"something to change", "title, poet"}},
		{`{"edit":"about","title":7}`, []string{`"title" must be words`}},
		{`{"edit":"keep-design"}`, []string{`needs "name"`}},
		{`{"edit":"keep-design","name":""}`, []string{"give one"}},
		{`{"edit":"use-design","name":"wide"}`, []string{`"wide"`, "none is kept", "keep-design"}},
		{`{"edit":"drop-design","name":"wide"}`, []string{`"wide"`, "none is kept"}},
		{`{"edit":"design","edge":"as the book"}`, []string{"left, centred or optical"}},
		{`{"edit":"design","folios":"inner"}`, []string{`"inner"`, "outer, centred, none"}},
		{`{"edit":"design","titles":"bold"}`, []string{`"bold"`, "roman, italic"}},
		{`{"edit":"design","running_heads":"on"}`, []string{`"on"`, "poet and book"}},
		{`{"edit":"design","prose":"tight"}`, []string{`"tight"`, "ragged, justified"}},
		{`{"edit":"design","hidden_breaks":"words"}`, []string{`"words"`, "nothing, a sign, white"}},
		{`{"edit":"design","paper":{"weight":80}}`, []string{`"paper" takes no field "weight"`, "gsm, volume"}},
		{`{"edit":"design","paper":{"gsm":0}}`, []string{`"gsm" of 0`, "1 or more"}},
		{`{"edit":"design","paper":{"gsm":9000}}`, []string{"9000 gsm", "choose up to 600"}},
	}
	refuseAll(t, tests)
}

// refuseAll does each bad edit to one book, and sees that it is refused in words
// and that the book is as it was.
func refuseAll(t *testing.T, tests []struct {
	bad  string
	want []string
}) {
	t.Helper()
	file := book(t)
	before := done(t, "", "report", file, "--json")
	for _, test := range tests {
		script := write(t, t.TempDir(), "script.jsonl", test.bad+"\n")
		r := run(t, "", "edit", file, script)
		if r.status != CouldNot || r.out != "" {
			t.Errorf("%s: status %d, printed %q", test.bad, r.status, r.out)
		}
		for _, want := range append(test.want, script+", line 1: ", "Nothing was done") {
			if !strings.Contains(r.errs, want) {
				t.Errorf("%s\nsays %s\nwant %q in it", test.bad, r.errs, want)
			}
		}
	}
	if after := done(t, "", "report", file, "--json"); after != before {
		t.Errorf("what was refused changed the book:\n%s", after)
	}
}

// TestImpossibleDesigns sees that a design that no page can have is refused with
// the value and what to choose.
func TestImpossibleDesigns(t *testing.T) {
	refuseAll(t, []struct {
		bad  string
		want []string
	}{
		{`{"edit":"design","margins_mm":{"inner":-3}}`, []string{`"inner" is -3 mm`, "choose from 0"}},
		{`{"edit":"design","margins_mm":{"foot":1e300}}`, []string{`"foot"`, "choose from 0 to 10000"}},
		{`{"edit":"design","margins_mm":{"outer":1e999}}`, []string{`"margins_mm" must be an object of millimetres`}},
		{`{"edit":"design","margins_mm":{"inner":70,"outer":70}}`, []string{"under four ems", "make them narrower"}},
		{`{"edit":"design","trim_mm":[1,1]}`, []string{"1 by 1 mm", "choose from 40 to 1000 mm"}},
		{`{"edit":"design","trim_mm":[0,0]}`, []string{"0 by 0 mm", "choose from 40"}},
		{`{"edit":"design","trim_mm":[-129,198]}`, []string{`"trim_mm" is -129 mm`, "choose from 0"}},
		{`{"edit":"design","measure_pt":10}`, []string{"a measure of 10pt, under four ems"}},
		{`{"edit":"design","measure_pt":-200}`, []string{"under four ems"}},
		{`{"edit":"design","measure_pt":9000}`, []string{"a margin can't be less than nothing"}},
		{`{"edit":"design","size_pt":0}`, []string{"4pt to 72pt"}},
		{`{"edit":"design","leading_pt":0}`, []string{"a leading of 0pt"}},
		{`{"edit":"design","leading_pt":-14}`, []string{"a leading of -14pt"}},
		{`{"edit":"design","stanza_gap":-1}`, []string{`"stanza_gap" is -1`, "choose from 0"}},
		{`{"edit":"design","stanza_gap":9}`, []string{"stanza gap of 9", "choose 1 to 8"}},
		{`{"edit":"design","poem_row":9223372036854775807}`, []string{`"poem_row"`, "choose from 0 to 1000"}},
		{`{"edit":"design","title_row":0}`, []string{"title"}},
		{`{"edit":"design","poem_row":1000}`, []string{"a sink to line 1000", "make it less"}},
		{`{"edit":"design","run_out_pt":-1}`, []string{"lines can't run -1pt"}},
		{`{"edit":"design","tighten_percent":41}`, []string{"41 per cent", "choose 0 to 40"}},
		{`{"edit":"design","tighten_percent":-1}`, []string{`"tighten_percent" is -1`}},
		{`{"edit":"design","title_size_pt":500}`, []string{"titles of 500pt", "4pt to 72pt"}},
		{`{"edit":"design","signature":12}`, []string{"signature of 12 pages", "choose 8, 16 or 32"}},
		{`{"edit":"design","signature":0}`, []string{"signature of 0 pages", "choose 8, 16 or 32"}},
		{`{"edit":"design","margins_mm":{"head":100,"foot":100}}`, []string{"a page of 0 lines"}},
	})
}

// TestNarrowestPages sets a book as narrow as a design may be, with no margins at
// all: every word that is wider than the measure is named with its page and row, the
// report is whole, and the pages can be written.
func TestNarrowestPages(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"text","poem":1,"stanza":1,"line":1,"text":"Incomprehensibilities proved overnight"}
		{"edit":"design","trim_mm":[40,198],"margins_mm":{"inner":0,"outer":0,"head":0,"foot":0},"size_pt":20,"leading_pt":24}`, "edit", file, "-")
	r := reported(t, file)
	if r.Design.Margins != (marginsReport{}) || r.Design.Trim[0] != 40 {
		t.Fatalf("the design is %+v", r.Design)
	}
	over := faultsOf(r, "over-measure")
	if len(over) == 0 || !strings.Contains(over[0].Text, "Incomprehensibilities") || over[0].Page == "" || over[0].Row == 0 || over[0].Poem != "Bread" {
		t.Errorf("the faults are %+v", r.Faults)
	}
	if text := exported(t, file); !strings.Contains(text, "Incomprehensibilities proved overnight") {
		t.Errorf("the text has become\n%s", text)
	}
	done(t, "", "export", file, "--pdf", filepath.Join(t.TempDir(), "narrow.pdf"))
	done(t, "", "report", file)
}

// TestNoInnerMargin sees that where the binding swallows the beginnings of lines
// each of them is named, with its page and row.
func TestNoInnerMargin(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"design","binding":"perfect bound","margins_mm":{"inner":0}}`, "edit", file, "-")
	near := faultsOf(reported(t, file), "near-gutter")
	if len(near) == 0 || near[0].Page != "1" || near[0].Row != 1 || !strings.Contains(near[0].Text, "One loaf on the sill,") {
		t.Errorf("the faults are %+v", near)
	}
}

func faultsOf(r report, kind string) []fault {
	var all []fault
	for _, f := range r.Faults {
		if f.Kind == kind {
			all = append(all, f)
		}
	}
	return all
}

// TestMonstrousPoems imports what no book has, a thousand empty poems, a stanza
// thirty pages deep and a line of a thousand words, and sees that all of it is
// there, reported on and written out again.
func TestMonstrousPoems(t *testing.T) {
	folder := t.TempDir()
	var text strings.Builder
	for n := range 1000 {
		fmt.Fprintf(&text, "## Empty %d\n\n", n)
	}
	text.WriteString("## Deep\n\n" + strings.Repeat("a line of the night's bread\n", 1000) + "\n")
	text.WriteString("## Wide\n\n" + strings.TrimSuffix(strings.Repeat("flour ", 1000), " ") + "\n")
	file := filepath.Join(folder, "monster.headland")
	done(t, "", "import", write(t, folder, "monster.md", text.String()), "-o", file)
	r := reported(t, file)
	if r.Poems != 1002 || r.Lines != 1001 || len(r.Contents) != 1002 {
		t.Errorf("%d poems, %d lines, %d in the contents", r.Poems, r.Lines, len(r.Contents))
	}
	if len(r.Turnovers) != 1 || r.Turnovers[0].Poem != "Wide" || len(r.Faults) == 0 {
		t.Errorf("%d turnovers, %d faults", len(r.Turnovers), len(r.Faults))
	}
	out := filepath.Join(folder, "out.md")
	done(t, "", "export", file, "--manuscript", out)
	if got := read(t, out); strings.TrimSpace(got) != strings.TrimSpace(text.String()) {
		t.Errorf("the manuscript is %d bytes, was %d", len(got), text.Len())
	}
}
