package ui

import (
	"headland/pagemodel"
	"headland/typeset"
)

// lands is where the words go that a held rule sheds.
type lands int

const (
	ownLine   lands = iota // they are a line of their own
	joinsNext              // they join the line below
)

// keysDown are the modifiers that change what a hand does.
type keysDown struct{ shift, ctrl bool }

// grip is what the hand has taken hold of: a setting rule, or a word.
type grip interface {
	// move says where the hand is on the page, and what is held down.
	move(at typeset.Point, keys keysDown)
	// stance is a value that is another when edit or its picture would be.
	stance() stance
	// edit is what would be done if the hand let go now; nil for nothing.
	edit() pagemodel.Edit
	// say tells in words what that is.
	say() string
}

// stance is how a grip stands: what there is to see of where the hand is.
type stance struct {
	stop          int // of a rule
	lands         lands
	edition, turn bool
	width         pagemodel.Em // of a gap or an indent
}

// hold is the hand on a line's setting rule. All stops are found at the moment
// of taking it, so the line's end can't run from under the hand.
type hold struct {
	page     *typeset.Page
	ref      pagemodel.LineRef
	line     pagemodel.Line
	below    *below // nil where the line ends its stanza
	prose    bool
	overlong bool
	own      []int // the line's rows on the page
	nextRow  int   // of the line below on the same page, or -1
	stops    []stop
	home     int

	now     int // index into stops
	lands   lands
	edition bool
	turn    bool
}

// takeRule takes the rule at the end of a line that ends on the page.
func takeRule(set *typeset.Setting, page *typeset.Page, ref pagemodel.LineRef) (*hold, bool) {
	poem, at, err := set.Collection().Line(ref)
	own := rowsOf(page, ref)
	if err != nil || len(own) == 0 || !page.Rows[own[len(own)-1]].Last {
		return nil, false
	}
	stanza := poem.Stanza(at)
	h := &hold{page: page, ref: ref, line: poem.Line(at), own: own, nextRow: -1}
	h.prose = stanza.Kind() == pagemodel.Prose
	h.overlong = page.Rows[own[0]].Overrun > 0
	if at.Line+1 < len(stanza.Lines()) {
		h.findBelow(set, pagemodel.LineRef{Poem: ref.Poem, Line: stanza.Lines()[at.Line+1].ID()}, stanza.Lines()[at.Line+1])
	}
	h.stops = shedStops(page, h.line, own)
	if len(h.stops) == 0 || !h.stops[len(h.stops)-1].home() {
		return nil, false
	}
	h.home = len(h.stops) - 1
	h.now = h.home
	h.stops = append(h.stops, gatherStops(h.stops[h.home], h.below)...)
	return h, true
}

// findBelow finds how the line below is set, on whatever page it is.
func (h *hold) findBelow(set *typeset.Setting, ref pagemodel.LineRef, line pagemodel.Line) {
	h.below = &below{line: line}
	page := h.page
	if number, ok := set.PageOfLine(ref); ok && number != page.Number {
		page = set.Page(number)
	}
	for _, i := range rowsOf(page, ref) {
		h.below.rows = append(h.below.rows, &page.Rows[i])
		if page == h.page && h.nextRow < 0 {
			h.nextRow = i
		}
	}
}

// move snaps the rule to the stop nearest to the hand: first the line's row
// that is nearest in height, then the stop in it.
func (h *hold) move(at typeset.Point, keys keysDown) {
	h.lands = ownLine
	if h.nextRow >= 0 && at.Y > h.page.Rows[h.nextRow].Baseline-sizeOf(&h.page.Rows[h.nextRow])*3/5 {
		h.lands = joinsNext
	}
	row := h.nearestRow(at.Y)
	best, far := h.home, typeset.Length(1<<30)
	for i, s := range h.stops {
		x, ok := h.reach(s, row)
		if d := distance(x, at.X); ok && d < far && !(s.inside && h.lands == joinsNext) {
			best, far = i, d
		}
	}
	h.now = best
	h.heed(keys)
}

// reach is where in a row the hand has to be for a stop: at its own place, or,
// for the stop that ends the row before, where the row begins. So all that
// stands in a row can be shed from within it.
func (h *hold) reach(s stop, row int) (typeset.Length, bool) {
	if s.row == row {
		return s.x, true
	}
	ends := s.row == row-1 && s.at >= h.page.Rows[s.row].End
	return h.page.Rows[row].X - wordSpace(&h.page.Rows[row]), ends
}

func distance(a, b typeset.Length) typeset.Length { return max(a-b, b-a) }

func (h *hold) nearestRow(y typeset.Length) int {
	best, far := h.own[len(h.own)-1], typeset.Length(1<<30)
	for _, i := range h.own {
		r := &h.page.Rows[i]
		if d := distance(r.Baseline-sizeOf(r)/3, y); d < far {
			best, far = i, d
		}
	}
	return best
}

// heed takes account of what is held down. A break in this edition leaves the line below
// alone, and so does a turn.
func (h *hold) heed(keys keysDown) {
	s := h.stops[h.now]
	sheds := s.words > 0 || s.inside
	h.edition = sheds && (keys.shift || h.prose)
	h.turn = keys.ctrl && h.overlong && sheds && !s.inside
	if h.edition || h.turn || s.inside {
		h.lands = ownLine
	}
}

// step moves the rule by keys: so many stops to the left (shedding) where
// negative, to the right (gathering) where positive.
func (h *hold) step(by int, keys keysDown) {
	h.now = max(0, min(len(h.stops)-1, h.now+by))
	h.heed(keys)
}

// land chooses by keys where shed words go; false where there is no choice.
func (h *hold) land(l lands) bool {
	s := h.stops[h.now]
	if l == joinsNext && (h.below == nil || s.words <= 0 || s.inside) {
		return false
	}
	h.lands, h.edition, h.turn = l, false, false
	return true
}

// stance is where the rule stands and what it would do there.
func (h *hold) stance() stance {
	return stance{stop: h.now, lands: h.lands, edition: h.edition, turn: h.turn}
}

// edit is what letting go would do.
func (h *hold) edit() pagemodel.Edit {
	s := h.stops[h.now]
	switch {
	case s.home():
		return nil
	case s.words < 0:
		return pagemodel.Carry{LineRef: h.ref, Count: s.words}
	case h.turn:
		return pagemodel.Keep{LineRef: h.ref, Turns: []int{h.shedFrom()}, Reason: h.line.Reason(), Shown: h.line.Shown()}
	case h.edition:
		return pagemodel.Break{LineRef: h.ref, At: s.at, In: pagemodel.InEdition}
	case h.lands == joinsNext:
		return pagemodel.Carry{LineRef: h.ref, Count: s.words}
	}
	return pagemodel.Break{LineRef: h.ref, At: s.at, In: pagemodel.InPoem}
}

// shedFrom is the byte offset of the first word that is shed.
func (h *hold) shedFrom() int {
	at := h.stops[h.now].at
	for _, w := range pagemodel.Words(h.line.Text()) {
		if w.Start >= at {
			return w.Start
		}
	}
	return at
}

// spot is where the held rule is to be drawn on the page as it is now set.
type spot struct {
	row   int // of the page's rows
	x     typeset.Length
	after int // the row that holds the shed words, or the line that they would join; -1 for none
	other int // the row of the place not chosen; -1 for none
}

// on finds the spot in the page as it is set with the preview; false if the
// line's end has left the page.
func (h *hold) on(page *typeset.Page) (spot, bool) {
	s := h.stops[h.now]
	own := rowsOf(page, h.ref)
	for _, i := range own {
		r := &page.Rows[i]
		ends := r.Last && (s.words <= 0 || i == own[len(own)-1] && r.End <= s.at)
		if !ends && (r.Start >= s.at || s.at > r.End || s.words <= 0 && !s.inside) {
			continue
		}
		at := spot{row: i, x: r.XAt(min(r.End, max(s.at, r.Start))), after: -1, other: -1}
		if s.words < 0 {
			at.x = r.X + r.Width
		}
		h.places(page, &at)
		return at, true
	}
	return spot{}, false
}

// places finds both places that shed words can go to.
func (h *hold) places(page *typeset.Page, at *spot) {
	s := h.stops[h.now]
	if s.words <= 0 && !s.inside || at.row+1 >= len(page.Rows) || page.Rows[at.row+1].Line == 0 {
		return
	}
	at.after = at.row + 1
	if h.edition || h.turn || s.inside || h.below == nil {
		return
	}
	if h.lands == ownLine {
		for i := at.after; i < len(page.Rows); i++ {
			if page.Rows[i].Line == h.below.line.ID() {
				at.other = i
				return
			}
		}
	}
}
