package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"headland/ui/session"
)

// dummyWay is a paper and a way to fold it.
type dummyWay struct {
	words string
	session.DummyOptions
}

// dummyWays are the ways that are offered: four sheets to a section first, which
// fold well by hand.
func dummyWays() []dummyWay {
	var ways []dummyWay
	for _, paper := range [...]string{"A4", "Letter"} {
		for _, section := range [...]int{16, 8, 32, 0} {
			words := fmt.Sprintf("%s, in sections of %d pages", paper, section)
			if section == 0 {
				words = paper + ", all in one, to be stapled"
			}
			ways = append(ways, dummyWay{words, session.DummyOptions{Paper: paper, Section: section}})
		}
	}
	return ways
}

// askDummy begins to make a dummy, the book on paper, to be folded and held: it
// asks on what paper and how folded, then where it is to go.
func (w *Window) askDummy() {
	w.desk.settleHand()
	ways := dummyWays()
	find(w, finding[dummyWay]{
		heading: "A dummy to print on both sides, fold and hold", hint: "the paper: A4 or Letter",
		size: fyne.NewSize(440, float32(len(ways))*rowDepth), all: ways,
		row: func(d dummyWay) listRow { return listRow{words: d.words} }, take: w.askDummyPlace,
	})
}

func (w *Window) askDummyPlace(d dummyWay) {
	w.choose(asking{
		heading: "Export a dummy to fold", verb: "Export", kinds: []string{".pdf"}, write: true, replace: true, name: w.stem() + " dummy",
		done: func(path string) { w.exportDummy(path, d.DummyOptions) },
	})
}

// exportDummy writes a dummy, and says how it is printed when it is there.
func (w *Window) exportDummy(path string, o session.DummyOptions) {
	d, err := w.session.Dummy(o)
	if err != nil {
		w.fail("It could not be exported", err)
		return
	}
	w.exportBy(path, func(p progress) error { return d.Write(path, p) }, func() {
		w.say("How to print and fold it", strings.ReplaceAll(d.Instructions(), "; ", ";\n")+".")
	})
}
