package record

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

var update = flag.Bool("update", false, "write the golden texts anew")

func garamond(t *testing.T, italic bool) *typeset.Face {
	t.Helper()
	data, ok := assets.FaceBytes(assets.EBGaramond, false, italic)
	if !ok {
		t.Fatal("assets carries no EB Garamond")
	}
	f, err := typeset.ParseFace(data)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// run is text with a glyph for each byte, made by hand.
func run(f *typeset.Face, text string, start int, x typeset.Length) typeset.Run {
	r := typeset.Run{Face: f, Size: pagemodel.Pt(11), X: x, Text: text, Start: start}
	for i := range len(text) {
		g := typeset.Glyph{ID: uint32(text[i]), X: r.Width, Advance: 300 + typeset.Length(i%3), Cluster: i}
		if text[i] == '\'' {
			g.Y = -5
		}
		r.Glyphs = append(r.Glyphs, g)
		r.Width += g.Advance
	}
	return r
}

// sample has a title, an overlong line and what it turns over, a line in two
// faces with a no-break space, and a folio.
func sample(t *testing.T) *typeset.Page {
	roman, italic := garamond(t, false), garamond(t, true)
	trim, _ := pagemodel.TrimNamed("B-format")
	pt := pagemodel.Pt
	x := pt(48.1875)
	return &typeset.Page{
		Number: 7, Folio: "7", Side: pagemodel.Recto, Trim: trim,
		Text: typeset.Rect{X: x, Y: pt(56.6875), W: pt(263.640625), H: pt(439.375)},
		Rows: []typeset.Row{
			{Poem: 3, Role: typeset.RoleTitle, End: 8, Grid: 3, X: x, Baseline: pt(95.6875), Width: 2407, Room: pt(263.640625),
				Last: true, Runs: []typeset.Run{run(roman, "Headland", 0, 0)}},
			{Poem: 3, Line: 41, End: 14, Number: 1, Grid: 6, X: x, Baseline: pt(137.6875), Width: 4213, Overrun: 1203, Room: pt(66),
				Runs: []typeset.Run{run(roman, "where the line", 0, 0)}},
			{Poem: 3, Line: 41, Turn: typeset.Turnover, Start: 15, End: 20, Number: 2, Grid: 7, X: x + 704, Baseline: pt(151.6875), Width: 1504,
				Room: pt(55), Last: true, Runs: []typeset.Run{run(roman, "turns", 15, 0)}},
			{Poem: 3, Line: 42, Turn: typeset.EditionBreak, Start: 4, End: 13, Number: 3, Grid: 9, X: x, Baseline: pt(179.6875), Width: 2708,
				Room: pt(263.640625), Last: true,
				Runs: []typeset.Run{run(roman, "o'er ", 4, 0), run(italic, "a\u00a0\"b", 9, 1505)}},
			{Role: typeset.RoleFolio, End: 1, X: pt(178), Baseline: pt(530), Width: 300, Runs: []typeset.Run{run(roman, "7", 0, 0)}},
		},
	}
}

func written(t *testing.T, write func(io.Writer, ...*typeset.Page) error, pages ...*typeset.Page) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, pages...); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// golden compares with testdata/name and leaves what differs in
// testdata/failed.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	want, err := os.ReadFile(path)
	if !*update && err == nil && got == string(want) {
		return
	}
	if !*update {
		path = filepath.Join("testdata", "failed", name)
		t.Errorf("%s differs; see %s (-update accepts): %v\n%s", name, path, err, got)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
		t.Fatal(err)
	}
}

func TestGoldenPage(t *testing.T) {
	blank := &typeset.Page{Number: 8, Side: pagemodel.Verso, Trim: sample(t).Trim}
	golden(t, "pages.txt", written(t, Pages, sample(t), blank, nil))
}

func TestGoldenGlyphs(t *testing.T) {
	golden(t, "glyphs.txt", written(t, Glyphs, sample(t)))
}

func TestPageIsOneOfPages(t *testing.T) {
	var b bytes.Buffer
	if err := Page(&b, sample(t)); err != nil {
		t.Fatal(err)
	}
	if got := written(t, Pages, sample(t)); got != b.String() {
		t.Errorf("one page is written\n%s\nand among others\n%s", b.String(), got)
	}
}

// Equal pages, made apart and with faces parsed apart, give equal bytes.
func TestEqualPagesAreEqual(t *testing.T) {
	for _, write := range []func(io.Writer, ...*typeset.Page) error{Pages, Glyphs} {
		if a, b := written(t, write, sample(t)), written(t, write, sample(t)); a != b {
			t.Errorf("twice the same page:\n%s\n%s", a, b)
		}
	}
}

// Whatever one field of a page is changed, down to the last glyph, the text
// must change.
func TestEveryDifferenceShows(t *testing.T) {
	for name, write := range map[string]func(io.Writer, ...*typeset.Page) error{"Pages": Pages, "Glyphs": Glyphs} {
		before := written(t, write, sample(t))
		pg := sample(t)
		seen := map[string]bool{}
		change(reflect.ValueOf(pg).Elem(), "page", func(path string) {
			seen[path] = true
			if got := written(t, write, pg); got == before {
				t.Errorf("%s does not show that %s changed", name, path)
			}
		})
		if len(seen) < 30 {
			t.Errorf("only %d fields were changed: %v", len(seen), seen)
		}
		if got := written(t, write, pg); got != before {
			t.Error("the page was not put back")
		}
	}
}

// change changes every number, string and truth value under v for as long as
// changed runs, and then puts it back. Of long lists the last two will do.
func change(v reflect.Value, path string, changed func(path string)) {
	old := reflect.New(v.Type()).Elem()
	old.Set(v)
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if !v.Type().Field(i).IsExported() {
				continue // nobody else's to see
			}
			change(v.Field(i), path+"."+v.Type().Field(i).Name, changed)
		}
		return
	case reflect.Slice:
		for i := range v.Len() {
			if path != "page.Rows.Runs.Glyphs" || i >= v.Len()-2 {
				change(v.Index(i), path, changed)
			}
		}
		v.Set(v.Slice(0, v.Len()-1))
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.String:
		v.SetString(v.String() + "x")
	case reflect.Pointer:
		v.SetZero()
	default:
		step(v)
	}
	changed(path)
	v.Set(old)
}

// step changes a number by one, and an enumeration to a neighbour.
func step(v reflect.Value) {
	switch {
	case v.CanUint():
		v.SetUint(v.Uint() + 1)
	case v.Int() > 0:
		v.SetInt(v.Int() - 1)
	default:
		v.SetInt(v.Int() + 1)
	}
}

type broken struct{}

var errFull = errors.New("no room")

func (broken) Write([]byte) (int, error) { return 0, errFull }

func TestWriterErrorComesBack(t *testing.T) {
	if err := Page(broken{}, sample(t)); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}

func TestNothingUnseenIsLeftUnseen(t *testing.T) {
	if got := written(t, Pages, sample(t)); !strings.Contains(got, `a\u00a0\"b`) {
		t.Errorf("a no-break space can't be told from a space:\n%s", got)
	}
}
