package marks

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset/marks/overlay"
	"headland/typeset/pdf"
)

// tool runs an outside tool and gives what it prints; anything it complains of
// fails the test.
func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	var out, complaints bytes.Buffer
	command := exec.Command(name, args...)
	command.Stdout, command.Stderr = &out, &complaints
	if err := command.Run(); err != nil || complaints.Len() > 0 {
		t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, complaints.String())
	}
	return out.String()
}

// A marked proof is a sound PDF (qpdf), and in its text stand the words of the
// pages, the words to be put in and every correction's number and letters
// (pdftotext).
func TestMarkedProofReads(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir()) // of the subsetter's compiled code
	p := everything(t, pagemodel.Upright)
	d := pdf.Document{Title: "Night Bakery", Sheet: pdf.Sheet{Proof: ProofRoom}, Overlays: map[int]overlay.Overlay{}}
	for n := 1; n <= p.set.Extent(); n++ {
		d.Pages = append(d.Pages, p.set.Page(n))
		d.Overlays[n-1] = OnProof(p.set, n, &p.list, p.setter, ProofRoom)
	}
	path := filepath.Join(t.TempDir(), "marked.pdf")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := pdf.Write(f, d); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	tool(t, "qpdf", "--check", path)
	text := strings.Join(strings.Fields(tool(t, "pdftotext", "-raw", path, "-")), " ")
	wanted := []string{"a clock that no one winds", "lane", "already", "in the whole length", "move the poem “The Proving Drawer” after the poem “Delivery”", "2 em"}
	for _, c := range p.list.All {
		wanted = append(wanted, fmt.Sprintf("%d %s", c.Number, c.Whose))
	}
	for _, want := range wanted {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in %q", want, text)
		}
	}
	if got := tool(t, "pdfinfo", path); !strings.Contains(got, fmt.Sprintf("Pages:           %d", p.set.Extent())) {
		t.Errorf("not %d pages:\n%s", p.set.Extent(), got)
	}
}

// A page across the spread has the marks of its own half only.
func TestAcrossTheSpreadEachHalfIsMarked(t *testing.T) {
	p := everything(t, pagemodel.Across)
	seen := map[string]int{}
	for n := 1; n <= p.set.Extent(); n++ {
		o := On(p.set, n, &p.list, p.setter)
		for _, l := range labels(&o) {
			seen[l]++
		}
		for i := range o.Rows {
			if r := &o.Rows[i]; r.X < 0 || r.X+r.Width > p.set.Page(n).Trim.Width {
				t.Errorf("page %d: %q stands at %v, off the page", n, r.Runs[0].Text, r.X)
			}
		}
	}
	for _, c := range p.list.All {
		if l := fmt.Sprintf("%d %s", c.Number, c.Whose); seen[l] != 1 {
			t.Errorf("%s stands in the margins %d times", l, seen[l])
		}
	}
}
