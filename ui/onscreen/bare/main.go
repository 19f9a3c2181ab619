// Command bare is a window of the toolkit with as little in it as can be: what
// the program's figures are compared with. As "bare empty" it shows nothing; as
// "bare page" it shows a picture of a page's size that is filled anew, in one of
// two greys, on each motion of a drag.
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

// Where the page stands, in pixels: about where the program puts a recto.
const (
	pageX, pageY = 700, 98
	pageW, pageH = 475, 728
)

func main() {
	a := app.New()
	w := a.NewWindow("bare")
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1400, 900))
	var content fyne.CanvasObject = canvas.NewRectangle(color.White)
	if len(os.Args) > 1 && os.Args[1] == "page" {
		content = newPage()
	}
	w.SetContent(content)
	w.ShowAndRun()
}

// page is the picture, and the hand on it.
type page struct {
	widget.BaseWidget
	raster *canvas.Raster
	pixels *image.RGBA
	x      float32 // of the hand
}

func newPage() *page {
	p := &page{}
	p.raster = canvas.NewRaster(p.draw)
	p.raster.ScaleMode = canvas.ImageScalePixels
	p.ExtendBaseWidget(p)
	return p
}

// draw fills the picture: light where the hand is left of the middle, else dark.
func (p *page) draw(w, h int) image.Image {
	if p.pixels == nil || p.pixels.Rect.Dx() != w || p.pixels.Rect.Dy() != h {
		p.pixels = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	grey := byte(240)
	if p.x > pageX+pageW/2 {
		grey = 40
	}
	for i := 0; i < len(p.pixels.Pix); i += 4 {
		p.pixels.Pix[i], p.pixels.Pix[i+1], p.pixels.Pix[i+2], p.pixels.Pix[i+3] = grey, grey, grey, 255
	}
	return p.pixels
}

// Dragged notes where the hand is; the picture is drawn when the window is.
func (p *page) Dragged(e *fyne.DragEvent) {
	p.x = e.Position.X
	p.raster.Refresh()
}

// DragEnd has nothing to do.
func (p *page) DragEnd() {}

// CreateRenderer puts the picture in its place.
func (p *page) CreateRenderer() fyne.WidgetRenderer {
	return &renderer{page: p}
}

type renderer struct{ page *page }

func (r *renderer) Layout(fyne.Size) {
	r.page.raster.Move(fyne.NewPos(pageX, pageY))
	r.page.raster.Resize(fyne.NewSize(pageW, pageH))
}
func (r *renderer) MinSize() fyne.Size           { return fyne.NewSize(10, 10) }
func (r *renderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.page.raster} }
func (r *renderer) Refresh()                     {}
func (r *renderer) Destroy()                     {}
