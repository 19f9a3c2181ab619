package ui

import (
	"fmt"
	"image"
	"strings"

	"fyne.io/fyne/v2"
)

// walk puts another poem at hand and brings it into sight.
func (l *linesPlot) walk(a *aloudView, to int) {
	l.at = max(0, min(len(l.poems)-1, to))
	row, seen := l.rowOf(l.at), l.seen(&a.place)
	l.top = max(row-seen+1, min(l.top, row))
	a.arrange()
	a.tell()
}

// scroll moves the rows.
func (l *linesPlot) scroll(a *aloudView, by int) {
	l.top += by
	a.arrange()
}

// key walks over the poems, and opens the book at one.
func (l *linesPlot) key(a *aloudView, k fyne.KeyName) {
	switch k {
	case fyne.KeyLeft:
		l.walk(a, l.at-1)
	case fyne.KeyRight:
		l.walk(a, l.at+1)
	case fyne.KeyHome:
		l.walk(a, 0)
	case fyne.KeyEnd:
		l.walk(a, len(l.poems)-1)
	case fyne.KeyUp:
		l.walk(a, l.beside(-1))
	case fyne.KeyDown:
		l.walk(a, l.beside(1))
	case fyne.KeyReturn, fyne.KeyEnter:
		l.open(a)
	}
}

// beside is the poem as far along in the row below the one at hand, or above it.
func (l *linesPlot) beside(by int) int {
	if len(l.rows) == 0 {
		return 0
	}
	row := l.rowOf(l.at)
	to := max(0, min(len(l.rows)-1, row+by))
	return min(l.rows[to][0]+l.at-l.rows[row][0], l.rows[to][1]-1)
}

// open lifts the view and opens the book at the poem at hand.
func (l *linesPlot) open(a *aloudView) {
	if l.at >= len(l.poems) {
		return
	}
	page, ok := a.w.session.Setting().PageOfPoem(l.poems[l.at].ID())
	a.lift()
	if ok {
		a.w.desk.showPage(page)
	}
}

// under is the poem under a device pixel.
func (l *linesPlot) under(at image.Point) aloudSpot {
	for _, place := range l.places {
		if at.In(place.at) {
			return aloudSpot{onAloudPlot, place.poem}
		}
	}
	return aloudSpot{}
}

// words say what the poem at hand is like.
func (l *linesPlot) words(a *aloudView) string {
	if l.at >= len(l.poems) {
		return "There is no poem in the book · Esc the book"
	}
	p := l.poems[l.at]
	longest, shortest, over := 0.0, 1e9, 0
	for _, ems := range l.lengths(a, p) {
		if ems < 0 {
			continue
		}
		longest, shortest = max(longest, ems), min(shortest, ems)
		if ems > l.measure() {
			over++
		}
	}
	words := fmt.Sprintf("%d %s · %s, %s", l.at+1, nameOfPoem(p), counted(p.LineCount(), "line", "lines"), stanzaWords(stanzasOf(p)))
	if longest > 0 {
		words += fmt.Sprintf(" · from %.1f to %.1f ems", shortest, longest)
	}
	if over > 0 {
		words += fmt.Sprintf(", %d longer than the measure", over)
	}
	if a.w.desk.brief() {
		return words
	}
	return words + " · ← → a poem, Enter opens the book there"
}

// stanzaWords are how many lines the stanzas have, those alike one after another
// said once.
func stanzaWords(all []int) string {
	if len(all) <= 1 {
		return "in one stanza"
	}
	var words []string
	for i := 0; i < len(all); {
		n := 1
		for i+n < len(all) && all[i+n] == all[i] {
			n++
		}
		if n > 2 {
			words = append(words, fmt.Sprintf("%d × %d", n, all[i]))
		} else {
			for range n {
				words = append(words, fmt.Sprint(all[i]))
			}
		}
		i += n
	}
	return "in stanzas of " + strings.Join(words, ", ")
}
