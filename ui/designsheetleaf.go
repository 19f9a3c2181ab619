package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// leaf is a sheet of paper laid over the page that faces the one worked on, to
// set values on: a heading, a row for each value, and words at its foot. As a
// widget it lies over the whole window, so that nothing else can be done while
// it lies there; only its paper is seen.
type leaf struct {
	widget.BaseWidget
	hasKeys
	w       *Window
	hand    leafHand
	heading string
	side    pagemodel.Side // of the book, that it covers
	deepest int            // the rows that it has room for at most
	rows    []leafRow
	at      int // the row at hand
	over    int // the row under the hand, -1 for none
	top     int // the first row that is seen
	foot    []leafFoot
	said    string // what was refused, and what to do instead
	stale   bool   // the pages that do not lie open are not as they will be
	byMouse bool   // the hand is on the mouse
	lifted  bool

	plan    leafPlan
	picture *canvas.Raster
	ink     buffers
	veils   [2]*canvas.Rectangle // over the fore-edges, while they are stale
}

// leafHand is what can be done with a leaf's rows.
type leafHand interface {
	// step goes to a row's next value, or by -1 to the one before.
	step(row, by int)
	// press is the hand on a row's words.
	press(row int)
	// key is a key that does not walk over the rows; false where it is for nothing.
	key(fyne.KeyName) bool
	// write is a character typed.
	write(rune)
}

// leafRow is one value on a leaf.
type leafRow struct {
	group string // stands beside the first of some rows that go together
	name  string
	value string
	steps bool    // it has a value before and one after, under − and +
	typed *typing // what is being typed in place of the value, or nil
	quiet bool    // the value may be passed over
}

// leafFoot is a line of two sayings at a leaf's foot.
type leafFoot struct{ left, right string }

// newLeaf makes a leaf without laying it.
func newLeaf(w *Window, heading string, hand leafHand, deepest int) *leaf {
	l := &leaf{w: w, hand: hand, heading: heading, over: -1, deepest: deepest}
	l.picture = pixels(l.draw)
	for i := range l.veils {
		l.veils[i] = canvas.NewRectangle(w.desk.light.palette().veil())
	}
	l.ExtendBaseWidget(l)
	return l
}

// lay puts the leaf over the page that faces the one worked on.
func (l *leaf) lay() {
	l.side = l.facing()
	overlays := l.w.win.Canvas().Overlays()
	overlays.Add(l)
	l.Resize(l.w.win.Canvas().Size())
	l.arrange()
	l.w.win.Canvas().Focus(l)
}

// facing is the side that is not worked on; where no page lies on the one, the
// other.
func (l *leaf) facing() pagemodel.Side {
	d := l.w.desk
	if d.plan.sheets[d.working].number == 0 {
		return d.working
	}
	return d.working.Facing()
}

// lift takes the leaf away.
func (l *leaf) lift() {
	if l.lifted {
		return
	}
	l.lifted = true
	l.w.win.Canvas().Overlays().Remove(l)
	l.w.desk.takeKeys()
}

// show has other rows and words drawn.
func (l *leaf) show(rows []leafRow, foot []leafFoot) {
	l.rows, l.foot = rows, foot
	l.at = max(0, min(l.at, len(rows)-1))
	l.arrange()
}

// walk goes to another row and brings it into sight.
func (l *leaf) walk(to int) {
	l.at = max(0, min(len(l.rows)-1, to))
	l.top = max(l.at-l.plan.seen+1, min(l.top, l.at))
	l.scroll(0)
}

// scroll moves the rows.
func (l *leaf) scroll(by int) {
	l.top = max(0, min(l.top+by, len(l.rows)-l.plan.seen))
	l.picture.Refresh()
}

// TypedKey walks over the rows or hands the key on.
func (l *leaf) TypedKey(e *fyne.KeyEvent) {
	l.byMouse = false
	if l.hand.key(e.Name) {
		return
	}
	switch e.Name {
	case fyne.KeyUp:
		l.walk(l.at - 1)
	case fyne.KeyDown:
		l.walk(l.at + 1)
	case fyne.KeyHome:
		l.walk(0)
	case fyne.KeyEnd:
		l.walk(len(l.rows) - 1)
	case fyne.KeyLeft:
		l.hand.step(l.at, -1)
	case fyne.KeyRight:
		l.hand.step(l.at, 1)
	}
}

// TypedRune hands on what is typed.
func (l *leaf) TypedRune(r rune) { l.hand.write(r) }

// MouseDown presses a row: what stands before or after its value, or its words.
// Off the leaf it gives the keys back to it.
func (l *leaf) MouseDown(e *desktop.MouseEvent) {
	l.byMouse = true
	l.w.win.Canvas().Focus(l)
	row, by, ok := l.plan.under(e.Position, l.top, len(l.rows))
	if !ok || e.Button != desktop.MouseButtonPrimary {
		return
	}
	l.walk(row)
	if by != 0 && l.rows[row].steps {
		l.hand.step(row, by)
		return
	}
	l.hand.press(row)
}

// MouseUp does nothing: a leaf acts on the press.
func (l *leaf) MouseUp(*desktop.MouseEvent) {}

// MouseIn begins to follow the hand.
func (l *leaf) MouseIn(e *desktop.MouseEvent) { l.MouseMoved(e) }

// MouseMoved notes which row the hand is over.
func (l *leaf) MouseMoved(e *desktop.MouseEvent) {
	row, _, ok := l.plan.under(e.Position, l.top, len(l.rows))
	if !ok {
		row = -1
	}
	l.hover(row)
}

// MouseOut says that the hand has left.
func (l *leaf) MouseOut() { l.hover(-1) }

func (l *leaf) hover(row int) {
	if row != l.over {
		l.over = row
		l.picture.Refresh()
	}
}

// Cursor says what can be pressed.
func (l *leaf) Cursor() desktop.Cursor {
	if l.over >= 0 {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled moves the rows.
func (l *leaf) Scrolled(e *fyne.ScrollEvent) { l.scroll(-3 * steps(e.Scrolled.DY)) }

// CreateRenderer hands the toolkit what is seen of the leaf.
func (l *leaf) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{l.arrange, []fyne.CanvasObject{l.veils[0], l.veils[1], l.picture}}
}

// layOver is the toolkit's view of a widget that lies over the whole window,
// and lays its objects out on its own.
type layOver struct {
	arrange func()
	objects []fyne.CanvasObject
}

// Layout lays the objects out for another size of the window.
func (r *layOver) Layout(fyne.Size) { r.arrange() }

// MinSize is nothing: the widget is as large as the window.
func (r *layOver) MinSize() fyne.Size { return fyne.Size{} }

// Refresh draws everything again.
func (r *layOver) Refresh() { r.arrange() }

// Objects are what is seen, from the ground up.
func (r *layOver) Objects() []fyne.CanvasObject { return r.objects }

// Destroy has nothing to give back.
func (r *layOver) Destroy() {}
