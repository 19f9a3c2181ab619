package ui

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset/aloud"
	large "headland/typeset/sheet"
	"headland/ui/session"
)

// readingSheet lies over the whole window, its menus too: a running order in large
// type, leaf by leaf, and its time along the foot.
type readingSheet struct {
	widget.BaseWidget
	hasKeys
	w      *Window
	plan   aloud.Plan
	large  *session.LargeType
	set    *large.Copy // for the window as large as it is
	size   fyne.Size   // that it was set for
	leaf   int         // of the copy; behind the last once all is read
	clock  *runClock
	begun  float64 // seconds, by the plan, before the item with which the clock was started
	timed  bool    // the time is said in words too
	said   string  // why the times are not kept, or that they are
	ticks  bool    // the foot is drawn again by and by
	lifted bool
	before fyne.Focusable // had the keys before

	picture, strip *canvas.Raster
	ink, stripInk  buffers
	presses        []sheetPress // the words at the foot that can be pressed
	stripWide      int          // of the foot as it was drawn last, in device pixels
}

// openReadingSheet lays a running order over the window in large type, from one of
// its items, counted from 0.
func (w *Window) openReadingSheet(r pagemodel.Reading, from int) {
	w.layReadingSheet(r, from, timeOfDay)
}

// layReadingSheet lays it with a clock.
func (w *Window) layReadingSheet(r pagemodel.Reading, from int, now func() time.Time) *readingSheet {
	w.desk.settleHand()
	said := w.keptWords()
	s := &readingSheet{w: w, plan: w.session.Plan(r), large: w.session.LargeType(), said: said}
	s.clock = newRunClock(now, s.plan.Items)
	c := w.win.Canvas()
	s.before = c.Focused()
	s.fit(c.Size())
	if len(s.set.Leaves) == 0 {
		w.say("There is nothing to read yet", "Put a poem into the running order first.")
		return nil
	}
	s.leaf = s.set.LeafOf(from)
	s.picture, s.strip = pixels(s.draw), pixels(s.drawStrip)
	s.ExtendBaseWidget(s)
	c.Overlays().Add(s)
	s.Resize(c.Size())
	c.Focus(s)
	return s
}

// fit sets the running order for a window of that size; what is read stays the
// same.
func (s *readingSheet) fit(size fyne.Size) {
	if size == s.size {
		return
	}
	item, line := s.place()
	s.size = size
	s.set = s.large.Copy(s.plan, large.OnWindow(float64(size.Width), float64(size.Height)))
	switch {
	case item >= len(s.plan.Items):
		s.leaf = len(s.set.Leaves)
	case len(s.set.Leaves) > 0:
		s.leaf = s.leafWith(item, line)
	}
}

// place is what is being read: the item, and the first line on the leaf.
func (s *readingSheet) place() (item int, line pagemodel.LineID) {
	l := s.open()
	if l == nil {
		return s.item(), 0
	}
	for i := range l.Verse {
		if l.Verse[i].Line != 0 {
			return l.Item, l.Verse[i].Line
		}
	}
	return l.Item, 0
}

// leafWith is the leaf of an item on which a line stands, or else its first.
func (s *readingSheet) leafWith(item int, line pagemodel.LineID) int {
	for i := range s.set.Leaves {
		for j := range s.set.Leaves[i].Verse {
			if s.set.Leaves[i].Item == item && line != 0 && s.set.Leaves[i].Verse[j].Line == line {
				return i
			}
		}
	}
	return s.set.LeafOf(item)
}

// open is the leaf that is seen, nil once all is read.
func (s *readingSheet) open() *large.Leaf {
	if s.set == nil || s.leaf >= len(s.set.Leaves) {
		return nil
	}
	return &s.set.Leaves[s.leaf]
}

// item is the item that is read, behind the last once all is.
func (s *readingSheet) item() int {
	switch l := s.open(); {
	case l != nil:
		return l.Item
	case s.set == nil:
		return 0
	}
	return len(s.plan.Items)
}

// arrange lays the leaf over the window, and the foot over its foot.
func (s *readingSheet) arrange() {
	s.fit(s.Size())
	foot := s.footDepth()
	s.picture.Resize(fyne.NewSize(s.size.Width, s.size.Height-foot))
	s.strip.Move(fyne.NewPos(0, s.size.Height-foot))
	s.strip.Resize(fyne.NewSize(s.size.Width, foot))
	s.picture.Refresh()
	s.strip.Refresh()
}

// footDepth is how deep the foot is, in the toolkit's units: a little less than the
// format leaves under the catchword.
func (s *readingSheet) footDepth() float32 {
	return float32(int(s.set.Format.Foot.Points() * 5 / 6))
}

// lift takes the sheet away, and keeps what was timed.
func (s *readingSheet) lift() {
	if s.lifted {
		return
	}
	s.endRun()
	s.lifted = true
	c := s.w.win.Canvas()
	c.Overlays().Remove(s)
	if below, ok := c.Overlays().Top().(*aloudView); ok {
		below.read()
	}
	if s.before != nil {
		c.Focus(s.before)
	} else {
		s.w.desk.takeKeys()
	}
}

// CreateRenderer hands the toolkit the leaf and the foot.
func (s *readingSheet) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{s.arrange, []fyne.CanvasObject{s.picture, s.strip}}
}
