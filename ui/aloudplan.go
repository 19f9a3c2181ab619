package ui

import (
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"headland/typeset/aloud"
)

// Sizes of the view in the toolkit's units.
const (
	aloudWide   = 900  // the sheet of a running order, at most
	aloudWidest = 1240 // the sheet of a plot, at most
	aloudNarrow = 640  // a sheet narrower than this has no room for numbers
	aloudMargin = 44   // white inside the sheet's edges
	aloudTight  = 18   // in a narrow window
	aloudHead   = 112  // from the sheet's top to the list
	aloudFoot   = 76   // from the list's end to the leads
	aloudTitle  = 34   // depth of an item's title
	aloudTalk   = 25   // of what is said before it
	aloudUnder  = 21   // of what is below it
	aloudBegins = 46   // the width of the time at which an item begins
	aloudNumber = 44   // of its number
	aloudTakes  = 56   // of the time that it takes
	aloudLead   = 11   // the depth of a lead
	aloudWord   = 26   // the least depth of words that can be pressed
)

// aloudPlan is where everything lies, in device pixels of the picture.
type aloudPlan struct {
	at      image.Rectangle // the picture, in device pixels of the desk
	origin  fyne.Position   // of the desk, on the window
	density float64
	sheet   image.Rectangle
	margin  int // white inside its edges
	list    image.Rectangle
	foot    int         // from the leads to the sheet's foot
	took    bool        // there is a column for what was taken last
	rows    []itemPlace // of the items in sight
	leads   []image.Rectangle
	slot    int // where the slot ends along the foot; 0 where there is none
	words   []aloudPress
}

// itemPlace is where an item is in the list.
type itemPlace struct {
	item              int
	at                image.Rectangle
	talk, base, under int // baselines; 0 for none
}

// aloudPress is words that can be pressed.
type aloudPress struct {
	words string
	size  float64
	at    image.Rectangle // as far as they can be pressed
	x     int             // where they begin
	base  int
	in    bool // in use: ruled beneath
	act   func()
}

func (p *aloudPlan) units(n float64) int { return int(n*p.density + 0.5) }

// pixel is the device pixel of the picture at a position on the window.
func (p *aloudPlan) pixel(at fyne.Position) image.Point {
	x, y := float64(at.X-p.origin.X)*p.density, float64(at.Y-p.origin.Y)*p.density
	return image.Pt(int(x), int(y)).Sub(p.at.Min)
}

// begins, number, title, page, lasted and takes are where the columns are: the title
// begins there, all others end.
func (p *aloudPlan) begins() int { return p.list.Min.X + p.units(aloudBegins) }

func (p *aloudPlan) number() int {
	if p.narrow() {
		return p.begins()
	}
	return p.begins() + p.units(aloudNumber)
}

func (p *aloudPlan) title() int { return p.number() + p.units(20) }

func (p *aloudPlan) takes() int { return p.list.Max.X - p.units(8) }

func (p *aloudPlan) lasted() int { return p.takes() - p.units(aloudTakes) }

func (p *aloudPlan) page() int {
	if p.took {
		return p.lasted() - p.units(aloudTakes)
	}
	return p.lasted()
}

// text is where an item's words end at the latest.
func (p *aloudPlan) text() int {
	return p.page() - p.units(40)
}

// narrow says that there is no room for the numbers.
func (p *aloudPlan) narrow() bool { return p.sheet.Dx() < p.units(aloudNarrow) }

// newAloudPlan lays the sheet out in the view of the desk.
func newAloudPlan(p *plan, origin fyne.Position, wide float64) aloudPlan {
	ap := aloudPlan{at: p.view, origin: origin, density: p.density}
	air := ap.units(10)
	w, h := min(ap.units(wide), p.view.Dx()-2*air), p.view.Dy()-2
	x := (p.view.Dx() - w) / 2
	ap.sheet = image.Rect(x, 0, x+w, h)
	ap.margin = ap.units(aloudMargin)
	if ap.narrow() {
		ap.margin = ap.units(aloudTight)
	}
	return ap
}

// layFoot leaves room below the leads for so many rows of what can be done, and
// what is left above for the list.
func (p *aloudPlan) layFoot(rows int) {
	top := p.units(aloudHead)
	p.foot = p.units(82) + (rows-1)*p.units(aloudWord)
	p.list = image.Rect(p.sheet.Min.X+p.margin, top, p.sheet.Max.X-p.margin, max(top, p.sheet.Max.Y-p.foot-p.units(aloudFoot)))
}

// arrange lays everything out over the book.
func (a *aloudView) arrange() {
	d := a.w.desk
	wide := float64(aloudWide)
	if a.face != orderFace {
		wide = aloudWidest
	}
	a.place = newAloudPlan(&d.plan, fyne.CurrentApp().Driver().AbsolutePositionForObject(d), wide)
	a.place.layFoot(len(a.actRows()))
	switch a.face {
	case orderFace:
		a.placeItems()
		a.placeLeads()
	case timeFace:
		a.times.arrange(a)
	case linesFace:
		a.lines.arrange(a)
	}
	a.placeWords()
	a.lie(a.head, d.plan.headBand())
	a.lie(a.picture, a.place.at)
}

// lie lays a picture over a part of the desk, in device pixels of that.
func (a *aloudView) lie(picture *canvas.Raster, at image.Rectangle) {
	unit := func(px int) float32 { return float32(float64(px) / a.place.density) }
	picture.Resize(fyne.NewSize(unit(at.Dx()), unit(at.Dy())))
	picture.Move(a.place.origin.AddXY(unit(at.Min.X), unit(at.Min.Y)))
	picture.Refresh()
}

// placeItems lays out the items from the first in sight on.
func (a *aloudView) placeItems() {
	p := &a.place
	p.took = !p.narrow() && slices.ContainsFunc(a.plan.Items, func(t aloud.Timed) bool { return t.Last > 0 })
	y := p.list.Min.Y
	for i := a.top; i < len(a.reading.Items) && y < p.list.Max.Y; i++ {
		row := itemPlace{item: i}
		top := y
		if item := &a.reading.Items[i]; !isTalk(item) && (item.Before != "" || item.Talk > 0) {
			row.talk = y + p.units(18)
			y += p.units(aloudTalk)
		}
		row.base = y + p.units(23)
		y += p.units(aloudTitle)
		if a.underItem(i) != "" {
			row.under = row.base + p.units(19)
			y += p.units(aloudUnder)
		}
		row.at = image.Rect(p.list.Min.X, top, p.list.Max.X, y)
		p.rows = append(p.rows, row)
	}
}

// placeLeads lays out a lead for each item, as long as it takes: those that are read
// one after another, and after a gap those that are left out for want of time.
func (a *aloudView) placeLeads() {
	p := &a.place
	from, to := p.list.Min.X, p.list.Max.X
	gap, thick := max(2, p.units(3)), p.units(aloudLead)
	top := p.sheet.Max.Y - p.foot
	most := max(a.plan.Slot*1.02, a.plan.Whole)
	room := float64(to-from-gap*(len(a.plan.Items)+1)) - float64(p.units(12))
	if most <= 0 || room <= 0 {
		return
	}
	p.leads = make([]image.Rectangle, len(a.plan.Items))
	x, passed := from, 0
	for _, out := range [...]bool{false, true} {
		if out && a.plan.Total < a.plan.Whole {
			x += p.units(12)
		}
		for i := range a.plan.Items {
			if t := &a.plan.Items[i]; t.Dropped == out {
				w := max(2, int(t.Seconds/most*room+0.5))
				p.leads[i] = image.Rect(x, top, x+w, top+thick)
				if t.Starts+t.Seconds <= a.plan.Slot {
					passed++
				}
				x += w + gap
			}
		}
	}
	if a.plan.Slot > 0 {
		p.slot = from + int(a.plan.Slot/most*room+0.5) + gap*passed
	}
}
