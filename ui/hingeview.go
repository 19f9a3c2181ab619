package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// hingeView shows, all through the book, only the edges that meet: as strips cut
// from its pages, the lines where they stand on them. One edge is at hand, and
// the book can be opened there.
type hingeView struct {
	widget.BaseWidget
	hasKeys
	laidOver
	all   []hinge
	at    int // the hinge at hand
	edge  int // of it: 0 the last line above, 1 the first line below
	first int // the first hinge that is seen
	over  hingeSpot
	strip stripPlan
}

// hingeSpot is an edge under the hand; -1 for none.
type hingeSpot struct{ hinge, edge int }

// askHinges lays the hinges over the book, from where it lies open.
func (w *Window) askHinges() {
	w.desk.settleHand()
	v := &hingeView{laidOver: laidOver{w: w}, all: hingesOf(w.session.Setting()), over: hingeSpot{-1, 0}}
	if len(v.all) == 0 {
		w.desk.tell("Fewer than two poems are in the book, so that no two meet")
		return
	}
	v.at, v.edge = v.nearest(w.session.Page())
	v.picture = pixels(v.draw)
	v.ExtendBaseWidget(v)
	v.lay(v)
	v.choose(v.at, v.edge)
}

// nearest is the hinge on a page, or the next one, and which edge is there.
func (v *hingeView) nearest(page int) (at, edge int) {
	for i := range v.all {
		for e := range v.all[i].edges {
			if v.all[i].edges[e].page >= page {
				return i, e
			}
		}
	}
	return len(v.all) - 1, 1
}

// choose puts an edge at hand and brings its hinge into sight.
func (v *hingeView) choose(at, edge int) {
	v.at, v.edge = max(0, min(at, len(v.all)-1)), edge
	v.first = min(v.first, v.at)
	v.keepInSight()
	v.picture.Refresh()
	v.tell()
}

// isSeen says that a hinge is seen whole.
func (v *hingeView) isSeen(i int) bool {
	at, ok := v.strips()[i]
	return ok && at.whole.Max.Y <= v.view.Dy()
}

// page is how many hinges are seen whole, at least one.
func (v *hingeView) page() int {
	n := 0
	for i := range v.strips() {
		if v.isSeen(i) {
			n++
		}
	}
	return max(1, n)
}

// open opens the book at the edge at hand, and takes the hinges away.
func (v *hingeView) open() {
	e := v.all[v.at].edges[v.edge]
	v.openAt(e.page, e.line)
}

// CreateRenderer hands the toolkit the picture.
func (v *hingeView) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{v.arrange, []fyne.CanvasObject{v.picture}}
}
