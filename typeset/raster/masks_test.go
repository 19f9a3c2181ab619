package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"testing"

	"headland/typeset"
)

func TestWarmPageAllocatesNothing(t *testing.T) {
	pg := fullPage(t)
	m := NewMasks(16 << 20)
	pen := m.On(image.NewRGBA(image.Rectangle{Max: Size(pg.Trim, 1.9)}), 1.9, image.Point{})
	if n := testing.AllocsPerRun(5, func() { pen.Clear(paper); pen.Page(pg, ink) }); n != 0 {
		t.Errorf("a warm page takes %v allocations", n)
	}
}

// However little is kept, what is drawn is the same, and the limit holds.
func TestLimitHoldsAndChangesNothing(t *testing.T) {
	pg := fullPage(t)
	for i := range pg.Rows { // several sizes, so that there are strikes to forget
		pg.Rows[i].Runs = []typeset.Run{garamond(t).run("furrow, flint & willow", pt(8+float64(i%4)))}
	}
	want := Image(pg, 1.9, NewMasks(16<<20), paper, ink)
	for _, limit := range []int{0, 1, 200, 2000, 20000, 60000} {
		m := NewMasks(limit)
		for range 2 {
			if got := Image(pg, 1.9, m, paper, ink); !bytes.Equal(got.Pix, want.Pix) {
				t.Errorf("with %d bytes the page differs", limit)
			}
			if m.Bytes() > limit {
				t.Errorf("%d bytes are kept, the limit is %d", m.Bytes(), limit)
			}
		}
		if got := counted(m); got != m.Bytes() {
			t.Errorf("with %d bytes, %d are said to be kept, but %d are", limit, m.Bytes(), got)
		}
	}
}

// counted goes through the masks themselves.
func counted(m *Masks) int {
	sum := 0
	for _, s := range m.strikes {
		for _, k := range s.masks {
			sum += maskCost + len(k.cover)
		}
	}
	return sum
}

func TestTheLongestUnusedIsForgotten(t *testing.T) {
	m := NewMasks(6000)
	img := sheet(image.Rect(0, 0, 400, 60), white)
	draw := func(size float64) {
		run := garamond(t).run("abcd", pt(size))
		m.On(img, 1, image.Point{}).Run(&run, 0, pt(40), black)
	}
	draw(10)
	draw(20)
	draw(10)
	for size := 30.0; len(m.strikes) > 0 && m.strikes[strikeKey{garamond(t).face.ID(), 20 * 64}] != nil; size++ {
		if size > 60 {
			t.Fatal("the size that was left first is never forgotten")
		}
		draw(10)
		draw(size)
	}
	if m.strikes[strikeKey{garamond(t).face.ID(), 10 * 64}] == nil {
		t.Error("the size in use was forgotten")
	}
}

func TestEqualBytesShareMasks(t *testing.T) {
	c := garamond(t)
	again, err := typeset.ParseFace(c.face.Data())
	if err != nil {
		t.Fatal(err)
	}
	m := NewMasks(1 << 20)
	run := c.run("share", pt(11))
	pen := m.On(sheet(image.Rect(0, 0, 80, 40), white), 2, image.Point{})
	pen.Run(&run, 0, pt(11), black)
	held := m.Bytes()
	run.Face = again
	pen.Run(&run, 0, pt(11), black)
	if m.Bytes() != held || held == 0 {
		t.Errorf("the same face, parsed again, took %d bytes more", m.Bytes()-held)
	}
}

// A glyph that isn't there must be seen to be missing.
func TestMissingGlyphIsAFrame(t *testing.T) {
	run := typeset.Run{Face: garamond(t).face, Size: pt(48), Glyphs: []typeset.Glyph{{ID: 65000}, {ID: 1 << 20, X: pt(40)}}}
	img := sheet(image.Rect(0, 0, 80, 60), white)
	NewMasks(1<<20).On(img, 1, image.Point{}).Run(&run, 0, pt(50), black)
	for _, at := range []image.Point{{3, 30}, {23, 30}, {12, 19}, {12, 49}, {43, 30}} {
		if img.RGBAAt(at.X, at.Y) != black {
			t.Errorf("no frame at %v", at)
		}
	}
	if img.RGBAAt(12, 30) != white {
		t.Error("the frame is not empty")
	}
}

// A font may say that its em has 16 units and then draw with 2048.
func TestGlyphOutOfAllProportionIsCut(t *testing.T) {
	data := bytes.Clone(gentium(t).face.Data())
	for i := 12; ; i += 16 { // the table directory: OpenType 1.9, "Organization of an OpenType Font"
		if string(data[i:i+4]) == "head" {
			binary.BigEndian.PutUint16(data[binary.BigEndian.Uint32(data[i+8:])+18:], 16)
			break
		}
	}
	face, err := typeset.ParseFace(data)
	if err != nil {
		t.Fatal(err)
	}
	m := NewMasks(64 << 20)
	img := sheet(image.Rect(0, 0, 60, 60), white)
	run := gentium(t).run("—H8", pt(300))
	run.Face = face
	m.On(img, 1, image.Point{}).Run(&run, 0, pt(50), black)
	if m.Bytes() > 3*(4*reach*reach+maskCost) {
		t.Errorf("three glyphs take %d bytes", m.Bytes())
	}
}

func TestRunWithoutAFaceIsNothing(t *testing.T) {
	img := sheet(image.Rect(0, 0, 9, 9), white)
	NewMasks(1<<20).On(img, 1, image.Point{}).Run(&typeset.Run{Size: pt(9), Glyphs: []typeset.Glyph{{ID: 5}}}, 0, pt(9), black)
	if coverage(img) != 0 {
		t.Error("there is ink")
	}
}
