package ui

import (
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// desk is where the book lies open. It is one widget: it draws everything on
// it, and it alone takes the hand and the keys. What it shows is the session's;
// it keeps only where the book lies, what the hand is doing, and pictures.
type desk struct {
	widget.BaseWidget
	session *session.Session // nil where nothing lies on the desk
	k       *inker
	light   light
	zoom    float64
	moved   image.Point    // the book, from where it would lie
	working pagemodel.Side // the page that a narrow window shows whole
	keys    *modifiers
	ask     func(lineMenu) // opens the menu of a line
	choose  func()         // lays out the choices for the line at hand
	decide  func()         // lists what was decided about lines
	reason  func()         // asks why the line at hand is as it is
	sayWord func()         // asks how the word at hand goes

	plan      plan
	of        *typeset.Setting // what the next six are of
	pages     map[int]*typeset.Page
	ends      map[int]typeset.PageEnd // of the pages that were looked at
	faults    []typeset.Fault         // in the order of the book
	ticks     []tick
	moving    []int // first pages of the poems that what is tried out would move
	spread    pagemodel.Spread
	placed    []placedTick
	awaited   func() // lays the book that is being opened; called once, before the first picture
	hand      hand
	following bool // the hand's motion is being followed, within a frame
	fresh     bool // everything is about to be drawn for the first time, within a frame
	over      target
	word      int // the byte offset of the word that the caret is before, in the line at hand
	typing    *typing
	fault     typeset.Fault // the one gone to last; the zero Fault is none
	said      string        // words to the poet about the last thing done, in place of the help
	focused   bool
	pictures  pictures
	round     roundOnDesk
	order     *orderView // while the book is held by its order, over all of this
}

// pictures are the images that the desk is made of, from the ground up.
type pictures struct {
	head, foot, peek *canvas.Raster
	ground           [2]*canvas.Raster // by side
	pages            [2]*canvas.Raster
	headInk          buffers
	groundInk        [2]buffers
	footInk, peekInk buffers
	sheets           [2]sheet
}

// newDesk is an empty desk.
func newDesk(l light, keys *modifiers) *desk {
	d := &desk{k: newInker(), light: l, zoom: 1, keys: keys, word: -1, ask: func(lineMenu) {}, choose: func() {}, decide: func() {}, reason: func() {}, sayWord: func() {}}
	d.round = roundOnDesk{lay: func() {}, count: func(*desk) {}, since: -1, picture: pixels(d.drawSliver)}
	d.ExtendBaseWidget(d)
	p := &d.pictures
	p.head, p.foot, p.peek = pixels(d.drawHead), pixels(d.drawFoot), pixels(d.drawPeek)
	p.ground[pagemodel.Verso], p.ground[pagemodel.Recto] = pixels(d.drawBefore), pixels(d.drawAfter)
	p.pages[pagemodel.Verso], p.pages[pagemodel.Recto] = pixels(d.drawVerso), pixels(d.drawRecto)
	return d
}

// pixels is a picture that the toolkit puts on the screen pixel by pixel.
func pixels(draw func(w, h int) image.Image) *canvas.Raster {
	r := canvas.NewRaster(draw)
	r.ScaleMode = canvas.ImageScalePixels
	return r
}

// lay puts a session's book on the desk, or clears it where s is nil.
func (d *desk) lay(s *session.Session) {
	d.leaveOrder()
	d.session, d.of, d.pages, d.ends, d.faults, d.ticks, d.placed, d.moving = s, nil, nil, nil, nil, nil, nil, nil
	d.round.begin()
	d.fault = typeset.Fault{}
	d.hand, d.typing, d.said, d.word, d.over = hand{}, nil, "", -1, target{}
	d.moved, d.spread = image.Point{}, pagemodel.Spread{}
	if s != nil {
		d.working = pagemodel.SideOf(s.Page())
	}
	d.changed()
	d.arrange()
	d.refresh(allParts)
}

// changed takes note that something else is to be shown.
func (d *desk) changed() {
	if d.session == nil || d.order.changed() {
		return
	}
	parts := pageParts | footPart
	if d.following {
		parts = 0 // they are being drawn at this moment
	}
	set := d.session.Setting()
	if d.of != set {
		faults := faultsOf(set)
		ticks := ticksOf(set, faults)
		moving := movedPoems(d.session.Committed(), set)
		if d.of == nil || !slices.Equal(d.plan.placeTicks(ticks), d.placed) || !slices.Equal(moving, d.moving) || d.of.Extent() != set.Extent() {
			parts |= groundPart | headPart
		}
		d.of, d.pages, d.ends = set, map[int]*typeset.Page{}, map[int]typeset.PageEnd{}
		d.faults, d.ticks, d.moving = faults, ticks, moving
		if d.following {
			parts |= d.facingPart()
		}
	}
	if d.noteRound() {
		parts |= allParts
	}
	if spread := d.session.Spread(); spread != d.spread {
		d.spread, d.over, d.moved.Y = spread, target{}, 0
		parts |= allParts
	}
	if parts&groundPart != 0 {
		d.arrange()
	}
	d.refresh(parts)
}

// facingPart is the page that faces the one under the hand, if it is to look
// otherwise than it does.
func (d *desk) facingPart() part {
	side := d.hand.on.side.Facing()
	number, shown := d.plan.sheets[side].number, &d.pictures.sheets[side]
	if number == 0 {
		return 0
	}
	page := d.page(number)
	if marks := d.signs(page); sameInk(page, shown.page) && marks.same(&shown.signs) {
		return 0
	}
	return sidePart(side)
}

// sidePart is the page of a side.
func sidePart(side pagemodel.Side) part {
	if side == pagemodel.Recto {
		return rectoPart
	}
	return versoPart
}

// page is a page as it is set now; made once, and blank where there is none.
func (d *desk) page(number int) *typeset.Page {
	if d.of == nil || number == 0 {
		return &typeset.Page{}
	}
	if d.pages[number] == nil {
		d.pages[number] = d.of.Page(number)
	}
	return d.pages[number]
}

// signs are the marks about a page as it is set now.
func (d *desk) signs(page *typeset.Page) signs {
	return signsOf(d.of, d.faults, page, d.pageEnd(page.Number))
}

// pageEnd is where a page ends and why; found once.
func (d *desk) pageEnd(number int) typeset.PageEnd {
	e, known := d.ends[number]
	if !known {
		e = d.of.PageEnd(number)
		d.ends[number] = e
	}
	return e
}

// part is a set of the desk's pictures.
type part uint8

const (
	groundPart part = 1 << iota
	rectoPart
	versoPart
	headPart
	footPart
	peekPart
	pageParts = rectoPart | versoPart
	allParts  = groundPart | pageParts | headPart | footPart | peekPart
)

// refresh has pictures drawn again before the next frame.
func (d *desk) refresh(parts part) {
	if d.fresh {
		return
	}
	p := &d.pictures
	for _, r := range []struct {
		part    part
		picture *canvas.Raster
	}{
		{groundPart, p.ground[pagemodel.Verso]}, {groundPart, p.ground[pagemodel.Recto]},
		{versoPart, p.pages[pagemodel.Verso]}, {rectoPart, p.pages[pagemodel.Recto]},
		{headPart, p.head}, {footPart, p.foot}, {peekPart, p.peek}, {groundPart, d.round.picture},
	} {
		if parts&r.part != 0 {
			r.picture.Refresh()
		}
	}
}

// setLight changes the light that the desk stands in.
func (d *desk) setLight(l light) {
	d.light = l
	d.refresh(allParts)
	d.order.relight()
}

// tell says something to the poet at the foot of the desk until the next thing
// is done.
func (d *desk) tell(words string) {
	d.said = words
	d.refresh(footPart)
	d.order.hear()
}

// try tells of an error, if there is one.
func (d *desk) try(err error) {
	if err != nil {
		d.tell(errorWords(err))
	}
}

// MinSize is the smallest desk that a page can be seen on.
func (d *desk) MinSize() fyne.Size { return fyne.NewSize(480, 360) }

// CreateRenderer hands the toolkit the pictures.
func (d *desk) CreateRenderer() fyne.WidgetRenderer { return &deskRenderer{d} }

// deskRenderer is the toolkit's view of the desk.
type deskRenderer struct{ d *desk }

// Layout lays the desk out for another size or scale.
func (r *deskRenderer) Layout(fyne.Size) { r.d.arrange() }

// MinSize is the desk's.
func (r *deskRenderer) MinSize() fyne.Size { return r.d.MinSize() }

// Refresh draws everything again.
func (r *deskRenderer) Refresh() {
	r.d.arrange()
	r.d.refresh(allParts)
}

// Objects are the pictures, from the ground up; the head is drawn first.
func (r *deskRenderer) Objects() []fyne.CanvasObject {
	p := &r.d.pictures
	return []fyne.CanvasObject{
		p.head, p.foot, p.ground[pagemodel.Verso], p.ground[pagemodel.Recto],
		r.d.round.picture, p.pages[pagemodel.Verso], p.pages[pagemodel.Recto], p.peek,
	}
}

// Destroy has nothing to give back.
func (r *deskRenderer) Destroy() {}
