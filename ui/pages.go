package ui

import (
	"image"

	"headland/pagemodel"
)

// drawVerso draws the left page. The hand's last motion is followed first, so
// that however many motions came since the last frame, the page is set once.
func (d *desk) drawVerso(w, h int) image.Image { return d.drawPage(pagemodel.Verso, w, h) }

// drawRecto draws the right page.
func (d *desk) drawRecto(w, h int) image.Image { return d.drawPage(pagemodel.Recto, w, h) }

func (d *desk) drawPage(side pagemodel.Side, w, h int) image.Image {
	d.follow()
	at := d.plan.sheets[side]
	if d.session == nil || at.number == 0 {
		return d.pictures.sheets[side].buffers.next(w, h)
	}
	page := d.page(at.number)
	return d.pictures.sheets[side].draw(d.k, page, d.signs(page), d.look(side), w, h)
}

// look is what the page of a side is to look like now.
func (d *desk) look(side pagemodel.Side) look {
	design := d.of.Collection().Design()
	l := look{
		plan: d.plan.sheets[side], scale: d.plan.scale, density: d.plan.density, light: d.light, side: side,
		swallowed: pagemodel.Swallowed(design.Binding, d.of.Extent()), word: -1, typing: -1,
	}
	if d.hand.state == idle && (d.over.kind == overRule || d.over.kind == overWord) {
		l.hand = d.over.ref
	}
	focus, ok := d.session.Focus()
	if !ok {
		return l
	}
	l.focus, l.word = focus, d.word
	if d.typing != nil {
		l.word, l.typing = -1, d.typing.caret
	}
	if h, ok := d.hand.grip.(*hold); ok {
		l.spot, l.held = h.on(d.page(l.plan.number))
		l.lands = h.lands
	}
	return l
}
