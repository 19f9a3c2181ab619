package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset/choices"
)

// choiceLeaf is a leaf of scrap with every choice for one line on it, each set
// as it would stand in the book. The one pointed at is tried out, and the page
// beside the leaf shows it. As a widget it lies over the whole window; only its
// paper is seen, and a press beside the paper lifts it.
type choiceLeaf struct {
	widget.BaseWidget
	hasKeys
	w       *Window
	ref     pagemodel.LineRef
	was     int              // the page at which the book lay open
	page    int              // that the line begins on, while nothing is tried out
	side    pagemodel.Side   // of the book, that the leaf covers
	all     []choices.Choice // as they stand on the leaf: head by head
	order   choices.Measure  // within a head
	at      int              // the choice pointed at, and tried out; -1 for none
	last    int              // the one pointed at last, or to be pointed at first
	top     int              // the first that is seen
	flap    []choiceName     // what lies on the two sides of the flap
	over    choiceSpot       // under the hand
	hand    fyne.Position    // where it was last
	byMouse bool             // the hand is on the mouse
	plan    choicePlan
	blocks  []choiceBlock // of all choices, set for the plan
	picture *canvas.Raster
	ink     buffers
}

// askChoices lays out the choices for the line at hand.
func (w *Window) askChoices() {
	d := w.desk
	d.settleHand()
	ref, ok := d.session.Focus()
	line, in := d.lineAtHand()
	if !ok || !in {
		d.tell(noLineWords)
		return
	}
	if _, only := w.session.ReadOnly(); only {
		d.tell(readOnlyWords)
		return
	}
	all, err := w.session.Choices(ref)
	switch {
	case err != nil:
		d.try(err)
		return
	case len(all) == 0:
		d.tell("There is nothing to choose: " + quoted(line.Text()) + " can’t be parted, and its spaces can’t change")
		return
	}
	newChoiceLeaf(w, ref, all).lay()
}

// newChoiceLeaf makes the leaf without laying it.
func newChoiceLeaf(w *Window, ref pagemodel.LineRef, all []choices.Choice) *choiceLeaf {
	l := &choiceLeaf{w: w, ref: ref, was: w.session.Page(), all: all, at: -1, over: offChoices}
	l.page = l.was
	if page, ok := w.session.Committed().PageOfLine(ref); ok {
		l.page = page
	}
	l.side = pagemodel.SideOf(l.page).Facing()
	l.arrangeHeads()
	l.last = l.first()
	l.top = l.last
	l.picture = pixels(l.draw)
	l.ExtendBaseWidget(l)
	return l
}

// lay puts the leaf over the page that faces the line's.
func (l *choiceLeaf) lay() {
	if d, side := l.w.desk, pagemodel.SideOf(l.page); d.plan.narrow && d.working != side {
		d.workOn(side)
	}
	l.w.win.Canvas().Overlays().Add(l)
	l.Resize(l.w.win.Canvas().Size())
	l.arrange()
	l.w.win.Canvas().Focus(l)
	l.tell()
}

// arrangeHeads puts the choices head by head, and within each in the order that
// was asked for.
func (l *choiceLeaf) arrangeHeads() {
	slices.SortStableFunc(l.all, func(a, b choices.Choice) int { return int(a.Head - b.Head) })
	for from := 0; from < len(l.all); {
		to := from + 1
		for to < len(l.all) && l.all[to].Head == l.all[from].Head {
			to++
		}
		choices.Order(l.all[from:to], l.order)
		from = to
	}
}

// first is the choice to be pointed at first: under the head from which the
// poet last took a break, at the word that the caret is before, if it is before
// one.
func (l *choiceLeaf) first() int {
	head := l.w.settings.breakHead()
	at := func(c choices.Choice) bool {
		return c.Head == head && len(c.At) == 1 && c.At[0] == l.w.desk.word
	}
	if i := slices.IndexFunc(l.all, at); i >= 0 {
		return i
	}
	return max(0, slices.IndexFunc(l.all, func(c choices.Choice) bool { return c.Head == head }))
}

// lift takes the leaf away, and what is tried out with it.
func (l *choiceLeaf) lift() {
	d := l.w.desk
	l.point(-1)
	l.w.win.Canvas().Overlays().Remove(l)
	d.said = ""
	d.showPage(l.was)
	d.takeKeys()
}

// take does a choice, one step of the history, and lifts the leaf.
func (l *choiceLeaf) take(i int) {
	if i < 0 {
		return
	}
	d, c := l.w.desk, l.all[i]
	l.remember(c.Head)
	l.w.win.Canvas().Overlays().Remove(l)
	d.do(c.Edit)
	if d.said == "" {
		d.tell(sentence(c.Head.String()) + ", " + c.Title + " · Ctrl Z undoes it · Ctrl ↓ goes to the next line unsettled")
	}
	page := l.was
	if now, ok := l.w.session.Setting().PageOfLine(l.ref); ok && !d.inSight(l.ref) {
		page = now
	}
	d.showPage(page)
	d.takeKeys()
}

// remember keeps under which head breaks are taken.
func (l *choiceLeaf) remember(h choices.Head) {
	if l.w.settings.keepBreak(h) {
		l.w.desk.try(l.w.settings.write())
	}
}

// CreateRenderer hands the toolkit what is seen of the leaf.
func (l *choiceLeaf) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{l.arrange, []fyne.CanvasObject{l.picture}}
}
