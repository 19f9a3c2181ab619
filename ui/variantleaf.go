package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// versionLeaf is a leaf of scrap over the facing page with what differs between
// two versions of a poem, A and B, on it: line by line, each line set as it would
// stand in the book. As a widget it lies over the whole window; only its paper is
// seen, and a press beside the paper lifts it.
type versionLeaf struct {
	widget.BaseWidget
	hasKeys
	*versions
	onPage  int // the side that the book shows: A or B
	side    pagemodel.Side
	top     int // the first difference that is seen
	over    leafSpot
	plan    choicePlan
	blocks  []versionBlock // of all differences, set for the plan
	picture *canvas.Raster
	ink     buffers
}

// layLines lays the leaf.
func (v *versions) layLines() {
	l := &versionLeaf{versions: v, over: leafSpot{}}
	l.picture = pixels(l.draw)
	l.ExtendBaseWidget(l)
	l.follow()
	v.w.win.Canvas().Overlays().Add(l)
	l.Resize(v.w.win.Canvas().Size())
	l.arrange()
	v.w.win.Canvas().Focus(l)
	l.reveal()
}

// follow opens the book where the difference at hand is, in the version that the
// book shows, and has the leaf lie beside it.
func (l *versionLeaf) follow() {
	d, page := l.w.desk, l.pageOf(l.onPage)
	if _, only := l.w.session.ReadOnly(); only {
		page = pageOfDiff(l.w.session.Committed(), l.atHand(), l.onPage, l.poem.ID())
	}
	l.show(l.shown[l.onPage])
	if side := pagemodel.SideOf(page); d.plan.narrow && d.working != side {
		d.workOn(side)
	}
	d.showPage(page)
	l.side = pagemodel.SideOf(page).Facing()
	d.tell(l.help())
}

// goTo has another difference be at hand.
func (l *versionLeaf) goTo(i int) {
	l.diff = max(0, min(i, len(l.compared())-1))
	l.follow()
	l.arrange()
	l.reveal()
}

// otherB compares with the version after B, or the one before it, that is not A.
func (l *versionLeaf) otherB(by int) {
	i := l.shown[1]
	for range l.all {
		if i = l.other(i, by); i != l.shown[0] {
			break
		}
	}
	l.choose(i)
	l.blocks, l.top = nil, 0
	l.goTo(0)
}

// turn has the book show the other of the two.
func (l *versionLeaf) turn() {
	l.onPage = 1 - l.onPage
	l.follow()
	l.arrange()
	l.reveal()
}

// lift takes the leaf away.
func (l *versionLeaf) lift() {
	l.away()
	l.end()
}

func (l *versionLeaf) away() {
	l.w.session.Drop()
	l.w.win.Canvas().Overlays().Remove(l)
}

// take puts B into the book.
func (l *versionLeaf) take() {
	l.away()
	l.use(l.shown[1])
}

// asSpreads lays the two side by side as spreads.
func (l *versionLeaf) asSpreads() {
	l.away()
	l.layPair()
}

// help says what the book shows, and the keys.
func (l *versionLeaf) help() string {
	words := "The page shows " + sigla[l.onPage] + ", Space shows " + sigla[1-l.onPage]
	if l.w.desk.brief() {
		return words + " · Enter puts B into the book · Esc leaves"
	}
	words += " · ↑ ↓ from difference to difference"
	if len(l.all) > 2 {
		words += " · ← → another version"
	}
	words += " · Tab lays both as spreads"
	if l.all[l.shown[1]].edit != nil {
		words += " · Enter puts B into the book"
	}
	return words + " · Esc leaves all as it was"
}

// CreateRenderer hands the toolkit what is seen of the leaf.
func (l *versionLeaf) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{l.arrange, []fyne.CanvasObject{l.picture}}
}
