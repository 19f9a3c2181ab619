package command

import (
	"archive/zip"
	"encoding/csv"
	"encoding/json"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// sentAndChanged is a book that went out and has had three corrections since.
func sentAndChanged(t *testing.T) string {
	t.Helper()
	file := book(t)
	done(t, "", "mark-sent", file)
	done(t, `{"edit":"text","poem":1,"stanza":2,"line":1,"text":"Nobody was thirsty."}
		{"edit":"break","poem":2,"stanza":1,"line":1,"after":7}
		{"edit":"head","poem":4,"dedication":"for the ovens"}`, "edit", file, "-")
	return file
}

// listed are the corrections of a file, read back.
func listed(t *testing.T, file string, flags ...string) []correction {
	t.Helper()
	var all []correction
	args := append([]string{"corrections", file, "--json"}, flags...)
	if err := json.Unmarshal([]byte(done(t, "", args...)), &all); err != nil {
		t.Fatal(err)
	}
	return all
}

func TestMarkSent(t *testing.T) {
	file, today := book(t), time.Now().Format(time.DateOnly)
	if got, want := done(t, "", "mark-sent", file), file+": marked as sent: copy-edit, "+today+", 4 pages\n"; got != want {
		t.Errorf("mark-sent says %q, want %q", got, want)
	}
	done(t, "", "mark-sent", file, "--round", "to the friend")
	done(t, `{"edit":"mark-sent","name":"revises"}`, "edit", file, "-")
	want := []sentRound{{"copy-edit", today}, {"to the friend", today}, {"revises", today}}
	if got := reported(t, file).Rounds; !slices.Equal(got, want) {
		t.Errorf("the rounds are %v, want %v", got, want)
	}
	done(t, `{"edit":"undo"}`, "edit", file, "-")
	if got := reported(t, file).Rounds; !slices.Equal(got, want[:2]) {
		t.Errorf("undone, the rounds are %v, want %v", got, want[:2])
	}
}

// TestCorrections sees that what differs from the pages that went out is listed
// with where it stood on them, and that what lies before the round is not.
func TestCorrections(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"text","poem":3,"stanza":1,"line":1,"text":"Before the round."}`, "edit", file, "-")
	done(t, "", "mark-sent", file)
	if got := listed(t, file); len(got) != 0 {
		t.Fatalf("nothing was changed, and the corrections are %+v", got)
	}
	done(t, `{"edit":"text","poem":1,"stanza":2,"line":1,"text":"Nobody was thirsty."}`, "edit", file, "-")
	all := listed(t, file)
	if len(all) != 1 {
		t.Fatalf("the corrections are %+v", all)
	}
	got := all[0]
	want := correction{
		Number: 1, Kind: "substitute", Poem: "Bread", Stanza: 2, Line: 1, Page: "1", Row: 3,
		Was: got.Was, Is: got.Is, Whose: "AA", State: "open",
	}
	if got != want || !strings.Contains(got.Was, "hungry") || !strings.Contains(got.Is, "thirsty") {
		t.Errorf("the correction is\n%+v, want\n%+v", got, want)
	}
}

// TestCorrectionsJSON sees that a correction has just the names that other programs
// read it by.
func TestCorrectionsJSON(t *testing.T) {
	var all []map[string]any
	if err := json.Unmarshal([]byte(done(t, "", "corrections", sentAndChanged(t), "--json")), &all); err != nil || len(all) == 0 {
		t.Fatal(len(all), err)
	}
	want := []string{
		"answer", "is", "kind", "line", "moves", "number", "page", "poem", "question", "reason", "row", "stanza", "state", "was", "whose",
	}
	for _, c := range all {
		if got := keysOf(c); !slices.Equal(got, want) {
			t.Errorf("a correction has %q, want %q", got, want)
		}
	}
}

// TestCorrectionsOfARound sees that the list of a round goes up to the next.
func TestCorrectionsOfARound(t *testing.T) {
	file := sentAndChanged(t)
	before := listed(t, file)
	done(t, "", "mark-sent", file)
	if got := listed(t, file); len(got) != 0 {
		t.Errorf("sent again, the corrections are %+v", got)
	}
	done(t, `{"edit":"text","poem":3,"stanza":1,"line":1,"text":"Later."}`, "edit", file, "-")
	if got := listed(t, file, "--round", "Copy-Edit"); !slices.Equal(got, before) {
		t.Errorf("the corrections of the first round are\n%+v, want\n%+v", got, before)
	}
	if got := listed(t, file); len(got) == 0 || slices.Equal(got, before) {
		t.Errorf("the corrections of the second round are %+v", got)
	}
}

// TestReplies notes what becomes of a correction, which keeps its note when its
// number changes.
func TestReplies(t *testing.T) {
	file := sentAndChanged(t)
	i := slices.IndexFunc(listed(t, file), func(c correction) bool { return c.Poem == "Weights" })
	if i < 0 {
		t.Fatalf("none of %+v is of the poem that was broken", listed(t, file))
	}
	number, _ := json.Marshal(i + 1)
	reply := func(rest string) { done(t, `{"edit":"reply","number":`+string(number)+rest+`}`, "edit", file, "-") }
	reply(`,"state":"queried","whose":"ea","question":"here?"`)
	reply(`,"answer":"there","round":"copy-edit","reason":"two breaths","shown":true`)
	check := func() {
		t.Helper()
		all := listed(t, file)
		i := slices.IndexFunc(all, func(c correction) bool { return c.Poem == "Weights" })
		if i < 0 || all[i].State != "queried" || all[i].Whose != "EA" || all[i].Question != "here?" || all[i].Answer != "there" || all[i].Reason != "two breaths" {
			t.Errorf("the corrections are %+v", all)
		}
	}
	check()
	done(t, `{"edit":"text","poem":1,"stanza":1,"line":1,"text":"A loaf on the sill"}`, "edit", file, "-")
	check()
}

// TestCorrectionsWritten writes the list in every form, and the marked proof, and
// sees that they hold what was corrected.
func TestCorrectionsWritten(t *testing.T) {
	file, folder := sentAndChanged(t), t.TempDir()
	path := func(name string) string { return filepath.Join(folder, name) }
	out := done(t, "", "corrections", file, "--pdf", path("a.pdf"), "--docx", path("a.docx"), "--csv", path("a.csv"), "--txt", path("a.txt"), "--marked", path("marked.pdf"))
	for _, name := range []string{"a.pdf", "a.docx", "a.csv", "a.txt", "marked.pdf"} {
		if !strings.Contains(out, path(name)+": ") || !strings.Contains(out, "corrections of copy-edit\n") {
			t.Errorf("corrections does not say that it wrote %s:\n%s", name, out)
		}
	}
	output(t, "qpdf", "--check", path("a.pdf"))
	output(t, "qpdf", "--check", path("marked.pdf"))
	for name, text := range map[string]string{
		"a.pdf": output(t, "pdftotext", path("a.pdf"), "-"), "a.txt": read(t, path("a.txt")), "a.docx": inside(t, path("a.docx"), "word/document.xml"),
		"a.csv": read(t, path("a.csv")), "marked.pdf": output(t, "pdftotext", path("marked.pdf"), "-"), "printed": done(t, "", "corrections", file),
	} {
		for _, want := range []string{"hungry", "thirsty"} {
			if !strings.Contains(text, want) {
				t.Errorf("%q is not in %s:\n%s", want, name, text)
			}
		}
	}
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(read(t, path("a.csv")), "\ufeff"))).ReadAll()
	if err != nil || len(rows) <= len(listed(t, file)) {
		t.Errorf("the table has %d rows, %v", len(rows), err)
	}
	if info := output(t, "pdfinfo", path("marked.pdf")); !strings.Contains(info, "Pages:           4") {
		t.Errorf("the marked proof has not the four pages that were sent:\n%s", info)
	}
	if got := run(t, "", "corrections", file, "--json", "--txt", path("b.txt")); got.out != done(t, "", "corrections", file, "--json") {
		t.Errorf("with a file to write, --json prints %s", got.out)
	}
}

// inside is one file of a zip archive.
func inside(t *testing.T, path, name string) string {
	t.Helper()
	archive, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer archive.Close()
	f, err := archive.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	text, err := io.ReadAll(f)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestManuscripts writes the text in every form that there is, the poem's lines and
// the edition's.
func TestManuscripts(t *testing.T) {
	file, folder := book(t), t.TempDir()
	done(t, `{"edit":"break",`+atLong+`,"after":7,"in":"edition"}`, "edit", file, "-")
	for _, c := range []struct{ name, inside string }{
		{"a.md", ""}, {"a.txt", ""}, {"a.docx", "word/document.xml"}, {"a.odt", "content.xml"},
	} {
		for _, edition := range []bool{false, true} {
			path := filepath.Join(folder, c.name)
			args := []string{"export", file, "--manuscript", path}
			if edition {
				args = append(args, "--edition")
			}
			if r := run(t, "", args...); r.status != Done || !strings.HasPrefix(r.out, path+": 4 poems of 7 lines") {
				t.Errorf("headland %q: status %d, %s%s", args, r.status, r.out, r.errs)
				continue
			}
			text := ""
			if c.inside != "" {
				text = inside(t, path, c.inside)
			} else {
				text = read(t, path)
			}
			if whole := strings.Contains(text, long); whole == edition {
				t.Errorf("%s, edition %v: the line is whole: %v\n%s", c.name, edition, whole, text)
			}
		}
	}
}
