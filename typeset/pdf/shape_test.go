package pdf

import (
	"bytes"
	"testing"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// faceNamed is a face that the program carries.
func faceNamed(t testing.TB, family string, italic bool) *typeset.Face {
	t.Helper()
	data, ok := assets.FaceBytes(family, false, italic)
	if !ok {
		t.Fatalf("assets carries no face %q, italic %v", family, italic)
	}
	return parsed(t, data)
}

func parsed(t testing.TB, data []byte) *typeset.Face {
	t.Helper()
	f, err := typeset.ParseFace(data)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// A setter shapes sample lines straight with HarfBuzz's Go port, so that the
// tests here lean on nothing of typeset's but its types.
type setter struct {
	face   *typeset.Face
	shaper *harfbuzz.Font
	em     int
}

func newSetter(t testing.TB, face *typeset.Face) *setter {
	t.Helper()
	f, err := font.ParseTTF(bytes.NewReader(face.Data()))
	if err != nil {
		t.Fatal(err)
	}
	return &setter{face: face, shaper: harfbuzz.NewFont(f), em: int(f.Upem())}
}

// row sets text from x on the baseline y, in points, with OpenType features
// such as "smcp" turned on.
func (s *setter) row(t testing.TB, text string, x, y, size float64, features ...string) typeset.Row {
	t.Helper()
	buf := harfbuzz.NewBuffer()
	buf.AddRunes([]rune(text), 0, -1)
	buf.GuessSegmentProperties()
	buf.Shape(s.shaper, parseFeatures(t, features))
	run := typeset.Run{Face: s.face, Size: pagemodel.Pt(size), Text: text}
	bytesAt := runeOffsets(text)
	pen := 0
	at := func(units int) typeset.Length { return typeset.Length(units * int(run.Size) / s.em) }
	for i, g := range buf.Info {
		pos := buf.Pos[i]
		run.Glyphs = append(run.Glyphs, typeset.Glyph{
			ID: uint32(g.Glyph), X: at(pen + int(pos.XOffset)), Y: -at(int(pos.YOffset)),
			Advance: at(int(pos.XAdvance)), Cluster: bytesAt[g.Cluster],
		})
		pen += int(pos.XAdvance)
	}
	return typeset.Row{X: pagemodel.Pt(x), Baseline: pagemodel.Pt(y), Runs: []typeset.Run{run}}
}

// runeOffsets are the byte offsets of a text's characters.
func runeOffsets(text string) []int {
	var at []int
	for i := range text {
		at = append(at, i)
	}
	return at
}

func parseFeatures(t testing.TB, names []string) []harfbuzz.Feature {
	t.Helper()
	var all []harfbuzz.Feature
	for _, n := range names {
		f, err := harfbuzz.ParseFeature(n)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, f)
	}
	return all
}
