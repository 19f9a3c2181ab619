package command

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestFromManuscriptToManuscript goes the whole way: the overlong line is
// found, settled by a break, found no more, and the text comes out with that
// break and no other change.
func TestFromManuscriptToManuscript(t *testing.T) {
	file := book(t)
	before := reported(t, file)
	if len(before.Turnovers) != 1 || before.Title != "Four Poems" || before.Poems != 4 || before.Lines != 7 {
		t.Fatalf("the report is %+v", before)
	}
	got := before.Turnovers[0]
	if got.Overrun <= 0 {
		t.Errorf("overrun_pt is %g", got.Overrun)
	}
	got.Overrun = 0
	want := turnover{Poem: "Weights", Number: 2, Stanza: 1, Line: 1, Page: "2", Row: 1, Text: long, Parts: 2, State: "unsettled"}
	if got != want {
		t.Errorf("the overlong line is\n%+v, want\n%+v", got, want)
	}
	out := done(t, `{"edit":"break","poem":"Weights","stanza":1,"line":1,"after":7}`+"\n", "edit", file, "-")
	if !strings.Contains(out, "1 edit done") {
		t.Errorf("edit says %q", out)
	}
	after := reported(t, file)
	if len(after.Turnovers) != 0 || after.Lines != 8 {
		t.Errorf("after the break the report is %+v", after)
	}
	want2 := strings.Replace(verse[strings.Index(verse, "## Bread"):], "about it, and", "about it,\nand", 1)
	if text := exported(t, file); text != want2 {
		t.Errorf("the manuscript is\n%s\nwant\n%s", text, want2)
	}
}

// TestUntouched sees that a text that nobody edits comes out byte for byte.
func TestUntouched(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out.md")
	out := done(t, "", "export", book(t), "--manuscript", path)
	if got := read(t, path); got != verse {
		t.Errorf("it comes out as\n%s", got)
	}
	if !strings.Contains(out, "4 poems of 7 lines") {
		t.Errorf("export says %q", out)
	}
}

func TestExportPDF(t *testing.T) {
	file := book(t)
	path := filepath.Join(t.TempDir(), "book.pdf")
	if out := done(t, "", "export", "--pdf", path, file); !strings.Contains(out, path+": 4 pages") {
		t.Errorf("export says %q", out)
	}
	output(t, "qpdf", "--check", path)
	text := strings.Join(strings.Fields(output(t, "pdftotext", path, "-")), " ")
	for _, line := range []string{long, "So that was that, wasn’t it?"} {
		if !strings.Contains(text, line) {
			t.Errorf("%q is not in the PDF:\n%s", line, text)
		}
	}
	done(t, "", "export", file, "--spreads", "--pdf", path)
	if info := output(t, "pdfinfo", path); !strings.Contains(info, "Pages:           3") {
		t.Errorf("four pages make three spreads:\n%s", info)
	}
}

func TestExportPNG(t *testing.T) {
	file, folder := book(t), filepath.Join(t.TempDir(), "pictures")
	done(t, "", "export", file, "--png", folder, "--dpi", "72")
	out := done(t, "", "export", file, "--png", folder, "--spreads", "--dpi", "72")
	if !strings.Contains(out, "3 pictures of 4 pages, as spreads") {
		t.Errorf("export says %q", out)
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	want := []string{"page-001.png", "page-002.png", "page-003.png", "page-004.png", "spread-001.png", "spread-002-003.png", "spread-004.png"}
	if !slices.Equal(got, want) {
		t.Errorf("the pictures are %q, want %q", got, want)
	}
}

// TestStrict sees that --strict, and only that, makes a finding a failure.
func TestStrict(t *testing.T) {
	file := book(t)
	for _, test := range []struct {
		script string
		flags  []string
		want   int
	}{
		{"", nil, Done},
		{"", []string{"--strict"}, Forbidden},
		{"", []string{"--strict", "--json"}, Forbidden},
		{`{"edit":"keep","poem":2,"stanza":1,"line":1}`, []string{"--strict"}, Done},
		{`{"edit":"text","poem":1,"stanza":1,"line":1,"text":"One loaf ` + "\U0001F35E" + `"}`, []string{"--strict"}, Forbidden},
	} {
		done(t, test.script, "edit", file, "-")
		if r := run(t, "", append([]string{"report", file}, test.flags...)...); r.status != test.want || r.errs != "" {
			t.Errorf("after %s, report %q: status %d, want %d\n%s", test.script, test.flags, r.status, test.want, r.errs)
		}
	}
}

// TestProse sees that the report to be read begins with what has to be dealt
// with, and ends with the contents.
func TestProse(t *testing.T) {
	out := done(t, "", "report", book(t))
	at := 0
	for _, want := range []string{
		"Four Poems, A. N. Other\n4 poems, 7 lines, 4 pages\n", "1 line, none of them settled", "page 2, line 1", "unsettled", "#2 Weights",
		"stanza 1, line 1", long, "Nothing is faulty.", "4 pages and 12 blanks, so 1 signature of 16\n", "4 in eights, 12 in sixteens, 28 in thirty-twos", "Spine: 1.2 mm, 0.05 in on 80 gsm paper of volume 18, 353 pages an inch; with its glue 2.0 mm",
		"129 by 198 mm", "EB Garamond 11 on 14 pt", "Contents\n", "  Bread      1\n", "  Weights    2\n", "  1984       4\n",
	} {
		i := strings.Index(out[at:], want)
		if i < 0 {
			t.Fatalf("%q is not where it should be in\n%s", want, out)
		}
		at += i + len(want)
	}
}

// TestWrong goes through what can be wrong with a command line: the status, and
// the words that must be in what is said.
func TestWrong(t *testing.T) {
	file, folder := book(t), t.TempDir()
	manuscript, script := write(t, folder, "poems.md", verse), write(t, folder, "script", "")
	tests := []struct {
		args   []string
		status int
		want   []string
	}{
		{[]string{"choose"}, Misuse, []string{`no verb "choose"`, "import, report, choices, mark-sent, corrections, export, edit, states, aloud, order, echoes, help"}},
		{[]string{"--fast"}, Misuse, []string{"no flag --fast", "headland help"}},
		{[]string{"--demo", "now"}, Misuse, []string{"--demo stands alone"}},
		{[]string{file, "more"}, Misuse, []string{"one file at a time"}},
		{[]string{"help", "choose"}, Misuse, []string{`no verb "choose"`}},
		{[]string{"import"}, Misuse, []string{"name the manuscripts"}},
		{[]string{"import", manuscript}, Misuse, []string{"-o"}},
		{[]string{"import", manuscript, "-o"}, Misuse, []string{"-o needs something after it"}},
		{[]string{"import", "nowhere.md", "-o", folder + "/x.headland"}, CouldNot, []string{"nowhere.md", "no such file"}},
		{[]string{"import", manuscript, "-o", file}, CouldNot, []string{file, "already", "another name"}},
		{[]string{"report"}, Misuse, []string{"name the collection's file"}},
		{[]string{"report", file, file}, Misuse, []string{"one file"}},
		{[]string{"report", file, "--loud"}, Misuse, []string{"no flag --loud", "report FILE [--json] [--strict]"}},
		{[]string{"report", file, "--json=perhaps"}, Misuse, []string{"--json", "perhaps"}},
		{[]string{"report", "nowhere.headland"}, CouldNot, []string{"nowhere.headland", "not there"}},
		{[]string{"report", manuscript}, CouldNot, []string{manuscript, "collection"}},
		{[]string{"export", file}, Misuse, []string{"--pdf OUT", "--png DIR", "--manuscript OUT"}},
		{[]string{"export", file, "--pdf", "a", "--png", "b"}, Misuse, []string{"one thing at a time"}},
		{[]string{"export", file, "--pdf", "a", "--edition"}, Misuse, []string{"--edition is for --manuscript"}},
		{[]string{"export", file, "--manuscript", "a", "--spreads"}, Misuse, []string{"--spreads is for"}},
		{[]string{"export", file, "--pdf", "a", "--dpi", "300"}, Misuse, []string{"--dpi is for --png"}},
		{[]string{"export", file, "--png", folder, "--dpi", "many"}, Misuse, []string{"--dpi", "many"}},
		{[]string{"export", file, "--png", folder, "--dpi", "0"}, CouldNot, []string{"pixels a point", "choose"}},
		{[]string{"export", file, "--pdf", file}, CouldNot, []string{file, "the collection itself", "another name"}},
		{[]string{"export", file, "--pdf", folder + "/no/where.pdf"}, CouldNot, []string{"where.pdf", "choose a folder"}},
		{[]string{"export", file, "--manuscript", folder + "/a.rtf"}, CouldNot, []string{"a.rtf"}},
		{[]string{"edit", file}, Misuse, []string{"the script, or -"}},
		{[]string{"edit", file, folder + "/nowhere"}, CouldNot, []string{"nowhere", "script"}},
		{[]string{"edit", "nowhere.headland", script}, CouldNot, []string{"nowhere.headland", "not there"}},
	}
	for _, test := range tests {
		r := run(t, "", test.args...)
		if r.status != test.status || r.out != "" {
			t.Errorf("headland %q: status %d, want %d; printed %q", test.args, r.status, test.status, r.out)
		}
		for _, want := range append(test.want, "headland: ") {
			if !strings.Contains(r.errs, want) {
				t.Errorf("headland %q says %q, want %q in it", test.args, r.errs, want)
			}
		}
	}
}

// TestWindow sees which command lines ask for a window.
func TestWindow(t *testing.T) {
	for line, window := range map[string]bool{
		"": true, "--demo": true, "-demo": true, "book.headland": true, "folder/book": true, "poems.md": true,
		"report": false, "help": false, "--version": false, "--help": false, "book": false, "--demo x": false, "a.md b.md": false,
	} {
		if got := forWindow(strings.Fields(line)); got != window {
			t.Errorf("headland %s asks for a window: %v, want %v", line, got, window)
		}
	}
}

// TestHelp sees that help knows every verb and every flag, and that the version
// is the one that the program is packaged with.
func TestHelp(t *testing.T) {
	all := done(t, "", "help")
	if done(t, "", "--help") != all {
		t.Error("--help is not help")
	}
	for _, v := range verbs() {
		if !strings.Contains(all, "headland "+v.name+" ") {
			t.Errorf("help does not know %s", v.name)
		}
		more := done(t, "", "help", v.name)
		if done(t, "", v.name, "--help") != more || !strings.Contains(more, v.usage) {
			t.Errorf("%s --help is not help %s", v.name, v.name)
		}
		for _, word := range strings.Fields(strings.Trim(v.usage, "[]")) {
			if flag := strings.Trim(word, "[]"); strings.HasPrefix(flag, "--") && !strings.Contains(v.more, flag) {
				t.Errorf("help %s does not say what %s does", v.name, flag)
			}
		}
	}
	toml := read(t, filepath.Join("..", "..", "FyneApp.toml"))
	if got := done(t, "", "--version"); got != "headland "+Version+"\n" || !strings.Contains(toml, `Version = "`+Version+`"`) {
		t.Errorf("--version says %q, and FyneApp.toml\n%s", got, toml)
	}
}

// TestFlagsAnywhere sees that flags and files may stand in any order, and that
// after two dashes nothing is a flag.
func TestFlagsAnywhere(t *testing.T) {
	file := book(t)
	want := done(t, "", "report", "--json", file)
	for _, args := range [][]string{{"report", file, "--json"}, {"report", "-json", file}, {"report", "--json", "--", file}} {
		if got := done(t, "", args...); got != want {
			t.Errorf("headland %q says otherwise", args)
		}
	}
	if r := run(t, "", "report", "--", file, "--json"); r.status != Misuse {
		t.Errorf("after two dashes --json is a flag: status %d", r.status)
	}
	out := filepath.Join(t.TempDir(), "other.headland")
	done(t, "", "import", "--out", out, write(t, t.TempDir(), "poems.md", verse))
}

// deaf can't be written to.
type deaf struct{}

func (deaf) Write([]byte) (int, error) { return 0, os.ErrClosed }

// TestUnheard sees that a report that nobody could read is not one.
func TestUnheard(t *testing.T) {
	file := book(t)
	for _, args := range [][]string{{"report", file}, {"report", file, "--json"}, {"help"}} {
		var errs strings.Builder
		if status, _ := Run(args, strings.NewReader(""), deaf{}, &errs); status != CouldNot || errs.Len() == 0 {
			t.Errorf("headland %q to a closed file: status %d, %q", args, status, errs.String())
		}
	}
}

// TestSeveralManuscripts sees that what was guessed is said, apart from what was
// asked for.
func TestSeveralManuscripts(t *testing.T) {
	folder := t.TempDir()
	one, two := write(t, folder, "one.md", verse), write(t, folder, "two.txt", "# Five\r\n\r\nA line.\r\n")
	r := run(t, "", "import", one, two, "-o", filepath.Join(folder, "book.headland"))
	if r.status != Done || !strings.Contains(r.out, "5 poems of 8 lines, from 2 manuscripts") {
		t.Errorf("status %d: %s%s", r.status, r.out, r.errs)
	}
}
