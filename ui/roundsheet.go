package ui

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/corrections"
	"headland/ui/session"
)

// sentSheet is the sheet of the last round, laid over the open pages: the same
// pages as they went out, with the marks of what differs since. Nothing on it
// changes. As a widget it lies over the whole window, so that nothing else is
// changed while it lies there; only its paper is seen.
type sentSheet struct {
	widget.BaseWidget
	hasKeys
	w      *Window
	sent   *session.Sent
	list   *corrections.List
	origin fyne.Position   // of the desk, on the window
	at     image.Rectangle // in device pixels of the desk
	over   sheetSpot
	lifted bool

	picture *canvas.Raster
	ink     buffers
	drawn   sheetLook
}

// laySheet lays the sheet of the last round over the pages.
func (w *Window) laySheet() {
	d := w.desk
	d.settleHand()
	round, ok := w.lastRound()
	if !ok {
		return
	}
	sent, ok := w.session.LastSent()
	if !ok {
		d.tell("The pages of " + round.Name + " can’t be found in the file")
		return
	}
	list, err := w.session.Corrections(round.ID)
	if err != nil {
		d.try(err)
		return
	}
	s := &sentSheet{w: w, sent: sent, list: list}
	s.picture = pixels(s.draw)
	s.ExtendBaseWidget(s)
	w.win.Canvas().Overlays().Add(s)
	s.Resize(w.win.Canvas().Size())
	d.countNow()
	d.hoverOver(target{})
	s.show()
	w.win.Canvas().Focus(s)
}

// lift takes the sheet away.
func (s *sentSheet) lift() {
	if s.lifted {
		return
	}
	s.lifted = true
	s.w.win.Canvas().Overlays().Remove(s)
	s.w.desk.hoverOver(target{})
	s.w.desk.tell("")
	s.w.desk.takeKeys()
}

// show lays the sheet over the pages that lie open now, and says what it is.
func (s *sentSheet) show() {
	s.over = sheetSpot{}
	s.arrange()
	s.tell()
}

// tell says at the foot what one sees.
func (s *sentSheet) tell() {
	d := s.w.desk
	switch s.over.kind {
	case onCorrected:
		d.tell(correctionLine(s.correctionsOn(s.over.line)))
		return
	case onDesk:
		d.tell("Press: the sheet is laid over " + d.pageWords(s.over.edge.spread) + d.nameOn(s.over.edge.spread))
		return
	}
	d.tell(fmt.Sprintf("%s · %s, %s on these pages · ↓ goes on to what differs next, Esc lifts the sheet",
		sentWords(s.sent.Round), correctionsWords(len(s.list.All)), countOr(s.onThese(), "none")))
}

// countOr is a number, or what is said for 0.
func countOr(n int, none string) string {
	if n == 0 {
		return none
	}
	return fmt.Sprint(n)
}

// onThese is how many of the corrections stand on the pages that lie open.
func (s *sentSheet) onThese() int {
	n := 0
	for i := range s.list.All {
		page := pageAsSent(s.sent.Setting, &s.list.All[i])
		for side := range s.w.desk.plan.sheets {
			if page > 0 && page == s.number(pagemodel.Side(side)) {
				n++
			}
		}
	}
	return n
}

// number is the page as sent that has the folio of the page that lies open on a
// side; 0 where no such page went out.
func (s *sentSheet) number(side pagemodel.Side) int {
	d := s.w.desk
	return pageAs(d.of, s.sent.Setting, d.plan.sheets[side].number)
}

// pageAs is the page of another setting that has the folio of page n of this one,
// and lies on the same side; 0 where there is none.
func pageAs(this, other *typeset.Setting, n int) int {
	if n == 0 {
		return 0
	}
	folio := this.FolioOf(n)
	if n <= other.Extent() && other.FolioOf(n) == folio {
		return n
	}
	for m := 2 - n%2; m <= other.Extent(); m += 2 {
		if other.FolioOf(m) == folio {
			return m
		}
	}
	return 0
}

// walk opens the book at the next pages (1) on which something differs, or at
// those before (-1).
func (s *sentSheet) walk(by int) {
	d, to := s.w.desk, 0
	for i := range s.list.All {
		page := pageAs(s.sent.Setting, d.of, pageAsSent(s.sent.Setting, &s.list.All[i]))
		open := pagemodel.SpreadOf(page, d.of.Extent())
		if page == 0 || open == d.spread || (page > d.session.Page()) != (by > 0) {
			continue
		}
		if to == 0 || (page < to) == (by > 0) {
			to = page
		}
	}
	if to != 0 {
		d.showPage(to)
	}
	s.show()
}

// arrange lays the sheet on whole device pixels, a little larger than the pages
// on every side, its foot where the sliver lies.
func (s *sentSheet) arrange() {
	d := s.w.desk
	s.origin = fyne.CurrentApp().Driver().AbsolutePositionForObject(d)
	p, larger := &d.plan, d.plan.units(sheetOver)
	s.at = p.sliver
	for _, page := range p.sheets {
		if !page.seen.Empty() {
			s.at = s.at.Union(image.Rect(page.seen.Min.X-larger, page.seen.Min.Y-larger, page.seen.Max.X+larger, page.seen.Max.Y))
		}
	}
	s.at = s.at.Intersect(image.Rectangle{Max: p.size})
	unit := func(px int) float32 { return float32(float64(px) / p.density) }
	s.picture.Resize(fyne.NewSize(unit(s.at.Dx()), unit(s.at.Dy())))
	s.picture.Move(s.origin.AddXY(unit(s.at.Min.X), unit(s.at.Min.Y)))
	s.picture.Refresh()
}

// CreateRenderer hands the toolkit what is seen of the sheet.
func (s *sentSheet) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{s.arrange, []fyne.CanvasObject{s.picture}}
}
