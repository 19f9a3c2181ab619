package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// scrap is a leaf of scrap laid over one page of the spread, so that the page
// beside it can be seen while something is asked about it. While it lies there
// nothing else can be done.
type scrap struct {
	w    *Window
	side pagemodel.Side // of the page that it lies over
	over *fyne.Container
}

// layScrap lays a scrap over the page of a side: a heading, and what it asks
// below. first gets the keys.
func (w *Window) layScrap(side pagemodel.Side, heading string, first fyne.Focusable, body ...fyne.CanvasObject) *scrap {
	colors := w.desk.light.palette()
	title := canvas.NewText(heading, colors.panelInk)
	title.TextSize = 19
	edge := canvas.NewRectangle(colors.panel)
	edge.StrokeColor, edge.StrokeWidth = colors.panelLine, 1
	rows := append([]fyne.CanvasObject{title}, body...)
	inner := container.NewPadded(container.NewPadded(container.NewVBox(rows...)))
	s := &scrap{w: w, side: side}
	s.over = container.New(s, container.NewStack(edge, inner))
	s.over.Resize(w.win.Canvas().Size())
	w.win.Canvas().Overlays().Add(s.over)
	w.win.Canvas().Focus(first)
	return s
}

// lieOver moves the scrap to the page of a side.
func (s *scrap) lieOver(side pagemodel.Side) {
	s.side = side
	s.Layout(s.over.Objects, s.over.Size())
	s.over.Refresh()
}

// lift takes the scrap away.
func (s *scrap) lift() {
	s.w.win.Canvas().Overlays().Remove(s.over)
	s.w.win.Canvas().Focus(s.w.desk)
}

// MinSize is what lies on it.
func (s *scrap) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

// scrapInset is how far a scrap stays within the page's edges, in the toolkit's
// units.
const scrapInset = 14

// Layout lays it over the middle of what is seen of its page, so that head and
// foot stay in sight.
func (s *scrap) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	p := &s.w.desk.plan
	page := p.sheets[s.side].seen
	if page.Empty() {
		page = p.sheets[s.side].page
	}
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.w.desk)
	unit := func(px int) float32 { return float32(float64(px) / p.density) }
	least := objects[0].MinSize()
	wide := min(size.Width, max(least.Width, unit(page.Dx())-2*scrapInset))
	middle := fyne.NewPos(at.X+unit(page.Min.X+page.Max.X)/2, at.Y+unit(page.Min.Y+page.Max.Y)/2)
	x := max(0, min(middle.X-wide/2, size.Width-wide))
	y := max(0, min(middle.Y-least.Height/2, size.Height-least.Height))
	objects[0].Resize(fyne.NewSize(wide, least.Height))
	objects[0].Move(fyne.NewPos(x, y))
}

// keyTaker has the keys where there is nothing to type.
type keyTaker struct {
	widget.BaseWidget
	hasKeys
	onKey func(fyne.KeyName)
}

func newKeyTaker(onKey func(fyne.KeyName)) *keyTaker {
	k := &keyTaker{onKey: onKey}
	k.ExtendBaseWidget(k)
	return k
}

// TypedKey hands the key on.
func (k *keyTaker) TypedKey(e *fyne.KeyEvent) { k.onKey(e.Name) }

// CreateRenderer draws nothing.
func (k *keyTaker) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(nil))
}
