package pdf

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"headland/assets"
	"headland/typeset"
)

// eachFamily runs a test with each family's regular face: EB Garamond is
// OpenType with CFF outlines, Gentium Book Plus is TrueType.
func eachFamily(t *testing.T, test func(t *testing.T, s *setter)) {
	for _, family := range assets.Families() {
		t.Run(family, func(t *testing.T) { test(t, newSetter(t, faceNamed(t, family, false))) })
	}
}

// copied is the text of a page with the rows under each other, as pdftotext
// gives it.
func copied(t *testing.T, rows ...typeset.Row) string {
	t.Helper()
	path := saved(t, Document{Pages: []*typeset.Page{pageOf(rows...)}})
	return strings.TrimSuffix(tool(t, "pdftotext", "-raw", path, "-"), "\f")
}

// What was written copies out exactly (pdftotext), whatever glyphs it was set
// with: ligatures, EB Garamond's "fi" of two glyphs, accents in one character
// or two, characters that show nothing.
func TestTextCopiesOutExactly(t *testing.T) {
	lines := []string{
		"final affinities office",
		"crème, naïve, żurek",
		"cre\u0300me and e\u0301te\u0301",
		"o\u0323\u0301run X\u0323\u0301 then", // no font has these whole: accents stand as glyphs
		"“fjord—Qu’on” … baffled Thy flask",
		"soft\u00adhyphen and shelf\u200cful",
	}
	eachFamily(t, func(t *testing.T, s *setter) {
		var rows []typeset.Row
		for i, l := range lines {
			rows = append(rows, s.row(t, l, 40, float64(60+20*i), 11))
		}
		if got, want := copied(t, rows...), strings.Join(lines, "\n")+"\n"; got != want {
			t.Errorf("got\n%q, want\n%q", got, want)
		}
	})
}

// Small capitals copy out as the small letters that they were written as
// (pdftotext), also where capitals of the same letters stand beside them.
func TestSmallCapitalsCopyOutAsWritten(t *testing.T) {
	const line = "The sea Été office"
	eachFamily(t, func(t *testing.T, s *setter) {
		small := s.row(t, line, 40, 60, 11, "smcp")
		plain := s.row(t, line, 40, 80, 11)
		if small.Runs[0].Glyphs[1].ID == plain.Runs[0].Glyphs[1].ID {
			t.Fatal("the face has no small capitals")
		}
		if got, want := copied(t, small, plain), line+"\n"+line+"\n"; got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	})
}

// Two faces on one row are one line of text (pdftotext).
func TestFacesOnOneRow(t *testing.T) {
	roman := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	italic := newSetter(t, faceNamed(t, assets.EBGaramond, true))
	row := roman.row(t, "the sea ", 40, 60, 11)
	second := italic.row(t, "affine", 40, 60, 11).Runs[0]
	last := row.Runs[0].Glyphs[len(row.Runs[0].Glyphs)-1]
	second.X = last.X + last.Advance
	row.Runs = append(row.Runs, second)
	if got := copied(t, row); got != "the sea affine\n" {
		t.Errorf("got %q", got)
	}
}

// retold makes each glyph of a row stand for a text of its own.
func retold(row typeset.Row, texts []string) typeset.Row {
	run := row.Runs[0]
	run.Text = ""
	for i, text := range texts {
		run.Glyphs[i].Cluster = len(run.Text)
		run.Text += text
	}
	row.Runs = []typeset.Run{run}
	return row
}

// One glyph may stand for several texts, and several glyphs for fewer
// characters (pdftotext).
func TestGlyphsStandForWhatTheySay(t *testing.T) {
	eachFamily(t, func(t *testing.T, s *setter) {
		one := retold(s.row(t, "oxo", 40, 60, 11), []string{"o", "x", "ö"})
		fewer := s.row(t, "rnodel", 40, 80, 11)
		fewer.Runs[0].Text = "model" // of which r and n are the m
		for i := range fewer.Runs[0].Glyphs {
			fewer.Runs[0].Glyphs[i].Cluster = max(0, i-1)
		}
		if got, want := copied(t, one, fewer), "oxö\nmodel\n"; got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	})
}

// Any text may stand behind any glyph: pairs at random, of one to three
// characters from several scripts and from beyond the first plane, come back
// as they went in (pdftotext).
func TestAnyPairCopiesOut(t *testing.T) {
	dice := rand.New(rand.NewPCG(1, 2))
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	var rows []typeset.Row
	var want strings.Builder
	for i := range 40 {
		row := s.row(t, randomLetters(dice, 20), 40, float64(20+13*i), 11)
		texts := make([]string, len(row.Runs[0].Glyphs))
		for k := range texts {
			texts[k] = randomText(dice)
		}
		rows = append(rows, retold(row, texts))
		want.WriteString(strings.Join(texts, "") + "\n")
	}
	if got := copied(t, rows...); got != want.String() {
		t.Errorf("got\n%s\nwant\n%s", got, want.String())
	}
}

// randomLetters are n letters whose glyphs don't depend on each other.
func randomLetters(dice *rand.Rand, n int) string {
	letters := make([]byte, n)
	for i := range letters {
		letters[i] = "abcdemnopsuvwxyz"[dice.IntN(16)]
	}
	return string(letters)
}

// randomText is one to three characters of any script written left to right.
func randomText(dice *rand.Rand) string {
	alphabet := []rune("abcdeféžßαβγδжщю漢字仮名かな𝒜𝕏𠀀")
	text := make([]rune, 1+dice.IntN(3))
	for i := range text {
		text[i] = alphabet[dice.IntN(len(alphabet))]
	}
	return string(text)
}

// A cluster's text is shared out among its glyphs without loss.
func TestClustersShareTheirText(t *testing.T) {
	for _, c := range []struct {
		text   string
		glyphs int
		want   string
	}{
		{"a", 1, `["a"]`},
		{"ffi", 1, `["ffi"]`},
		{"fi", 2, `["f" "i"]`},
		{"ffi", 2, `["f" "fi"]`},
		{"e\u0301", 2, `["e" "\u0301"]`},
		{"m", 3, `["m" "" ""]`},
		{"", 2, `["" ""]`},
	} {
		got, left := make([]string, c.glyphs), c.text
		for i := range got {
			got[i], left = cluster{glyphs: make([]typeset.Glyph, c.glyphs)}.share(i, left)
		}
		if q := fmt.Sprintf("%+q", got); q != c.want || left != "" {
			t.Errorf("%q on %d glyphs: %s, want %s", c.text, c.glyphs, q, c.want)
		}
	}
}
