package ui

import (
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// AcceptsTab keeps the tab key: nothing else is to be gone to.
func (v *orderView) AcceptsTab() bool { return true }

// TypedRune has nothing to type into.
func (v *orderView) TypedRune(rune) {}

// TypedKey is a key: everything that the hand can do.
func (v *orderView) TypedKey(e *fyne.KeyEvent) {
	switch v.hand.state {
	case keyed:
		v.heldKey(e.Name)
	case pressed, dragging:
		if e.Name == fyne.KeyEscape {
			v.putBack()
		}
	case idle:
		v.bareKey(e.Name)
	}
}

// arrows are the places and the rows that an arrow key goes.
var arrows = map[fyne.KeyName]image.Point{
	fyne.KeyLeft: {X: -1}, fyne.KeyRight: {X: 1}, fyne.KeyUp: {Y: -1}, fyne.KeyDown: {Y: 1},
}

// heldKey is a key pressed while the keys hold something.
func (v *orderView) heldKey(key fyne.KeyName) {
	switch key {
	case fyne.KeyReturn, fyne.KeyEnter:
		v.letGo()
		v.reveal()
	case fyne.KeyEscape:
		v.putBack()
		v.reveal()
	case fyne.KeyDelete, fyne.KeyBackspace:
		v.stepTo(v.hand.move.outmost())
	case fyne.KeyHome:
		v.stepTo(0)
	case fyne.KeyEnd:
		v.stepTo(v.hand.move.end())
	default:
		if by, ok := arrows[key]; ok {
			v.moveBy(by)
		}
	}
}

// bareKey goes about in the order.
func (v *orderView) bareKey(key fyne.KeyName) {
	v.said = ""
	switch key {
	case fyne.KeyReturn, fyne.KeyEnter:
		v.open()
		return
	case fyne.KeyEscape:
		v.d.leaveOrder()
		return
	case fyne.KeyDelete, fyne.KeyBackspace:
		v.leaveOut()
	case fyne.KeyPageDown:
		v.scroll(v.top + max(1, v.plan.view.Dy()/v.plan.depth)*v.plan.depth)
	case fyne.KeyPageUp:
		v.scroll(v.top - max(1, v.plan.view.Dy()/v.plan.depth)*v.plan.depth)
	default:
		v.walk(key)
	}
	v.refreshRows()
}

// walk puts another piece at hand, or with Shift extends the run to it.
func (v *orderView) walk(key fyne.KeyName) {
	all := v.book.all()
	if len(all) == 0 {
		return
	}
	to := all[0]
	by, arrow := arrows[key]
	switch {
	case key == fyne.KeyHome || arrow && len(v.chosen) == 0:
	case key == fyne.KeyEnd:
		to = all[len(all)-1]
	case by.X != 0:
		to = all[max(0, min(len(all)-1, slices.Index(all, v.tip())+by.X))]
	case by.Y != 0:
		to = v.above(v.tip(), by.Y)
	default:
		return
	}
	if v.d.keys.held().shift {
		v.extend(to)
	} else {
		v.choose(to)
	}
	v.revealPiece(to)
}

// tip is the end of what is at hand that walks on: the one that is not the
// anchor.
func (v *orderView) tip() int64 {
	if v.chosen[0] < 0 || v.chosen[0] != v.anchor {
		return v.chosen[0]
	}
	return v.chosen[len(v.chosen)-1]
}

// above is the piece that lies over a piece, or by 1 under it, in the next row
// that has any.
func (v *orderView) above(id int64, by int) int64 {
	row, bar := v.plan.firstBar(id)
	for r := row + by; bar != nil && r >= 0 && r < len(v.plan.rows); r += by {
		far, to := -1, id
		for _, b := range v.plan.rows[r].bars {
			if away := abs((b.from+b.to)/2 - (bar.from+bar.to)/2); far < 0 || away < far {
				far, to = away, b.piece.id
			}
		}
		if far >= 0 {
			return to
		}
	}
	return id
}

// choose puts a poem at hand; of a section's head, the section.
func (v *orderView) choose(id int64) {
	v.anchor, v.chosen = id, []int64{id}
	if id < 0 {
		v.chosen = v.book.ofSection(id)
	}
}

// extend puts the run of poems from the first chosen to another at hand. Heads of
// sections that lie between stay where they are.
func (v *orderView) extend(to int64) {
	all := v.book.all()
	from, until := slices.Index(all, v.anchor), slices.Index(all, to)
	_, out := v.book.piece(v.anchor)
	if _, too := v.book.piece(to); from < 0 || until < 0 || out != too {
		v.choose(to)
		return
	}
	run := slices.Clone(all[min(from, until) : max(from, until)+1])
	run = slices.DeleteFunc(run, func(id int64) bool { return id < 0 })
	if len(run) == 0 {
		return
	}
	v.chosen = run
	if v.anchor < 0 {
		v.anchor = run[0]
	}
}

// open goes back to the pages, open at what is at hand.
func (v *orderView) open() {
	if len(v.chosen) == 0 {
		v.d.leaveOrder()
		return
	}
	p, out := v.book.piece(v.chosen[0])
	if out {
		v.tell("“" + p.title + "” is left out, so it has no page: take it into the book first")
		return
	}
	v.d.leaveOrder()
	v.d.showPage(p.first)
}

// leaveOut takes what is at hand out of the book; of a section, its poems.
func (v *orderView) leaveOut() {
	ids := slices.DeleteFunc(slices.Clone(v.chosen), func(id int64) bool { return id < 0 })
	if len(ids) == 0 {
		v.tell("There is no poem at hand that could be left out")
		return
	}
	if _, out := v.book.piece(ids[0]); out {
		v.tell("It is left out already: Ctrl ↑ takes it into the book")
		return
	}
	all := v.book.all()
	next := idAt(all, slices.Index(all, ids[len(ids)-1])+1)
	m := newOrderMove(v.book, &v.plan, ids)
	m.at = m.outmost()
	edit, _ := m.edit()
	if err := v.d.session.Do(edit); err != nil {
		v.tell(errorWords(err))
		return
	}
	if p, _ := v.book.piece(next); p != nil {
		v.choose(next)
	}
	v.arrange()
	v.tell("Left out: " + edit.What[len("leave out "):] + " · Ctrl Z puts it back")
}

// moveBy takes hold of what is at hand, if nothing is held, and moves it by a
// place or a row.
func (v *orderView) moveBy(by image.Point) {
	if len(v.chosen) == 0 || v.hand.state != idle && v.hand.state != keyed {
		return
	}
	if v.hand.state == idle {
		v.hold(keyed)
	}
	m := v.hand.move
	if by.X != 0 {
		if to := m.at + by.X; to >= 0 && to < len(m.slots) && m.slots[to].out == m.slots[m.at].out {
			v.stepTo(to)
		}
		return
	}
	v.stepTo(v.slotInRow(by.Y))
}

// slotInRow is the slot in the row above (-1) or below (1) what the keys hold,
// under the place where that stands.
func (v *orderView) slotInRow(by int) int {
	m := v.hand.move
	row, bar := v.plan.firstBar(m.ids[0])
	if bar == nil {
		return m.at
	}
	to := row + by
	if to < 0 || to >= len(v.plan.rows) || to >= v.plan.books && m.outmost() < 0 {
		return m.at
	}
	m.grip = 0
	return m.reach(image.Pt(bar.from, min(to, len(m.plan.rows)-1)*m.plan.depth))
}

// stepTo has what the keys hold stand in a slot.
func (v *orderView) stepTo(slot int) {
	if slot < 0 {
		return
	}
	v.hand.move.at = slot
	v.tryOut()
	v.again()
	v.reveal()
}

// TypedShortcut hears what the menu hands on.
func (v *orderView) TypedShortcut(s fyne.Shortcut) { v.hears(s) }

// hears does what a shortcut does here; false where it does nothing.
func (v *orderView) hears(s fyne.Shortcut) bool {
	switch k := s.(type) {
	case *fyne.ShortcutUndo:
		v.goBack(v.d.session.Undo)
	case *fyne.ShortcutRedo:
		v.goBack(v.d.session.Redo)
	case *desktop.CustomShortcut:
		return v.hearsKey(k)
	default:
		return false
	}
	return true
}

// hearsKey does what a key with a modifier does here.
func (v *orderView) hearsKey(k *desktop.CustomShortcut) bool {
	by, arrow := arrows[k.KeyName]
	switch {
	case arrow && (k.Modifier == ctrl || k.Modifier == fyne.KeyModifierAlt):
		v.moveBy(by)
	case k.KeyName == fyne.KeyZ && k.Modifier == ctrlShift:
		v.goBack(v.d.session.Redo)
	case k.KeyName == fyne.Key2 && k.Modifier == ctrl:
	default:
		return false
	}
	return true
}

// goBack takes the last change back, or does it again.
func (v *orderView) goBack(back func() error) {
	if v.hand.state != idle {
		v.putBack()
		return
	}
	v.said = ""
	if err := back(); err != nil {
		v.tell(errorWords(err))
	}
	v.arrange()
	v.again()
}

// lets says whether a command of the menu may be done now. What belongs to the
// order it does itself; for what is done on the pages it goes back to them.
func (v *orderView) lets(c *command) bool {
	if v == nil {
		return true
	}
	if v.hand.state == pressed || v.hand.state == dragging || v.hears(c.key) {
		return false
	}
	v.putBack()
	if !c.order {
		v.d.leaveOrder()
	}
	return true
}
