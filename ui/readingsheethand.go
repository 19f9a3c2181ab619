package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// TypedKey is a key, or what a page-turner sends.
func (s *readingSheet) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyPageDown, fyne.KeyRight, fyne.KeyDown, fyne.KeySpace:
		s.goOn()
	case fyne.KeyPageUp, fyne.KeyLeft, fyne.KeyUp:
		s.goBack()
	case fyne.KeyReturn, fyne.KeyEnter:
		s.startOrStand()
	case fyne.KeyBackspace, fyne.KeyDelete:
		s.stumble()
	case fyne.KeyHome:
		s.again()
	case fyne.KeyEscape:
		s.lift()
	}
}

// TypedShortcut hears the keys with a modifier, those of the menu too.
func (s *readingSheet) TypedShortcut(k fyne.Shortcut) {
	switch k.ShortcutName() {
	case key(ctrl, fyne.KeyT).ShortcutName():
		s.timed = !s.timed
		s.strip.Refresh()
	case key(ctrl, fyne.KeyL).ShortcutName():
		s.w.otherLight()
		s.arrange()
	}
}

// AcceptsTab has the tab key come here, where it does nothing.
func (s *readingSheet) AcceptsTab() bool { return true }

// sheetPress is words at the foot that can be pressed.
type sheetPress struct {
	words string
	act   func() // nil: they only say something
	at    image.Rectangle
}

// backShare is the part of the window's width, at its left, where a press goes back.
const backShare = 4

// MouseDown goes on, or back at the left of the window; at the foot it does what is
// pressed, or the clock is started or stands.
func (s *readingSheet) MouseDown(e *desktop.MouseEvent) {
	s.w.win.Canvas().Focus(s)
	switch {
	case e.Button != desktop.MouseButtonPrimary:
		s.goBack()
	case s.onStrip(e.Position):
		if act := s.pressed(e.Position); act != nil {
			act()
		} else {
			s.startOrStand()
		}
	case e.Position.X < s.size.Width/backShare:
		s.goBack()
	default:
		s.goOn()
	}
}

// MouseUp does nothing: it acts on the press.
func (s *readingSheet) MouseUp(*desktop.MouseEvent) {}

func (s *readingSheet) onStrip(at fyne.Position) bool {
	return at.Y >= s.size.Height-s.footDepth()
}

// pressed is what the words at a position on the window do, nil where there are
// none.
func (s *readingSheet) pressed(at fyne.Position) func() {
	density := float32(s.stripWide) / s.size.Width
	px := image.Pt(int(at.X*density), int((at.Y-s.size.Height+s.footDepth())*density))
	for _, p := range s.presses {
		if px.In(p.at) {
			return p.act
		}
	}
	return nil
}

// Scrolled goes on, or back.
func (s *readingSheet) Scrolled(e *fyne.ScrollEvent) {
	if steps(e.Scrolled.DY) < 0 {
		s.goOn()
	} else {
		s.goBack()
	}
}
