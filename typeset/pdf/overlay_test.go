package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/marks/overlay"
	"headland/typeset/raster"
)

// underlined is a page with words, and what lies over it: a line under them, a
// curve beside them and words in the margin.
func underlined(t testing.TB) (*typeset.Page, overlay.Overlay) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	at := func(x, y float64) typeset.Point { return typeset.Point{X: pagemodel.Pt(x), Y: pagemodel.Pt(y)} }
	over := overlay.Overlay{
		Strokes: []overlay.Stroke{
			{Path: []overlay.Segment{{To: at(60, 104)}, {Op: overlay.Line, To: at(120, 104)}}, Width: pagemodel.Pt(2), Whose: pagemodel.Printers},
			{Path: []overlay.Segment{{To: at(60, 150)}, {Op: overlay.Cubic, Leave: at(60, 190), Arrive: at(140, 190), To: at(140, 150)}},
				Width: pagemodel.Pt(2), Whose: pagemodel.Authors},
		},
		Rows:  []typeset.Row{s.row(t, "salted", 300, 100, 10)},
		Whose: []pagemodel.Whose{pagemodel.Editors},
	}
	return pageOf(s.row(t, "the night oven", 60, 100, 12)), over
}

// A colourSheet is a sheet as Poppler draws it in colour, at perPoint pixels a
// point.
type colourSheet struct {
	w, h int
	pix  []byte
}

func drawnInColour(t testing.TB, path string) colourSheet {
	t.Helper()
	out := filepath.Join(t.TempDir(), "sheet")
	tool(t, "pdftoppm", "-r", fmt.Sprint(72*perPoint), "-f", "1", "-l", "1", "-singlefile", path, out)
	data, err := os.ReadFile(out + ".ppm")
	if err != nil {
		t.Fatal(err)
	}
	var p colourSheet
	var most int
	if _, err := fmt.Fscanf(bytes.NewReader(data), "P6\n%d %d\n%d\n", &p.w, &p.h, &most); err != nil {
		t.Fatalf("pdftoppm: %v", err)
	}
	p.pix = data[len(data)-3*p.w*p.h:]
	return p
}

// at is the pixel at a place in points.
func (p *colourSheet) at(x, y float64) color.RGBA {
	i := 3 * (int(y*perPoint)*p.w + int(x*perPoint))
	return color.RGBA{p.pix[i], p.pix[i+1], p.pix[i+2], 255}
}

var whitePaper = color.RGBA{255, 255, 255, 255}

// Poppler draws the strokes where they are, in the colours of whose they are, as
// wide as they are and no longer than their round ends; the words in the margin
// copy out (pdftoppm, pdftotext).
func TestOverlayIsDrawn(t *testing.T) {
	page, over := underlined(t)
	path := saved(t, Document{Pages: []*typeset.Page{page}, Overlays: map[int]overlay.Overlay{0: over}})
	if got := strings.Join(strings.Fields(tool(t, "pdftotext", "-raw", path, "-")), " "); got != "the night oven salted" {
		t.Errorf("it reads %q", got)
	}
	p := drawnInColour(t, path)
	red, blue := overlay.Colour(pagemodel.Printers), overlay.Colour(pagemodel.Authors)
	for _, at := range []struct {
		x, y float64
		want color.RGBA
	}{
		{60.5, 104, red}, {90, 103.4, red}, {90, 104.6, red}, {119.5, 104, red}, {120.6, 104, red},
		{90, 105.6, whitePaper}, {121.6, 104, whitePaper},
		{100, 180, blue}, // the middle of the curve: 150 + 40·3/4
		{100, 176, whitePaper},
	} {
		if got := p.at(at.x, at.y); got != at.want {
			t.Errorf("at %v, %v it is %v, want %v", at.x, at.y, got, at.want)
		}
	}
}

// Poppler and raster draw the same overlay: of the ink of the strokes, which both
// fill exactly, no more than a twentieth is apart.
func TestOverlayIsAsOnScreen(t *testing.T) {
	page, over := underlined(t)
	page.Rows, over.Rows, over.Whose = nil, nil, nil
	p := drawnInColour(t, saved(t, Document{Pages: []*typeset.Page{page}, Overlays: map[int]overlay.Overlay{0: over}}))
	img := image.NewRGBA(image.Rectangle{Max: raster.Size(page.Trim, perPoint)})
	pen := raster.NewMasks(1<<20).On(img, perPoint, image.Point{})
	pen.Clear(whitePaper)
	pen.Overlay(&over, page.Trim.Height)
	ink, apart := 0, 0
	for y := range min(p.h, img.Rect.Dy()) {
		for x := range min(p.w, img.Rect.Dx()) {
			for k := range 3 {
				a, b := int(p.pix[3*(y*p.w+x)+k]), int(img.Pix[img.PixOffset(x, y)+k])
				ink += 255 - b
				apart += max(a-b, b-a)
			}
		}
	}
	if ink == 0 || apart*20 > ink {
		t.Errorf("of %d of ink, %d is apart", ink, apart)
	}
}

// On proof paper the page is drawn exactly as it is without, pixel by pixel, with
// white all round it, and its corners are shown outside it.
func TestProofPaperLeavesThePage(t *testing.T) {
	page, over := underlined(t)
	page.Trim = pagemodel.Trim{Width: pagemodel.Pt(360), Height: pagemodel.Pt(560)}
	room := pagemodel.Pt(100)
	plain := drawn(t, saved(t, Document{Pages: []*typeset.Page{page}}), 1)
	proof := Document{Pages: []*typeset.Page{page}, Sheet: Sheet{Proof: room}}
	path := saved(t, proof)
	paper := drawn(t, path, 1)
	off := 100 * perPoint
	w, h := 360*perPoint, 560*perPoint
	for y := range h {
		for x := range w {
			if a, b := plain.at(x, y), paper.at(x+off, y+off); a != b {
				t.Fatalf("at %d, %d the page is %d, and on proof paper %d", x, y, a, b)
			}
		}
	}
	for _, corner := range [][2]int{{off - 1, off + 20}, {off + 20, off - 1}, {off + w, off + h - 20}, {off + w - 20, off + h}} {
		if paper.at(corner[0], corner[1]) == 0 {
			t.Errorf("the corner of the trim at %v is not shown", corner)
		}
	}
	if paper.at(off-1, off+h/2) != 0 || paper.at(off/2, off+h/2) != 0 {
		t.Error("there is ink beside the middle of the page")
	}
	if info := tool(t, "pdfinfo", "-box", path); !strings.Contains(info, "560 x 760 pts") {
		t.Errorf("the sheet is not 100 points larger on each side:\n%s", info)
	}
	proof.Overlays = map[int]overlay.Overlay{0: over}
	marked := drawn(t, saved(t, proof), 1)
	if marked.at(off+90*perPoint, off+104*perPoint) == 0 {
		t.Error("the marks don't lie where the page does")
	}
}

// Marks on a reduced page are reduced with it.
func TestOverlayOfAReducedPage(t *testing.T) {
	page, over := underlined(t)
	side := Side{Label: "1", Paper: bFormat, Area: typeset.Rect{W: bFormat.Width, H: bFormat.Height},
		Pages: []Placed{{Page: 0, Corner: typeset.Point{X: pagemodel.Pt(20), Y: pagemodel.Pt(30)}, Percent: 50}}}
	p := drawnInColour(t, saved(t, Document{Pages: []*typeset.Page{page}, Sides: []Side{side}, Overlays: map[int]overlay.Overlay{0: over}}))
	if got, want := p.at(20+45, 30+52), overlay.Colour(pagemodel.Printers); got != want {
		t.Errorf("the line is %v, want %v", got, want)
	}
}

// Marks for a page that the document lacks are refused, in words.
func TestOverlayOfNoPage(t *testing.T) {
	page, over := underlined(t)
	err := Write(&bytes.Buffer{}, Document{Pages: []*typeset.Page{page}, Overlays: map[int]overlay.Overlay{3: over}})
	if err == nil || !strings.Contains(err.Error(), "page 4 of 1") {
		t.Errorf("the error is %v", err)
	}
}
