package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"headland/typeset"
)

// versionPair lies over the book: the spread at which two versions of a poem
// differ, as each would have it, side by side. In a narrow window it is the page.
// As a widget it is as large as the window, so that nothing else can be done
// while it lies there.
type versionPair struct {
	widget.BaseWidget
	hasKeys
	*versions
	side    int // the one chosen: 0 left, 1 right
	lifted  bool
	plan    pairPlan
	picture *canvas.Raster
	ink     buffers
}

// tell says at the foot of the desk which difference is at hand, and the keys.
func (p *versionPair) tell() {
	says := "A and B are alike"
	if diff := p.atHand(); diff != nil {
		says = "Difference " + number(p.diff+1) + " of " + number(len(p.compared())) + ", " + diff.words()
		if p.diff < len(p.compared())-1 {
			says += " (Page Down: the next)"
		}
	}
	if p.w.desk.brief() {
		p.w.desk.tell(says + " · Enter takes it · Esc")
		return
	}
	p.w.desk.tell(says + " · ← → choose a side · ↑ ↓ another version there · Tab compares line by line · Enter puts it into the book · Esc leaves all as it was")
}

// layPair lays A and B side by side.
func (v *versions) layPair() {
	p := &versionPair{versions: v, side: 1}
	p.picture = pixels(p.draw)
	p.ExtendBaseWidget(p)
	canvas := v.w.win.Canvas()
	canvas.Overlays().Add(p)
	p.Resize(canvas.Size())
	canvas.Focus(p)
	p.tell()
	p.arrange()
}

// otherOn shows another version on a side.
func (p *versionPair) otherOn(side, by int) {
	p.side = side
	p.shown[side] = p.other(p.shown[side], by)
	p.diff = 0
	p.tell()
	p.arrange()
}

// walk goes to the next difference, or the one before.
func (p *versionPair) walk(by int) {
	p.diff = max(0, min(p.diff+by, len(p.compared())-1))
	p.tell()
	p.picture.Refresh()
}

// chooseSide chooses a side.
func (p *versionPair) chooseSide(side int) {
	p.side = side
	p.picture.Refresh()
}

// lift takes both away, and does what is next.
func (p *versionPair) lift(next func()) {
	if p.lifted {
		return
	}
	p.lifted = true
	p.w.win.Canvas().Overlays().Remove(p)
	p.w.desk.refresh(allParts)
	next()
}

// take puts the version of the chosen side into the book.
func (p *versionPair) take() { p.lift(func() { p.use(p.shown[p.side]) }) }

// AcceptsTab keeps the tab key.
func (p *versionPair) AcceptsTab() bool { return true }

// TypedKey is a key: everything that the hand can do.
func (p *versionPair) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyLeft:
		p.chooseSide(0)
	case fyne.KeyRight:
		p.chooseSide(1)
	case fyne.KeyUp:
		p.otherOn(p.side, -1)
	case fyne.KeyDown:
		p.otherOn(p.side, 1)
	case fyne.KeyPageDown:
		p.walk(1)
	case fyne.KeyPageUp:
		p.walk(-1)
	case fyne.KeyTab:
		p.lift(p.layLines)
	case fyne.KeyReturn, fyne.KeyEnter:
		p.take()
	case fyne.KeyEscape:
		p.lift(p.end)
	}
}

// MouseDown chooses a side, shows another version there, takes it, or goes on to
// the lines.
func (p *versionPair) MouseDown(e *desktop.MouseEvent) {
	p.w.win.Canvas().Focus(p)
	at := p.plan.pixel(e.Position)
	for side := range p.plan.halves {
		h := &p.plan.halves[side]
		switch {
		case at.In(h.name):
			p.otherOn(side, 1)
		case at.In(h.take) && side == p.side:
			p.take()
		case at.In(h.take):
			p.lift(p.layLines)
		case at.In(h.page):
			p.chooseSide(side)
		}
	}
}

// MouseUp does nothing: it acts on the press.
func (p *versionPair) MouseUp(*desktop.MouseEvent) {}

// Scrolled goes from difference to difference.
func (p *versionPair) Scrolled(e *fyne.ScrollEvent) { p.walk(-steps(e.Scrolled.DY)) }

// pageOn is a page as a side has it, nil where there is none.
func (p *versionPair) pageOn(side, n int) *typeset.Page {
	set := p.setting(side)
	if n < 1 || n > set.Extent() {
		return nil
	}
	return set.Page(n)
}

// CreateRenderer hands the toolkit the picture.
func (p *versionPair) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{p.arrange, []fyne.CanvasObject{p.picture}}
}
