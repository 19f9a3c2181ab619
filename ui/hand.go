package ui

import (
	"fmt"
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset"
)

// handState is what the hand is doing.
type handState int

const (
	idle      handState = iota
	pressed             // the button is down, and nothing has moved
	dragging            // it is down and has moved
	keyed               // the keys hold a rule
	cancelled           // all is put back, and the button is still down
)

// hand is the hand on the desk. Motions are only noted; they are followed once
// a frame, when the pages are drawn.
type hand struct {
	state   handState
	on      target
	from    image.Point // where the button went down
	moved   image.Point // and where the book lay then
	shift   typeset.Point
	grip    grip
	at      image.Point // where the hand is
	stirred bool        // it has moved, and that is not followed yet
	failed  string      // why what it would do can't be done
}

// say is the grip's words, or why it can't be done. moving is how many poems
// it would move to another page.
func (h *hand) say(moving int) string {
	if h.failed != "" {
		return h.failed
	}
	words := h.grip.say()
	if h.grip.edit() == nil {
		return words
	}
	first, rest, _ := strings.Cut(words, " · ")
	return first + " · " + movesWords(moving) + " · " + rest
}

// movesWords say what an edit moves.
func movesWords(poems int) string {
	switch poems {
	case 0:
		return "no other poem moves"
	case 1:
		return "one poem moves"
	}
	return fmt.Sprintf("%d poems move", poems)
}

// MouseDown takes hold of what is under the hand.
func (d *desk) MouseDown(e *desktop.MouseEvent) {
	d.keys.come()
	d.takeKeys()
	if d.session == nil || d.hand.state == dragging || d.hand.state == cancelled {
		return
	}
	d.letGoByClick()
	d.said = ""
	at := d.pixelAt(e.Position)
	d.over = d.under(at)
	if e.Button == desktop.MouseButtonSecondary {
		d.askAbout(d.over, e.AbsolutePosition)
		return
	}
	if e.Button == desktop.MouseButtonPrimary {
		d.press(d.over, at)
	}
	d.refresh(pageParts | footPart | groundPart)
}

// letGoByClick ends what the keys hold: what is retyped is kept, a rule that
// the keys hold is put back.
func (d *desk) letGoByClick() {
	if d.typing != nil {
		d.finishTyping()
	}
	if d.hand.state == keyed {
		d.putBack()
	}
}

// press acts on the button going down.
func (d *desk) press(on target, at image.Point) {
	d.hand = hand{state: pressed, on: on, from: at, moved: d.moved, at: at}
	switch on.kind {
	case overRule:
		d.takeRule(on, at)
	case overWord:
		d.putAtHand(on)
	case overEdge, overTick:
		d.open(on)
	case overUnsettled:
		d.toUnsettled(1)
	case overSettled:
		d.hand = hand{}
		d.decide()
	case overFaults:
		d.toFault(1)
	case overFault:
		d.goToFault(on.fault)
	case overStroke:
		d.pressStroke(on)
	case overSent:
		d.hand = hand{}
		d.round.lay()
	case overSlip:
		d.workOn(on.side)
	case overNothing:
		d.session.ClearFocus()
	}
}

// open opens the book at a leaf or a tick. There is then another leaf under
// the hand, which is not to be lifted until the hand moves.
func (d *desk) open(on target) {
	d.over = target{}
	page := max(on.spread.Verso, on.spread.Recto)
	if on.kind == overTick {
		page = on.page
	}
	d.showPage(page)
}

// showPage opens the book at a page, and in a narrow window works on it.
func (d *desk) showPage(page int) {
	d.working = pagemodel.SideOf(page)
	d.session.Show(page)
	d.arrange()
	d.refresh(allParts)
}

// workOn shows the page of a side whole in a narrow window.
func (d *desk) workOn(side pagemodel.Side) {
	d.working, d.over = side, target{}
	d.arrange()
	d.refresh(allParts)
}

// putAtHand puts a line at hand, and the caret before the word pressed.
func (d *desk) putAtHand(on target) {
	d.session.SetFocus(on.ref)
	d.word = -1
	if line, ok := d.lineAtHand(); ok {
		if i, ok := wordAt(line.Text(), on.offset); ok {
			d.word = pagemodel.Words(line.Text())[i].Start
		}
	}
}

// lineAtHand is the line at hand as the committed collection has it. A line
// whose pages are not open is not at hand: what can't be seen is not changed.
func (d *desk) lineAtHand() (pagemodel.Line, bool) {
	ref, ok := d.session.Focus()
	if !ok || !d.inSight(ref) {
		return pagemodel.Line{}, false
	}
	poem, at, err := d.session.Collection().Line(ref)
	if err != nil {
		return pagemodel.Line{}, false
	}
	return poem.Line(at), true
}

// takeRule takes a line's rule where the hand is, so that it does not jump.
func (d *desk) takeRule(on target, at image.Point) {
	d.session.SetFocus(on.ref)
	d.word = -1
	h, ok := takeRule(d.session.Committed(), d.page(d.plan.sheets[on.side].number), on.ref)
	if !ok {
		return
	}
	d.hand.grip = h
	d.hand.shift.X = h.stops[h.home].x - d.plan.toPage(on.side, at).X
}

// Dragged notes where the hand is.
func (d *desk) Dragged(e *fyne.DragEvent) {
	d.drag(d.pixelAt(e.Position))
}

// dragFrom is how far a word has to be pulled before it moves: a click is
// still a click if the hand trembles.
const dragFrom = 5

func (d *desk) drag(at image.Point) {
	if d.hand.state != pressed && d.hand.state != dragging {
		return
	}
	if d.hand.state == pressed {
		if d.hand.on.kind == overWord && abs(at.X-d.hand.from.X) < d.plan.units(dragFrom) {
			return
		}
		d.hand.state = dragging
		d.takeWord()
	}
	d.hand.at = at
	if d.hand.grip == nil {
		d.moveBook(at)
		return
	}
	was := d.hand.grip.stance()
	d.moveGrip()
	if was != d.hand.grip.stance() {
		d.hand.stirred = true
		d.refresh(sidePart(d.hand.on.side) | footPart)
	}
}

// moveGrip snaps what is held to where the hand is.
func (d *desk) moveGrip() {
	p := d.plan.toPage(d.hand.on.side, d.hand.at)
	p.X += d.hand.shift.X
	d.hand.grip.move(p, d.keys.held())
}

// takeWord takes hold of the word that was pressed.
func (d *desk) takeWord() {
	on := d.hand.on
	line, ok := d.lineAtHand()
	if on.kind != overWord || !ok {
		return
	}
	page := d.page(d.plan.sheets[on.side].number)
	if page.Rows[on.row].Turned {
		return
	}
	if p, ok := takeWord(line, &page.Rows[on.row], on.offset, d.plan.toPage(on.side, d.hand.from).X); ok {
		d.hand.grip = p
	}
}

// moveBook moves a book that is larger than the window with the hand.
func (d *desk) moveBook(at image.Point) {
	if d.hand.on.kind != overNothing || d.plan.farthest == (image.Point{}) {
		return
	}
	d.moved = d.hand.moved.Add(at.Sub(d.hand.from))
	d.arrange()
	d.refresh(allParts)
}

// follow does what the hand has done since the last frame.
func (d *desk) follow() {
	if !d.hand.stirred || d.hand.grip == nil {
		return
	}
	d.hand.stirred = false
	d.following = true
	defer func() { d.following = false }()
	d.moveGrip()
	d.preview()
}

// preview shows what letting go would do.
func (d *desk) preview() {
	d.hand.failed = ""
	edit := d.hand.grip.edit()
	if edit == nil {
		d.session.Drop()
		return
	}
	if err := d.session.Preview(edit); err != nil {
		d.session.Drop()
		d.hand.failed = errorWords(err)
	}
}

// DragEnd lets go.
func (d *desk) DragEnd() {
	state := d.hand.state
	if state == dragging {
		d.follow()
		d.letGo()
	}
	if state == dragging || state == cancelled {
		d.hand = hand{}
	}
	d.takeKeys()
	d.refresh(pageParts | footPart)
}

// letGo does what is previewed, and no more than that.
func (d *desk) letGo() {
	failed := d.hand.failed
	d.hand.grip = nil
	d.hand.state = idle
	if failed != "" {
		d.session.Drop()
		d.tell(failed)
		return
	}
	d.try(d.session.Release())
	d.keepCaret()
}

// keepCaret takes the word caret away where the line no longer has its word.
func (d *desk) keepCaret() {
	line, ok := d.lineAtHand()
	if !ok || d.word > len(line.Text()) {
		d.word = -1
	}
}

// MouseUp ends a press that moved nothing.
func (d *desk) MouseUp(*desktop.MouseEvent) {
	if d.hand.state == pressed || d.hand.state == cancelled {
		d.hand = hand{}
		d.refresh(pageParts | footPart)
	}
}

// putBack puts everything back as it was before the hand took hold. A button
// that is down stays out of play until it is up.
func (d *desk) putBack() {
	d.session.Drop()
	next := idle
	if d.hand.state == pressed || d.hand.state == dragging {
		next = cancelled
	}
	d.hand = hand{state: next}
	d.refresh(pageParts | footPart)
}
