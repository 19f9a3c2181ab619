package typeset

import (
	"bytes"
	"fmt"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"headland/assets"
)

// wordList is the words of the demo collection and some that try the faces:
// ligatures, accents, figures, quotes and dashes.
func wordList() []string {
	words := strings.Fields(string(assets.Demo()))
	return append(words, "final", "affinities", "office", "waffle", "fjord", "crème", "naïve", "żurek",
		"“What”", "Thy", "Qu’il", "1984", "AVAIL", "To-night", "—", "…", "VAT", "ffl", "œuvre", "Þing")
}

// lineList is n lines of random words, the same each time.
func lineList(n int) []string {
	words, rnd := wordList(), rand.New(rand.NewSource(1))
	lines := make([]string, n)
	for i := range lines {
		line := make([]string, 2+rnd.Intn(9))
		for j := range line {
			line[j] = words[rnd.Intn(len(words))]
		}
		lines[i] = strings.Join(line, " ")
	}
	return lines
}

// hbShape is what HarfBuzz's own command-line shaper says of the lines, one
// string a line: [glyph=cluster@x,y+advance|…] in font units, clusters as byte
// offsets. Source: hb-shape of HarfBuzz, Debian package libharfbuzz-bin.
func hbShape(t *testing.T, font []byte, features string, lines []string) []string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "font")
	if err := os.WriteFile(path, font, 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("hb-shape", "--shaper=ot", "--text-file=-", "--utf8-clusters", "--no-glyph-names", "--features="+features, path)
	cmd.Stdin = strings.NewReader(strings.Join(lines, "\n") + "\n")
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("hb-shape (Debian package libharfbuzz-bin): %v %s", err, errs.String())
	}
	return strings.Split(strings.TrimRight(string(out), "\n"), "\n")
}

// asHarfBuzz writes a shaped piece in hb-shape's manner.
func asHarfBuzz(sh *shaped) string {
	var b strings.Builder
	for i, g := range sh.glyphs {
		sep := "|"
		if i == 0 {
			sep = "["
		}
		fmt.Fprintf(&b, "%s%d=%d", sep, g.id, g.cluster)
		if x := g.x - g.sum; x != 0 || g.y != 0 {
			fmt.Fprintf(&b, "@%d,%d", x, g.y)
		}
		fmt.Fprintf(&b, "+%d", g.advance)
	}
	return b.String() + "]"
}

// TestShapingIsHarfBuzz holds that glyphs, clusters, places and advances are
// HarfBuzz's own, in every face, plain and in small capitals.
func TestShapingIsHarfBuzz(t *testing.T) {
	lines := lineList(1500)
	for _, f := range assets.Faces() {
		for caps, features := range map[caseKind]string{plainCase: "onum", smallCaps: "onum,smcp"} {
			t.Run(fmt.Sprintf("%s %s %s", f.Family, f.Style, features), func(t *testing.T) {
				compareWithHarfBuzz(t, f, caps, features, lines)
			})
		}
	}
}

func compareWithHarfBuzz(t *testing.T, f assets.Face, caps caseKind, features string, lines []string) {
	data, _ := assets.FaceBytes(f.Family, strings.Contains(f.Style, "Bold"), strings.Contains(f.Style, "Italic"))
	face, err := ParseFace(data)
	if err != nil {
		t.Fatal(err)
	}
	want := hbShape(t, data, features, lines)
	if len(want) != len(lines) {
		t.Fatalf("hb-shape gave %d lines for %d", len(want), len(lines))
	}
	s, wrong := newShaper(), 0
	for i, line := range lines {
		if got := asHarfBuzz(s.shape(face, caps, line)); got != want[i] {
			if wrong++; wrong < 4 {
				t.Errorf("%q\n got %s\nwant %s", line, got, want[i])
			}
		}
	}
	if wrong > 0 {
		t.Errorf("%d of %d lines differ", wrong, len(lines))
	}
}

// TestScalingDoesNotAddUp holds that a run's width and every glyph's place are
// within half a unit (1/128 pt) of the exact product, however long the line.
func TestScalingDoesNotAddUp(t *testing.T) {
	face, _ := Bundled().Face(assets.EBGaramond, false, false)
	s := newShaper()
	for _, line := range lineList(300) {
		sh := s.shape(face, plainCase, line)
		for _, size := range []Length{9 * 64, 11 * 64, 11*64 + 13} {
			run := sh.run(face, size, line, 0, nil)
			for i, g := range sh.glyphs {
				exact := float64(g.x) * float64(size) / float64(face.upem)
				if d := float64(run.Glyphs[i].X) - exact; d > 0.5 || d < -0.5 {
					t.Fatalf("%q glyph %d at %v, exactly %.3f", line, i, run.Glyphs[i].X, exact)
				}
			}
		}
	}
}

// TestDamagedFaces holds that a font with bytes changed gives a face or an
// error, and never a crash.
func TestDamagedFaces(t *testing.T) {
	data, _ := assets.FaceBytes(assets.GentiumBookPlus, false, false)
	rnd := rand.New(rand.NewSource(2))
	for range 40 {
		bad := bytes.Clone(data)
		for range 40 {
			bad[rnd.Intn(2000)] = byte(rnd.Intn(256))
		}
		ParseFace(bad)
	}
	if _, err := ParseFace([]byte("not a font")); err == nil {
		t.Error("a text was read as a font")
	}
}
