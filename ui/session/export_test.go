package session

import (
	"bytes"
	"errors"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// output runs a tool that the tests need; that it is not there is a failure.
func output(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v (make setup-test installs what is missing)\n%s", name, err, out)
	}
	return string(out)
}

// names are what lies in a folder.
func names(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	must(t, err)
	var all []string
	for _, e := range entries {
		all = append(all, e.Name())
	}
	return all
}

// TestExportPDF has others read the PDF: it is sound, and every line of the
// committed book is in it, the previewed ones not.
func TestExportPDF(t *testing.T) {
	s := imported(t)
	path := filepath.Join(t.TempDir(), "book.pdf")
	ref, _ := lineOf(t, s, 1, 1, 1)
	must(t, s.Preview(pagemodel.Retype{LineRef: ref, Text: "Nobody may see this"}))
	must(t, s.ExportPDF(path, PDFOptions{}, nil))
	output(t, "qpdf", "--check", path)
	words := strings.Fields(output(t, "pdftotext", "-layout", path, "-"))
	for _, line := range []string{"One loaf on the sill,", long, "So that was that."} {
		if !strings.Contains(strings.Join(words, " "), line) {
			t.Errorf("%q is not in the PDF", line)
		}
	}
	if slices.Contains(words, "Nobody") {
		t.Error("the preview is in the PDF")
	}
	info := output(t, "pdfinfo", path)
	for _, want := range []string{"Title:           Three Poems", "Author:          A. N. Other", "Pages:           3"} {
		if !strings.Contains(info, want) {
			t.Errorf("%q is not in what pdfinfo says:\n%s", want, info)
		}
	}
	must(t, s.ExportPDF(path, PDFOptions{Spreads: true}, nil))
	if info := output(t, "pdfinfo", path); !strings.Contains(info, "Pages:           2") {
		t.Errorf("three pages make two spreads; pdfinfo says:\n%s", info)
	}
}

// TestCancel sees that an export that is stopped leaves what was there.
func TestCancel(t *testing.T) {
	s := imported(t)
	path := write(t, "book.pdf", "an older one")
	for _, last := range []int{0, 3} {
		err := s.ExportPDF(path, PDFOptions{}, func(done, of int) bool { return done < last })
		if !errors.Is(err, ErrCancelled) {
			t.Errorf("stopped after %d pages: %v, want ErrCancelled", last, err)
		}
	}
	if left := names(t, filepath.Dir(path)); !slices.Equal(left, []string{"book.pdf"}) {
		t.Errorf("stopped, it leaves %q", left)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != "an older one" {
		t.Errorf("the older one is now %.20q, %v", got, err)
	}
	folder := t.TempDir()
	err := s.ExportPNG(folder, 1, false, func(done, of int) bool { return done < 2 })
	if left := names(t, folder); !errors.Is(err, ErrCancelled) || len(left) != 2 {
		t.Errorf("stopped after two pictures: %v, and there are %q", err, left)
	}
}

// TestExportPNG sees that every page has a picture of its size.
func TestExportPNG(t *testing.T) {
	s := imported(t)
	tests := []struct {
		spreads bool
		want    []string
		width   int
	}{
		{false, []string{"page-001.png", "page-002.png", "page-003.png"}, 366},
		{true, []string{"spread-001.png", "spread-002-003.png"}, 732},
	}
	for _, test := range tests {
		folder := filepath.Join(t.TempDir(), "new", "folder")
		told := 0
		must(t, s.ExportPNG(folder, 1, test.spreads, func(done, of int) bool {
			if told++; done != told || of != len(test.want) {
				t.Errorf("told of %d of %d, want %d of %d", done, of, told, len(test.want))
			}
			return true
		}))
		if got := names(t, folder); !slices.Equal(got, test.want) {
			t.Errorf("the pictures are %q, want %q", got, test.want)
		}
		data, err := os.ReadFile(filepath.Join(folder, test.want[1]))
		must(t, err)
		img, err := png.Decode(bytes.NewReader(data))
		must(t, err)
		if size := img.Bounds().Size(); size.X != test.width || size.Y != 561 {
			t.Errorf("%s is %v, want %d by 561", test.want[1], size, test.width)
		}
	}
	for _, scale := range []float64{0, -1, 1e9} {
		refused(t, s.ExportPNG(t.TempDir(), scale, false, nil), "pixels a point", "choose")
	}
}

// TestExportManuscript sees that the text comes out as it went in, and that
// this edition's breaks come with it when asked for.
func TestExportManuscript(t *testing.T) {
	s := imported(t)
	path := filepath.Join(t.TempDir(), "poems.md")
	export := func(edition bool) string {
		_, err := s.ExportManuscript(path, edition)
		must(t, err)
		data, err := os.ReadFile(path)
		must(t, err)
		return string(data)
	}
	if got := export(false); got != verse {
		t.Errorf("it comes out as\n%s\nand went in as\n%s", got, verse)
	}
	ref, _ := lineOf(t, s, 2, 1, 1)
	must(t, s.Do(pagemodel.Break{LineRef: ref, At: strings.Index(long, "and the"), In: pagemodel.InEdition}))
	if got := export(false); got != verse {
		t.Errorf("a break in the edition changes the text:\n%s", got)
	}
	if got := export(true); !strings.Contains(got, "about it,\nand the whole") {
		t.Errorf("this edition's break is not in\n%s", got)
	}
}

// TestNothingReplacesTheCollection sees that no export is written over the file
// itself, under whatever name.
func TestNothingReplacesTheCollection(t *testing.T) {
	s := imported(t)
	other := filepath.Join(t.TempDir(), "link.md")
	must(t, os.Symlink(s.Path(), other))
	for _, path := range []string{s.Path(), other} {
		refused(t, s.ExportPDF(path, PDFOptions{}, nil), path, "choose another name")
		_, err := s.ExportManuscript(path, false)
		refused(t, err, path, "choose another name")
		refused(t, s.SaveCopyOver(path), path, "choose another name")
	}
	if inFile(t, s.Path()) != text(s.Collection()) {
		t.Error("the file is not what it was")
	}
}

// TestExportWhileEditing sees that an export goes on with the book as it stood.
// It is for the race detector too.
func TestExportWhileEditing(t *testing.T) {
	s := imported(t)
	x, err := s.Export()
	must(t, err)
	path := filepath.Join(t.TempDir(), "book.pdf")
	done := make(chan error)
	go func() { done <- firstOf(x.PDF(path, PDFOptions{}, nil), x.PNG(filepath.Dir(path), 1, true, nil)) }()
	ref, _ := lineOf(t, s, 1, 1, 1)
	for _, text := range []string{"Two loaves", "Three loaves", "No loaf"} {
		must(t, s.Do(pagemodel.Retype{LineRef: ref, Text: text}))
		s.Setting().Page(1)
	}
	must(t, <-done)
	if !strings.Contains(output(t, "pdftotext", path, "-"), "One loaf") {
		t.Error("the PDF is not of the book as it stood")
	}
}

// TestNoPages sees that an empty book is refused in words.
func TestNoPages(t *testing.T) {
	s, err := Create(filepath.Join(t.TempDir(), "empty.headland"), pagemodel.NewCollection(pagemodel.About{}, pagemodel.DefaultDesign()))
	must(t, err)
	defer closed(t, s)
	if s.Page() != 1 || s.Spread() != (pagemodel.Spread{}) {
		t.Errorf("an empty book lies open at page %d, %v", s.Page(), s.Spread())
	}
	refused(t, s.ExportPDF(filepath.Join(t.TempDir(), "book.pdf"), PDFOptions{}, nil), "empty.headland", "no pages")
}

// TestWriteWhole sees that a file is whole or as it was.
func TestWriteWhole(t *testing.T) {
	s := imported(t)
	missing := filepath.Join(t.TempDir(), "nowhere", "book.pdf")
	refused(t, s.ExportPDF(missing, PDFOptions{}, nil), missing, "choose a folder")
	refused(t, s.ExportPDF(t.TempDir(), PDFOptions{}, nil), "choose another name")
	path := write(t, "book.md", "an older one")
	must(t, os.Chmod(path, 0o600))
	_, err := s.ExportManuscript(path, false)
	must(t, err)
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("a file that only its owner could read is now %v, %v", info.Mode(), err)
	}
	if left := names(t, filepath.Dir(path)); !slices.Equal(left, []string{"book.md"}) {
		t.Errorf("beside the file lie %q", left)
	}
}
