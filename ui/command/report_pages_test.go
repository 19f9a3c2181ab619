package command

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// rounds is a manuscript of two poems: the first takes two pages, which part at a
// stanza break that its uneven stanzas do not show; the second is of quatrains.
func rounds() string {
	var b strings.Builder
	b.WriteString("---\ntitle: Rounds\n---\n\n## The Round\n\n")
	door := 0
	for _, lines := range []int{5, 4, 5, 5, 5, 4, 5, 5} {
		for range lines {
			door++
			fmt.Fprintf(&b, "door %d and the lamp above it\n", door)
		}
		b.WriteString("\n")
	}
	b.WriteString("## Trays\n")
	for tray := range 3 {
		fmt.Fprintf(&b, "\ntray %d goes in,\nits shelf is known,\nthe door is shut\nand counted.\n", tray+1)
	}
	return b.String()
}

func roundsFile(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	file := filepath.Join(folder, "rounds.headland")
	done(t, "", "import", write(t, folder, "rounds.md", rounds()), "-o", file)
	return file
}

// TestFaultsAndRemedies sees that the faults of a book's pages are reported with
// what would mend them, that a page end that hides a stanza break is, and that once
// each is mended through a script --strict has nothing left to forbid.
func TestFaultsAndRemedies(t *testing.T) {
	file := roundsFile(t)
	r := reported(t, file)
	for kind, words := range map[string]string{"hidden-stanza-break": "a sign at the foot", "unfaced-poem": "a blank before: "} {
		found := faultsOf(r, kind)
		if len(found) != 1 || found[0].Poem != "The Round" {
			t.Fatalf("of the kind %s there is %+v, want one", kind, found)
		}
		if !slices.ContainsFunc(found[0].Remedies, func(m remedy) bool { return strings.HasPrefix(m.Text, words) }) {
			t.Errorf("%s has the remedies %+v, want %q among them", kind, found[0].Remedies, words)
		}
	}
	want := pageEnd{Kind: "between-stanzas", Poem: "The Round", Page: "1", Hides: true, Text: "door 20 and the lamp above it"}
	if len(r.PageEnds) != 1 || r.PageEnds[0].Why == "" {
		t.Fatalf("the page ends are %+v", r.PageEnds)
	}
	want.Why = r.PageEnds[0].Why
	if r.PageEnds[0] != want {
		t.Errorf("the page end is %+v, want %+v", r.PageEnds[0], want)
	}
	strict := func() int { return run(t, "", "report", file, "--strict").status }
	if got := strict(); got != Forbidden {
		t.Errorf("with two faults --strict gives %d", got)
	}
	done(t, `{"edit":"start","poem":"The Round","blank":true}
		{"edit":"design","hidden_breaks":"a sign"}`, "edit", file, "-")
	if got := strict(); got != Done {
		t.Errorf("with both mended --strict gives %d: %+v", got, reported(t, file).Faults)
	}
}

// TestKindsOfPageEnd sees that page ends that the poet forces or that part a stanza
// are told by their kinds.
func TestKindsOfPageEnd(t *testing.T) {
	file := roundsFile(t)
	script := `{"edit":"page","poem":2,"stanza":2,"line":1}` + "\n"
	for _, lines := range []int{5, 9, 14, 19, 24, 28, 33} {
		script += fmt.Sprintf(`{"edit":"stanza","poem":1,"stanza":1,"line":%d,"open":false}`, lines) + "\n"
	}
	done(t, script, "edit", file, "-")
	var got []string
	for _, e := range reported(t, file).PageEnds {
		got = append(got, fmt.Sprintf("%s %s hides %v", e.Kind, e.Poem, e.Hides))
	}
	if want := []string{"within-stanza The Round hides false", "forced Trays hides true"}; !slices.Equal(got, want) {
		t.Errorf("the page ends are %q, want %q", got, want)
	}
}

// TestProposedForms sees that a form is proposed by the shape of a poem until the
// poet declares one.
func TestProposedForms(t *testing.T) {
	file := roundsFile(t)
	want := []proposal{{"Trays", 2, "quatrains"}}
	if got := reported(t, file).Forms; !slices.Equal(got, want) {
		t.Errorf("proposed are %+v, want %+v", got, want)
	}
	done(t, `{"edit":"form","poem":"Trays","form":"couplets"}`, "edit", file, "-")
	if got := reported(t, file).Forms; len(got) != 0 {
		t.Errorf("once a form is declared, %+v are proposed", got)
	}
}

// TestProseOfPages sees that the report to be read has the faults with their
// remedies below them, then what page ends hide, forms, and the extent.
func TestProseOfPages(t *testing.T) {
	file := roundsFile(t)
	done(t, `{"edit":"design","binding":"stapled","signature":8}`, "edit", file, "-")
	out := done(t, "", "report", file)
	at := 0
	for _, want := range []string{
		"Faulty: 2 places\n  page 1          unfaced poem ", "\n      a blank before: ",
		"\n  page 2, line 1  hidden stanza break  The Round  ", "\n      a sign at the foot of every such page: ", "Hidden by a page end: 1 stanza break\n  foot of page 1  The Round  before “door 20 and the lamp above it”\n",
		"Forms that could be declared\n  #2 Trays  quatrains\n", "Extent: 3 pages and 5 blanks, so 1 signature of 8\n",
		"creep 0.14 mm where the spine is square, 0.23 mm where it is round\n", "Contents\n",
	} {
		i := strings.Index(out[at:], want)
		if i < 0 {
			t.Fatalf("%q is not where it should be in\n%s", want, out)
		}
		at += i + len(want)
	}
}

// TestFoliosAsPrinted sees that pages are named by their folios: with roman
// prelims the poems begin at 1, though all pages are counted; without, one arabic
// sequence runs through the book (New Hart's Rules 1.2.1).
func TestFoliosAsPrinted(t *testing.T) {
	file := roundsFile(t)
	alone := reported(t, file)
	done(t, `{"edit":"matter","kind":"title"}
		{"edit":"matter","kind":"contents"}`, "edit", file, "-")
	arabic := reported(t, file)
	prelims := arabic.Pages - alone.Pages
	if prelims < 2 || prelims%2 != 0 || arabic.Contents[0].Page != fmt.Sprint(prelims+1) || arabic.PageEnds[0].Page != fmt.Sprint(prelims+1) {
		t.Errorf("after %d pages of prelims the contents are %+v, the page ends %+v", prelims, arabic.Contents, arabic.PageEnds)
	}
	done(t, `{"edit":"matter","roman":true}`, "edit", file, "-")
	roman := reported(t, file)
	if roman.Pages != arabic.Pages || roman.Contents[0].Page != "1" || roman.PageEnds[0].Page != "1" {
		t.Errorf("with roman prelims %d pages, the contents are %+v", roman.Pages, roman.Contents)
	}
}
