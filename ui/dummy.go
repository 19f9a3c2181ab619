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

// dummyChoice asks on what paper a dummy is printed and how it is folded.
type dummyChoice struct {
	w     *Window
	panel *panel
	field *field
	list  *listing
	ways  []dummyWay
}

// askDummy begins to make a dummy: the book on paper, to be folded and held.
func (w *Window) askDummy() {
	w.desk.settleHand()
	c := &dummyChoice{w: w}
	c.field = newField("", "the paper: A4 or Letter", c.key)
	c.field.OnChanged = func(string) { c.narrow() }
	c.list = newListing(w.desk.k, w.desk.light.palette(), fyne.NewSize(440, float32(len(dummyWays()))*rowDepth), c.take)
	c.panel = w.layPanel("A dummy to print on both sides, fold and hold", c.field, c.field, c.list)
	c.narrow()
}

// narrow lists the ways that go with what is typed.
func (c *dummyChoice) narrow() {
	c.ways = nil
	var rows []listRow
	for _, way := range dummyWays() {
		if strings.Contains(strings.ToLower(way.words), strings.ToLower(c.field.Text)) {
			c.ways, rows = append(c.ways, way), append(rows, listRow{words: way.words})
		}
	}
	c.list.set(rows, 0)
}

func (c *dummyChoice) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		c.panel.lift()
	case fyne.KeyReturn, fyne.KeyEnter:
		c.take(c.list.chosen)
	default:
		return c.list.walk(k)
	}
	return true
}

// take asks where the dummy is to go, and says how it is printed when it is
// there.
func (c *dummyChoice) take(i int) {
	if i < 0 || i >= len(c.ways) {
		return
	}
	c.panel.lift()
	w, options := c.w, c.ways[i].DummyOptions
	w.choose(asking{
		heading: "Export a dummy to fold", verb: "Export", kinds: []string{".pdf"}, write: true, replace: true, name: w.stem() + " dummy",
		done: func(path string) { w.exportDummy(path, options) },
	})
}

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
