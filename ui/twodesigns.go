package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset"
)

// twoDesigns lies over the book: the same lines on a page of each of two
// designs, and under each what the design gives. As a widget it is as large as
// the window, so that nothing else can be done while it lies there.
type twoDesigns struct {
	widget.BaseWidget
	hasKeys
	w       *Window
	sets    *designSets
	choices []choiceOfDesign
	shown   [2]int // of choices, left and right
	side    int    // the one chosen: 0 left, 1 right
	anchor  pagemodel.LineRef
	lifted  bool

	plan    pairPlan
	picture *canvas.Raster
	ink     buffers
}

const twoHelp = "← → choose a side · ↑ ↓ another design there · Page Down goes on · Enter sets the book so · Esc leaves it"

// askTwoDesigns lays two designs side by side: the book's own and one kept by
// name. Where none is kept it says how to keep one.
func (w *Window) askTwoDesigns() {
	w.desk.settleHand()
	t := &twoDesigns{w: w, choices: w.designChoices(), shown: [2]int{0, 1}, side: 1}
	if len(t.choices) < 2 {
		w.say("Two designs", "No design is kept by name yet. Keep one on the sheet of the design, in its last row, or among the kept designs; then two can lie side by side.")
		return
	}
	sets, err := newDesignSets(w, t.again)
	if err != nil {
		w.fail("Two designs can’t be shown", err)
		return
	}
	t.sets = sets
	t.anchor = w.desk.anchor()
	t.picture = pixels(t.draw)
	t.ExtendBaseWidget(t)
	canvas := w.win.Canvas()
	canvas.Overlays().Add(t)
	t.Resize(canvas.Size())
	canvas.Focus(t)
	w.desk.tell(twoHelp)
	t.wants()
}

// anchor is the line at hand where it is in sight, else the first of the open
// pages, else the first of the book.
func (d *desk) anchor() pagemodel.LineRef {
	if ref, ok := d.session.Focus(); ok && d.inSight(ref) {
		return ref
	}
	if ref, ok := d.lineInSight(false); ok {
		return ref
	}
	for _, p := range d.of.Collection().Poems() {
		for _, l := range p.Lines() {
			return pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
		}
	}
	return pagemodel.LineRef{}
}

// wants has the designs that are shown set, and then the others.
func (t *twoDesigns) wants() {
	t.sets.want(t.choices[t.shown[0]].design, t.choices[t.shown[1]].design)
	t.arrange()
}

// again draws both again.
func (t *twoDesigns) again() { t.picture.Refresh() }

// set is the book as a side has it, nil until it is set.
func (t *twoDesigns) set(side int) *typeset.Setting {
	return t.sets.sets[t.choices[t.shown[side]].design]
}

// page is the page of a side on which the anchored line stands.
func (t *twoDesigns) page(side int) *typeset.Page {
	set := t.set(side)
	if set == nil {
		return nil
	}
	number, _ := set.PageOfLine(t.anchor)
	return set.Page(max(1, number))
}

// other shows another design on a side.
func (t *twoDesigns) other(side, by int) {
	t.side = side
	t.shown[side] = (t.shown[side] + by + len(t.choices)) % len(t.choices)
	t.wants()
}

// turn goes to the next page of the chosen side that has lines, or the one
// before; the other side follows.
func (t *twoDesigns) turn(by int) {
	set := t.set(t.side)
	if set == nil {
		return
	}
	number, _ := set.PageOfLine(t.anchor)
	for n := number + by; n > 0 && n <= set.Extent(); n += by {
		if ref, ok := lineOn(set.Page(n), false); ok {
			t.anchor = ref
			break
		}
	}
	t.again()
}

// take sets the book in the design of the chosen side.
func (t *twoDesigns) take() {
	t.lift()
	t.w.useDesign(t.choices[t.shown[t.side]].design)
	t.w.desk.goTo(t.anchor)
}

// lift takes both away.
func (t *twoDesigns) lift() {
	if t.lifted {
		return
	}
	t.lifted, t.sets.over = true, true
	t.w.desk.said = ""
	t.w.win.Canvas().Overlays().Remove(t)
	t.w.desk.takeKeys()
	t.w.desk.refresh(allParts)
}

// TypedKey is a key: everything that the hand can do.
func (t *twoDesigns) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyRight:
		t.side = 0
		if e.Name == fyne.KeyRight {
			t.side = 1
		}
		t.again()
	case fyne.KeyUp:
		t.other(t.side, -1)
	case fyne.KeyDown:
		t.other(t.side, 1)
	case fyne.KeyPageDown:
		t.turn(1)
	case fyne.KeyPageUp:
		t.turn(-1)
	case fyne.KeyReturn, fyne.KeyEnter:
		t.take()
	case fyne.KeyEscape:
		t.lift()
	}
}

// MouseDown chooses a side, shows another design there, or takes it.
func (t *twoDesigns) MouseDown(e *desktop.MouseEvent) {
	t.w.win.Canvas().Focus(t)
	at := t.plan.pixel(e.Position)
	for side := range t.plan.halves {
		h := &t.plan.halves[side]
		switch {
		case at.In(h.name):
			t.other(side, 1)
		case at.In(h.take):
			t.side = side
			t.take()
		case at.In(h.page):
			t.side = side
			t.again()
		}
	}
}

// MouseUp does nothing: it acts on the press.
func (t *twoDesigns) MouseUp(*desktop.MouseEvent) {}

// Scrolled goes from page to page.
func (t *twoDesigns) Scrolled(e *fyne.ScrollEvent) { t.turn(-steps(e.Scrolled.DY)) }

// CreateRenderer hands the toolkit the picture.
func (t *twoDesigns) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{t.arrange, []fyne.CanvasObject{t.picture}}
}
