package pdf

import (
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

func float(t testing.TB, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

var wordLeft = regexp.MustCompile(`<word xMin="([0-9.]+)"`)

// Words stand where they were set: in long lines of several sizes none is out
// by more than 0.01 pt (pdftotext -bbox: left edges of words).
func TestPlacesDoNotDrift(t *testing.T) {
	text := strings.TrimSpace(strings.Repeat("AVow office WAY ", 25))
	eachFamily(t, func(t *testing.T, s *setter) {
		page := &typeset.Page{Trim: pagemodel.Trim{Width: pagemodel.Pt(14400), Height: pagemodel.Pt(600)}}
		var want []typeset.Length
		for i, size := range []float64{7, 10.5, 11, 13.25, 24, 48} {
			row := s.row(t, text, 30.015625, float64(80*(i+1)), size)
			page.Rows = append(page.Rows, row)
			want = append(want, wordStarts(row)...)
		}
		path := saved(t, Document{Pages: []*typeset.Page{page}})
		got := wordLeft.FindAllStringSubmatch(tool(t, "pdftotext", "-raw", "-bbox", path, "-"), -1)
		if len(got) != len(want) {
			t.Fatalf("%d words, want %d", len(got), len(want))
		}
		for i, w := range want {
			if x := float(t, got[i][1]); x-w.Points() > 0.01 || w.Points()-x > 0.01 {
				t.Errorf("word %d at %v, want %v", i, x, w)
			}
		}
	})
}

// wordStarts are the places of the glyphs that start a word.
func wordStarts(row typeset.Row) []typeset.Length {
	var at []typeset.Length
	run := row.Runs[0]
	for _, g := range run.Glyphs {
		if g.Cluster == 0 || run.Text[g.Cluster-1] == ' ' {
			at = append(at, row.X+g.X)
		}
	}
	return at
}

// A reader's pen is followed over glyphs strewn at random, forwards, backwards,
// up and down: each lands within 0.01 pt of its place. The reading is the rule
// of ISO 32000-1, 9.4.4, done again in floating point.
func TestEveryGlyphLandsInItsPlace(t *testing.T) {
	dice := rand.New(rand.NewPCG(3, 4))
	face := faceNamed(t, assets.GentiumBookPlus, false) // 2048 units to the em: no width is whole
	for range 200 {
		checkPlaces(t, strewn(dice, face))
	}
}

// strewn is 60 glyphs anywhere, in a size from 3 to 72 pt.
func strewn(dice *rand.Rand, face *typeset.Face) typeset.Run {
	run := typeset.Run{Face: face, Size: pagemodel.Length(3*64 + dice.IntN(69*64)), Text: strings.Repeat("x", 60)}
	var y typeset.Length
	for i := range run.Text {
		if dice.IntN(12) == 0 {
			y = typeset.Length(dice.IntN(400) - 200)
		}
		run.Glyphs = append(run.Glyphs, typeset.Glyph{
			ID: uint32(40 + dice.IntN(60)), X: typeset.Length(dice.IntN(500 * 64)), Y: y, Cluster: i})
	}
	return run
}

// checkPlaces draws a run and compares where its glyphs land.
func checkPlaces(t *testing.T, run typeset.Run) {
	t.Helper()
	const left, head, x, baseline = 100, 800, 40, 60
	c := &content{faces: newFaces(newFile()), left: pagemodel.Pt(left), head: pagemodel.Pt(head)}
	row := typeset.Row{X: pagemodel.Pt(x), Baseline: pagemodel.Pt(baseline), Runs: []typeset.Run{run}}
	if err := c.rows([]typeset.Row{row}, bFormat.Height); err != nil {
		t.Fatal(err)
	}
	got := landings(t, c.b.String(), c.faces.all[0], run.Size.Points())
	if len(got) != len(run.Glyphs) {
		t.Fatalf("%d glyphs shown, want %d", len(got), len(run.Glyphs))
	}
	for i, g := range run.Glyphs {
		dx := got[i][0] - (left + x + g.X.Points())
		dy := got[i][1] - (head - baseline - g.Y.Points())
		if dx > 0.01 || dx < -0.01 || dy != 0 {
			t.Fatalf("size %v: glyph %d is out by %v, %v pt", run.Size, i, dx, dy)
		}
	}
}

var contentToken = regexp.MustCompile(`1 0 0 1 (\S+) (\S+) Tm|<([0-9A-F]+)>|(-?[0-9.]+)`)

// landings reads where a content's codes are shown.
func landings(t *testing.T, drawn string, fc *face, size float64) [][2]float64 {
	t.Helper()
	var at [][2]float64
	var x, y float64
	_, drawn, _ = strings.Cut(drawn, " Tf\n")
	for _, tok := range contentToken.FindAllStringSubmatch(drawn, -1) {
		switch {
		case tok[1] != "":
			x, y = float(t, tok[1]), float(t, tok[2])
		case tok[3] != "":
			for ; tok[3] != ""; tok[3] = tok[3][4:] {
				at = append(at, [2]float64{x, y})
				x += float64(fc.advance(glyphOf(t, fc, tok[3][:4]))) / 1000 * size
			}
		default:
			x -= float(t, tok[4]) / 1000 * size
		}
	}
	return at
}

// glyphOf is the glyph that a code shows.
func glyphOf(t *testing.T, fc *face, code string) uint32 {
	t.Helper()
	n, err := strconv.ParseUint(code, 16, 16)
	if err != nil {
		t.Fatal(err)
	}
	return fc.pairs[n-1].glyph
}
