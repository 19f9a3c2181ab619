// Command bare is a window of the toolkit with as little in it as can be: what
// the program's figures are compared with. As "bare empty" it shows nothing; as
// "bare page" it shows what any window with a book on a desk has to show, a
// ground and two pages, all of one colour each, and as "bare sheet" the right page
// alone; that page is filled anew, in one of two greys, on each motion of a drag.
package main

import (
	"image"
	"image/color"
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Where the pages stand, in pixels: about where the program puts them.
const (
	gutter, head         = 700, 98
	pageWidth, pageDepth = 475, 728
)

func main() {
	w := app.New().NewWindow("bare")
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1400, 900))
	var content fyne.CanvasObject = canvas.NewRectangle(color.White)
	if len(os.Args) > 1 && os.Args[1] != "empty" {
		content = newDesk(os.Args[1] == "sheet")
	}
	w.SetContent(content)
	w.ShowAndRun()
}

// flat is a picture of one grey.
type flat struct {
	raster *canvas.Raster
	pixels *image.RGBA
	grey   byte
}

func newFlat(grey byte) *flat {
	f := &flat{grey: grey}
	f.raster = canvas.NewRaster(f.draw)
	f.raster.ScaleMode = canvas.ImageScalePixels
	return f
}

func (f *flat) draw(w, h int) image.Image {
	if f.pixels == nil || f.pixels.Rect.Dx() != w || f.pixels.Rect.Dy() != h {
		f.pixels = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	for i := 0; i < len(f.pixels.Pix); i += 4 {
		f.pixels.Pix[i], f.pixels.Pix[i+1], f.pixels.Pix[i+2], f.pixels.Pix[i+3] = f.grey, f.grey, f.grey, 255
	}
	return f.pixels
}

// desk is the ground, the two pages and the hand on them.
type desk struct {
	widget.BaseWidget
	ground, verso, recto *flat
	alone                bool // there is the recto and nothing else
}

func newDesk(alone bool) *desk {
	d := &desk{ground: newFlat(100), verso: newFlat(240), recto: newFlat(240), alone: alone}
	d.ExtendBaseWidget(d)
	return d
}

// Dragged has the right page filled anew: light where the hand is left of its
// middle, else dark.
func (d *desk) Dragged(e *fyne.DragEvent) {
	d.recto.grey = 240
	if e.Position.X > gutter+pageWidth/2 {
		d.recto.grey = 40
	}
	d.recto.raster.Refresh()
}

// DragEnd has nothing to do.
func (d *desk) DragEnd() {}

// CreateRenderer puts the pictures in their places.
func (d *desk) CreateRenderer() fyne.WidgetRenderer { return &renderer{d} }

type renderer struct{ desk *desk }

func (r *renderer) Layout(size fyne.Size) {
	page := fyne.NewSize(pageWidth, pageDepth)
	put(r.desk.ground, fyne.NewPos(0, 0), size)
	put(r.desk.verso, fyne.NewPos(gutter-pageWidth, head), page)
	put(r.desk.recto, fyne.NewPos(gutter, head), page)
}

func put(f *flat, at fyne.Position, size fyne.Size) {
	f.raster.Move(at)
	f.raster.Resize(size)
}

func (r *renderer) MinSize() fyne.Size { return fyne.NewSize(10, 10) }
func (r *renderer) Objects() []fyne.CanvasObject {
	if r.desk.alone {
		return []fyne.CanvasObject{r.desk.recto.raster}
	}
	return []fyne.CanvasObject{r.desk.ground.raster, r.desk.verso.raster, r.desk.recto.raster}
}
func (r *renderer) Refresh() {}
func (r *renderer) Destroy() {}
