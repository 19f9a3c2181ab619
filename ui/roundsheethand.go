package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/pagemodel"
	"headland/typeset/corrections"
)

// sheetSpotKind is what the hand is over while the sheet lies there.
type sheetSpotKind int

const (
	onNothing   sheetSpotKind = iota // the sheet, or the desk beside it
	onFoot                           // the sheet's foot: it is lifted there
	onCorrected                      // a line of which something differs now
	onDesk                           // a fore-edge or a tick
	onSlip                           // in a narrow window, what is seen of the page that is not worked on
)

// sheetSpot is a kind and, for a line, which one.
type sheetSpot struct {
	kind sheetSpotKind
	line pagemodel.LineRef
	edge target
}

// under finds what lies under a position on the window.
func (s *sentSheet) under(at fyne.Position) sheetSpot {
	d := s.w.desk
	px := d.pixelAt(at.Subtract(s.origin))
	if px.In(d.plan.sliver) {
		return sheetSpot{kind: onFoot}
	}
	if side, ok := d.plan.sideAt(px); ok && d.plan.narrow && side != d.working {
		return sheetSpot{kind: onSlip}
	}
	if px.In(s.at) {
		if line, ok := s.rowUnder(px); ok && len(s.correctionsOn(line)) > 0 {
			return sheetSpot{kind: onCorrected, line: line}
		}
		return sheetSpot{}
	}
	if edge := s.edgeUnder(px); onEdge(edge) {
		return sheetSpot{kind: onDesk, edge: edge}
	}
	return sheetSpot{}
}

// edgeUnder is the leaf or the tick outside the pages.
func (s *sentSheet) edgeUnder(at image.Point) target {
	if d := s.w.desk; at.In(d.plan.view) {
		return d.underEdge(at)
	}
	return target{}
}

// correctionsOn are the corrections of a line as it was sent, or of the poem's head
// where only the poem is said.
func (s *sentSheet) correctionsOn(line pagemodel.LineRef) []*corrections.Correction {
	var on []*corrections.Correction
	for i := range s.list.All {
		if c := &s.list.All[i]; c.Change.Line.Line == line.Line && c.Change.Poem == line.Poem {
			on = append(on, c)
		}
	}
	return on
}

// MouseIn begins to follow the hand.
func (s *sentSheet) MouseIn(e *desktop.MouseEvent) { s.MouseMoved(e) }

// MouseMoved says what is under the hand.
func (s *sentSheet) MouseMoved(e *desktop.MouseEvent) { s.hover(s.under(e.Position)) }

// MouseOut says that the hand has left.
func (s *sentSheet) MouseOut() { s.hover(sheetSpot{}) }

func (s *sentSheet) hover(now sheetSpot) {
	if now == s.over || s.lifted {
		return
	}
	s.over = now
	s.picture.Refresh()
	s.tell()
}

// MouseDown lifts the sheet at its foot, opens the book at a fore-edge, and
// opens the list at a correction.
func (s *sentSheet) MouseDown(e *desktop.MouseEvent) {
	s.w.win.Canvas().Focus(s)
	on := s.under(e.Position)
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	switch on.kind {
	case onFoot:
		s.lift()
	case onDesk:
		s.w.desk.open(on.edge)
		s.show()
	case onSlip:
		s.w.desk.workOn(s.w.desk.working.Facing())
		s.show()
	case onCorrected:
		number := s.correctionsOn(on.line)[0].Number
		s.lift()
		s.w.layCorrections(s.sent.Round.ID, number)
	}
}

// MouseUp does nothing: the sheet acts on the press.
func (s *sentSheet) MouseUp(*desktop.MouseEvent) {}

// Cursor says what can be pressed.
func (s *sentSheet) Cursor() desktop.Cursor {
	if s.over.kind != onNothing {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// Scrolled moves the book under the sheet, and the sheet with it.
func (s *sentSheet) Scrolled(e *fyne.ScrollEvent) {
	s.w.desk.Scrolled(e)
	s.show()
}

// TypedKey leafs through, or lifts the sheet.
func (s *sentSheet) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		s.lift()
	case fyne.KeyPageDown, fyne.KeyPageUp, fyne.KeyHome, fyne.KeyEnd:
		s.w.desk.bareKey(e.Name)
		s.show()
	case fyne.KeyDown:
		s.walk(1)
	case fyne.KeyUp:
		s.walk(-1)
	}
}

// TypedShortcut hears the keys with a modifier, those of the menu too.
func (s *sentSheet) TypedShortcut(k fyne.Shortcut) {
	d, c := s.w.desk, sheetKeys[k.ShortcutName()]
	switch c {
	case liftKey:
		s.lift()
	case listKey:
		s.lift()
		s.w.askCorrections()
	case nearerKey, fartherKey, fitKey:
		map[sheetKey]func(){nearerKey: d.nearer, fartherKey: d.farther, fitKey: d.fitWindow}[c]()
		s.show()
	}
}

// sheetKey is what a key with a modifier does while the sheet lies there.
type sheetKey int

const (
	noSheetKey sheetKey = iota
	liftKey
	listKey
	nearerKey
	fartherKey
	fitKey
)

// sheetKeys are the keys by the names of their shortcuts: the menu's own.
var sheetKeys = map[string]sheetKey{
	key(ctrl, fyne.KeyR).ShortcutName():      liftKey,
	key(ctrlShift, fyne.KeyR).ShortcutName(): listKey,
	key(ctrl, fyne.KeyEqual).ShortcutName():  nearerKey,
	key(ctrl, fyne.KeyMinus).ShortcutName():  fartherKey,
	key(ctrl, fyne.Key0).ShortcutName():      fitKey,
}
