package command

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestExportMarks sees that --marks puts paper with crop marks round the same
// trim, which is there in any case (pdfinfo; B-format is 365.67 by 561.27 pt).
func TestExportMarks(t *testing.T) {
	file, path := book(t), filepath.Join(t.TempDir(), "book.pdf")
	for _, c := range []struct {
		flags       []string
		media, trim string
	}{
		{nil, "0.00     0.00   365.67   561.27", "0.00     0.00   365.67   561.27"},
		{[]string{"--marks"}, "0.00     0.00   411.02   606.61", "22.67    22.67   388.34   583.94"},
	} {
		done(t, "", append([]string{"export", file, "--pdf", path}, c.flags...)...)
		output(t, "qpdf", "--check", path)
		info := output(t, "pdfinfo", "-box", path)
		for box, want := range map[string]string{"MediaBox:": c.media, "TrimBox:": c.trim, "BleedBox:": c.trim} {
			if _, after, _ := strings.Cut(info, box); !strings.HasPrefix(strings.TrimSpace(after), want) {
				t.Errorf("with %q the %s is not %s:\n%s", c.flags, box, want, info)
			}
		}
	}
}

// TestExportDummy sees that a dummy is written, and that it is said how it is
// printed and folded.
func TestExportDummy(t *testing.T) {
	file, path := book(t), filepath.Join(t.TempDir(), "dummy.pdf")
	for _, c := range []struct {
		flags []string
		want  string
		size  string
	}{
		{nil, "1 sheet of A4 folded once", "841.8"},
		{[]string{"--paper", "letter", "--section", "0"}, "1 sheet of Letter folded once", "792 x 612"},
	} {
		out := done(t, "", append([]string{"export", file, "--pdf", path, "--dummy"}, c.flags...)...)
		want := path + ": " + c.want + "; print at actual size on both sides, flip on the short edge; pages at 100 per cent\n"
		if out != want {
			t.Errorf("with %q it says %q, want %q", c.flags, out, want)
		}
		if info := output(t, "pdfinfo", path); !strings.Contains(info, "Pages:           2") || !strings.Contains(info, c.size) {
			t.Errorf("with %q it is not two sides of that paper:\n%s", c.flags, info)
		}
	}
}

// TestExportRefusals goes through what does not go together on sheets of paper.
func TestExportRefusals(t *testing.T) {
	file, path := book(t), filepath.Join(t.TempDir(), "dummy.pdf")
	for _, c := range []struct {
		flags  []string
		status int
		want   string
	}{
		{[]string{"--png", "a", "--marks"}, Misuse, "--marks and --dummy are for --pdf"},
		{[]string{"--manuscript", "a", "--dummy"}, Misuse, "--marks and --dummy are for --pdf"},
		{[]string{"--pdf", path, "--dummy", "--spreads"}, Misuse, "leave out --spreads"},
		{[]string{"--pdf", path, "--dummy", "--marks"}, Misuse, "leave out --spreads and --marks"},
		{[]string{"--pdf", path, "--spreads", "--marks"}, Misuse, "--marks is for single pages"},
		{[]string{"--pdf", path, "--paper", "A4"}, Misuse, "are for --dummy"},
		{[]string{"--pdf", path, "--section", "8"}, Misuse, "are for --dummy"},
		{[]string{"--pdf", path, "--dummy", "--section", "many"}, Misuse, "--section"},
		{[]string{"--pdf", path, "--dummy", "--section", "12"}, CouldNot, "4, 8, 16 or 32"},
		{[]string{"--pdf", path, "--dummy", "--paper", "A3"}, CouldNot, "A4 or Letter"},
	} {
		r := run(t, "", append([]string{"export", file}, c.flags...)...)
		if r.status != c.status || !strings.Contains(r.errs, c.want) || r.out != "" {
			t.Errorf("with %q: status %d, %q; want %d and %q", c.flags, r.status, r.errs, c.status, c.want)
		}
	}
}
