package raster

import (
	"bytes"
	"image"
	"image/color"
	"sync"
	"testing"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

var (
	black = color.RGBA{A: 255}
	white = color.RGBA{R: 255, G: 255, B: 255, A: 255}
	paper = color.RGBA{R: 250, G: 247, B: 240, A: 255}
	ink   = color.RGBA{R: 28, G: 26, B: 30, A: 255}
	rust  = color.RGBA{R: 84, G: 26, B: 12, A: 128} // premultiplied
)

// A caster shapes lines in one face, for tests that need no page design.
type caster struct {
	face   *typeset.Face
	shaper *harfbuzz.Font
	upem   int
}

var casters sync.Map

// cast gives a face that the program carries.
func cast(t testing.TB, family string, italic bool) *caster {
	t.Helper()
	data, ok := assets.FaceBytes(family, false, italic)
	if !ok {
		t.Fatalf("assets carries no face %q, italic %v", family, italic)
	}
	if c, ok := casters.Load(&data[0]); ok {
		return c.(*caster)
	}
	face, err := typeset.ParseFace(data)
	if err != nil {
		t.Fatal(err)
	}
	shaping, err := font.ParseTTF(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	c := &caster{face, harfbuzz.NewFont(shaping), int(shaping.Upem())}
	casters.Store(&data[0], c)
	return c
}

func garamond(t testing.TB) *caster { return cast(t, assets.EBGaramond, false) }
func gentium(t testing.TB) *caster  { return cast(t, assets.GentiumBookPlus, false) }

// run shapes text in font units and scales the sums.
func (c *caster) run(text string, size typeset.Length) typeset.Run {
	buf := harfbuzz.NewBuffer()
	buf.AddRunes([]rune(text), 0, -1)
	buf.GuessSegmentProperties()
	buf.Shape(c.shaper, nil)
	at := func(units int) typeset.Length { return typeset.Length(units * int(size) / c.upem) }
	run := typeset.Run{Face: c.face, Size: size, Text: text}
	pen := 0
	for i, info := range buf.Info {
		pos := buf.Pos[i]
		run.Glyphs = append(run.Glyphs, typeset.Glyph{
			ID: uint32(info.Glyph), X: at(pen + int(pos.XOffset)), Y: -at(int(pos.YOffset)), Advance: at(int(pos.XAdvance)),
		})
		pen += int(pos.XAdvance)
	}
	run.Width = at(pen)
	return run
}

// page sets lines one below the other on a B-format page.
func (c *caster) page(size, leading typeset.Length, lines ...string) *typeset.Page {
	trim, _ := pagemodel.TrimNamed("B-format")
	pg := &typeset.Page{Number: 1, Trim: trim}
	for i, line := range lines {
		pg.Rows = append(pg.Rows, typeset.Row{
			X: 45 * pagemodel.Point, Baseline: 60*pagemodel.Point + leading*typeset.Length(i),
			Runs: []typeset.Run{c.run(line, size)},
		})
	}
	return pg
}

// sheet is an image of one colour.
func sheet(r image.Rectangle, c color.RGBA) *image.RGBA {
	img := image.NewRGBA(r)
	flood(img.Pix, c)
	return img
}

// coverage is how much black ink is on white paper, in whole pixels.
func coverage(img *image.RGBA) float64 {
	sum := 0
	for i := 0; i < len(img.Pix); i += 4 {
		sum += 255 - int(img.Pix[i])
	}
	return float64(sum) / 255
}

func pt(points float64) typeset.Length { return pagemodel.Pt(points) }

func at(x, y float64) typeset.Point { return typeset.Point{X: pt(x), Y: pt(y)} }

func area(x, y, w, h float64) typeset.Rect {
	return typeset.Rect{X: pt(x), Y: pt(y), W: pt(w), H: pt(h)}
}
