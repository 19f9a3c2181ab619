package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"headland/typeset"
	"headland/typeset/order"
)

// orderView is the book held by its order: a row for each signature, its sheets
// folded one in another beneath, over its pages the poems as bars. It lies over the
// desk in the window and takes the hand and the keys from it. What it shows is the
// session's.
type orderView struct {
	widget.BaseWidget
	w    *Window
	d    *desk
	book *orderBook // what is shown
	plan orderPlan
	toll order.Toll // of what is shown
	top  int        // how far the rows are moved up
	over orderSpot

	chosen   []int64 // what is at hand, in the order of the book: poems, or a section's head with its poems
	anchor   int64   // the one from which a run is extended
	hand     orderHand
	said     string // words to the poet about the last thing done
	filling  bool   // small pages are about to be drawn
	creeping bool   // the rows are about to be moved under a hand at their edge
	left     bool

	pages            smallPages
	runs             map[orderWords]typeset.Run
	ground           *canvas.Rectangle
	bands            []*orderBand
	head, foot, slip *canvas.Raster
	headInk, footInk buffers
	slipInk          buffers
}

// askOrder holds the book by its order, with the poem at hand that lies open.
func (w *Window) askOrder() {
	d := w.desk
	if d.order != nil {
		return
	}
	d.settleHand()
	v := &orderView{w: w, d: d, pages: newSmallPages(), runs: map[orderWords]typeset.Run{}}
	v.ground = canvas.NewRectangle(d.light.palette().desk)
	v.head, v.foot, v.slip = pixels(v.drawHead), pixels(v.drawFoot), pixels(v.drawSlip)
	v.ExtendBaseWidget(v)
	v.take()
	d.order = v
	d.uncover(false)
	w.stage.Add(v)
	v.chooseOpen()
	v.arrange()
	v.reveal()
	d.takeKeys()
}

// leaveOrder goes back to the pages, open where they lay.
func (d *desk) leaveOrder() {
	v := d.order
	if v == nil {
		return
	}
	v.putBack()
	v.left = true
	d.order = nil
	d.uncover(true)
	v.w.stage.Remove(v)
	d.changed()
	d.arrange()
	d.refresh(allParts)
	d.takeKeys()
}

// uncover has the desk's pictures be seen, or not while something else lies over
// all of them.
func (d *desk) uncover(yes bool) {
	for _, o := range (&deskRenderer{d}).Objects() {
		if yes {
			o.Show()
		} else {
			o.Hide()
		}
	}
}

// chooseOpen puts the poem at hand that lies open on the desk.
func (v *orderView) chooseOpen() {
	spread := v.d.session.Spread()
	for _, page := range [...]int{spread.Verso, spread.Recto} {
		if id, ok := v.book.set.PoemOn(page); ok {
			v.choose(int64(id))
			return
		}
	}
	for _, id := range v.book.all() {
		if id > 0 {
			v.choose(id)
			return
		}
	}
}

// take takes up what the session has now. It says whether that was something
// else than is shown.
func (v *orderView) take() bool {
	set := v.d.session.Setting()
	if v.book != nil && v.book.set == set {
		return false
	}
	var before *typeset.Setting
	if v.book != nil {
		before = v.book.aside
	}
	aside, err := setAside(v.d.session.Setter(), set.Collection(), before)
	if err != nil {
		v.tell(errorWords(err))
	}
	v.book, v.toll = newOrderBook(set, aside), v.d.session.Toll()
	v.pages.show(set, aside)
	return true
}

// changed takes note that something else is to be shown. It says whether the desk
// beneath need not follow: while something is only tried out.
func (v *orderView) changed() bool {
	if v == nil {
		return false
	}
	if v.take() {
		v.keepChosen()
		v.layRows()
		v.again()
	}
	return v.d.session.Previewing()
}

// keepChosen forgets what is no longer there.
func (v *orderView) keepChosen() {
	var kept []int64
	for _, id := range v.chosen {
		if p, _ := v.book.piece(id); p != nil {
			kept = append(kept, id)
		}
	}
	v.chosen = kept
}

// layRows lays what is shown out in rows.
func (v *orderView) layRows() {
	v.plan = newOrderPlan(&v.d.plan, v.book)
	v.top = max(0, min(v.top, v.plan.farthest()))
	v.pages.at(v.plan.page, v.d.light)
}

// again has everything drawn again that looks otherwise.
func (v *orderView) again() {
	if v == nil || v.hand.following {
		return
	}
	v.ground.FillColor = v.d.light.palette().desk
	v.head.Refresh()
	v.refreshRows()
}

// refreshRows has the rows and the words at the foot drawn again.
func (v *orderView) refreshRows() {
	for _, b := range v.bands {
		b.picture.Refresh()
	}
	v.foot.Refresh()
}

// relight has everything drawn again in another light.
func (v *orderView) relight() {
	if v == nil {
		return
	}
	v.arrange()
	v.again()
}

// hear says at the foot what the desk was to say there.
func (v *orderView) hear() {
	if v != nil {
		v.foot.Refresh()
	}
}

// tell says something at the foot until the next thing is done.
func (v *orderView) tell(words string) {
	v.said = words
	v.foot.Refresh()
}

// FocusGained says that keys come here.
func (v *orderView) FocusGained() { v.d.keys.come() }

// FocusLost says that keys go elsewhere.
func (v *orderView) FocusLost() { v.d.keys.leave() }

// CreateRenderer hands the toolkit what is seen.
func (v *orderView) CreateRenderer() fyne.WidgetRenderer { return &orderRenderer{v} }

// orderRenderer is the toolkit's view of the order.
type orderRenderer struct{ v *orderView }

// Layout lays everything out for another size or scale.
func (r *orderRenderer) Layout(fyne.Size) { r.v.arrange() }

// MinSize is the desk's: it lies over that.
func (r *orderRenderer) MinSize() fyne.Size { return r.v.d.MinSize() }

// Refresh draws everything again.
func (r *orderRenderer) Refresh() {
	r.v.arrange()
	r.v.again()
}

// Objects are the pictures, from the ground up.
func (r *orderRenderer) Objects() []fyne.CanvasObject {
	v := r.v
	objects := []fyne.CanvasObject{v.ground}
	for _, b := range v.bands {
		objects = append(objects, b.picture)
	}
	return append(objects, v.head, v.foot, v.slip)
}

// Destroy has nothing to give back.
func (r *orderRenderer) Destroy() {}
