package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
	"headland/typeset/echoes"
)

// echoView shows what comes back in the book: for each echo a line as long as the
// book, with a tick at each of its places, and below them the line at hand as it
// is set. The book can be opened there.
type echoView struct {
	widget.BaseWidget
	hasKeys
	laidOver
	all    []echoes.Echo
	at     int            // the echo at hand
	places map[string]int // the place at hand of each echo, by its name
	first  int            // the first echo that is seen
	over   echoSpot
	strip  stripPlan
	ticks  [][]int // by echo, where they stand in device pixels; nil until asked for
}

// echoSpotKind is what the hand is over.
type echoSpotKind int

const (
	overNoEcho  echoSpotKind = iota
	overEchoRow              // an echo, away from its ticks
	overEchoTick
	overEchoLine // the strip with the line at hand
	overEchoMark // the words that mark or unmark the echo at hand
)

// echoSpot is a kind, and of which echo and which of its places.
type echoSpot struct {
	kind        echoSpotKind
	echo, place int
}

// askEchoes lays the echoes over the book.
func (w *Window) askEchoes() {
	w.desk.settleHand()
	v := &echoView{laidOver: laidOver{w: w}, places: map[string]int{}}
	if v.all = w.session.Echoes(); len(v.all) == 0 {
		w.desk.tell("No word comes back more often than the language would expect, and none is marked: Ctrl B marks the word at hand")
		return
	}
	v.picture = pixels(v.draw)
	v.ExtendBaseWidget(v)
	v.lay(v)
	v.startAt(w.session.Page())
	v.choose(0)
}

// startAt has each echo's place at hand be the first from a page on.
func (v *echoView) startAt(page int) {
	for i := range v.all {
		e := &v.all[i]
		for p := range e.Found {
			if v.places[e.Name] = p; e.Found[p].Page >= page {
				break
			}
		}
	}
}

// place is which of an echo's places is at hand.
func (v *echoView) place(echo int) int {
	e := &v.all[echo]
	return max(0, min(v.places[e.Name], len(e.Found)-1))
}

// occurrence is the place at hand; false where what is marked stands nowhere in
// the book.
func (v *echoView) occurrence() (echoes.Occurrence, bool) {
	e := &v.all[v.at]
	if len(e.Found) == 0 {
		return echoes.Occurrence{}, false
	}
	return e.Found[v.place(v.at)], true
}

// choose puts an echo at hand and brings it into sight.
func (v *echoView) choose(at int) {
	v.at = max(0, min(at, len(v.all)-1))
	v.keepInSight()
	v.picture.Refresh()
	v.tell()
}

// step puts another of the places of the echo at hand at hand.
func (v *echoView) step(by int) {
	v.goToPlace(v.at, v.place(v.at)+by)
}

func (v *echoView) goToPlace(echo, place int) {
	v.places[v.all[echo].Name] = max(0, min(place, len(v.all[echo].Found)-1))
	v.choose(echo)
}

// open opens the book at the place at hand, with that line at hand.
func (v *echoView) open() {
	if o, ok := v.occurrence(); ok {
		v.openAt(o.Page, o.Ref)
	}
}

// mark marks a word that was found as an echo of the poet's.
func (v *echoView) mark() {
	if e := &v.all[v.at]; !e.Marked {
		v.edit(pagemodel.SetEcho{Echo: pagemodel.Echo{Name: e.Name, Words: []string{e.Name}}})
	}
}

// unmark takes the poet's mark away.
func (v *echoView) unmark() {
	if e := &v.all[v.at]; e.Marked {
		v.edit(pagemodel.SetEcho{Echo: pagemodel.Echo{Name: e.Name}})
	}
}

// edit does an edit and shows what then comes back, the same echo at hand if it
// is still one.
func (v *echoView) edit(e pagemodel.SetEcho) {
	if err := v.w.session.Do(e); err != nil {
		v.w.desk.try(err)
		return
	}
	v.all = v.w.session.Echoes()
	v.ticks = make([][]int, len(v.all))
	if len(v.all) == 0 {
		v.lift()
		return
	}
	at := v.at
	for i := range v.all {
		if strings.EqualFold(v.all[i].Name, e.Echo.Name) {
			at = i
			break
		}
	}
	v.choose(at)
}

// CreateRenderer hands the toolkit the picture.
func (v *echoView) CreateRenderer() fyne.WidgetRenderer {
	return &layOver{v.arrange, []fyne.CanvasObject{v.picture}}
}
