package pdf

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// The outside tools that read back what is written here: qpdf (structure);
// pdffonts, pdfinfo and pdftotext of Poppler (fonts, boxes, text); gs
// (Ghostscript: ink). A missing tool fails its tests: on Debian they are in
// the packages qpdf, poppler-utils and ghostscript.

// TestMain keeps the subsetter's compiled code out of the tester's own cache.
func TestMain(m *testing.M) {
	os.Exit(withCache(m))
}

func withCache(m *testing.M) int {
	folder, err := os.MkdirTemp("", "headland-pdf")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(folder)
	os.Setenv("XDG_CACHE_HOME", folder)
	return m.Run()
}

// tool runs an outside tool and gives what it prints; anything it complains of
// fails the test.
func tool(t testing.TB, name string, args ...string) string {
	t.Helper()
	var out, complaints bytes.Buffer
	cmd := exec.Command(name, args...)
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil || complaints.Len() > 0 {
		t.Fatalf("%s %s: %v\n%s", name, strings.Join(args, " "), err, complaints.String())
	}
	return out.String()
}

// written is the document's bytes.
func written(t testing.TB, d Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// saved is the path of a file with the document, sound by qpdf's check.
func saved(t testing.TB, d Document) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "out.pdf")
	if err := os.WriteFile(path, written(t, d), 0o600); err != nil {
		t.Fatal(err)
	}
	tool(t, "qpdf", "--check", path)
	return path
}

// bFormat is the trim of sample pages.
var bFormat = pagemodel.Trim{Width: pagemodel.MM(129), Height: pagemodel.MM(198)}

// pageOf is a B-format recto with the rows.
func pageOf(rows ...typeset.Row) *typeset.Page {
	return &typeset.Page{Number: 1, Trim: bFormat, Rows: rows}
}

// blankPages are n pages with nothing on them, recto first.
func blankPages(n int) []*typeset.Page {
	pages := make([]*typeset.Page, n)
	for i := range pages {
		pages[i] = pageOf()
		pages[i].Number, pages[i].Side = i+1, pagemodel.SideOf(i+1)
	}
	return pages
}
