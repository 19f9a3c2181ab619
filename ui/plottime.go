package ui

import (
	"fmt"
	"image"
	"math"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"headland/ui/session"
)

// timePlot shows where the time of a running order goes: as planned, and as each
// run-through took it.
type timePlot struct {
	rows   []timeRow // as planned, then the run-throughs, the latest first
	at     int       // the row at hand
	failed string    // why the run-throughs can't be had
	room   image.Rectangle
	second float64 // device pixels
	bars   []timeBar
}

// timeRow is one way in which the time went.
type timeRow struct {
	name  string
	parts []timePart // by the items of the running order
}

// timePart is when an item begins and ends, in seconds; none where it was not read.
type timePart struct {
	from, to float64
	stumbles []float64 // seconds from its beginning
	read     bool
}

// timeBar is where an item is drawn in a row.
type timeBar struct {
	row, item int
	at        image.Rectangle
}

const (
	timeBarDepth = 32
	timeRowMost  = 132
	timeRowsMost = 8 // run-throughs that are shown
)

// read takes the times of the running order at hand.
func (t *timePlot) read(a *aloudView) {
	if a.face != timeFace {
		return
	}
	planned := timeRow{name: "as planned"}
	for i := range a.plan.Items {
		item := &a.plan.Items[i]
		planned.parts = append(planned.parts, timePart{from: item.Starts, to: item.Starts + item.Seconds, read: !item.Dropped})
	}
	t.rows, t.failed = []timeRow{planned}, ""
	runs, err := a.w.session.Runs()
	if err != nil {
		t.failed = errorWords(err)
	}
	slices.SortStableFunc(runs, func(x, y session.Run) int { return y.At.Compare(x.At) })
	for _, run := range runs {
		if run.Reading == a.reading.ID && run.Reading != 0 && len(t.rows) <= timeRowsMost {
			t.rows = append(t.rows, a.timeRowOf(run))
		}
	}
	t.at = min(t.at, len(t.rows)-1)
}

// timeRowOf is a run-through by the items that are still in the running order; what
// is no longer in it leaves its time white.
func (a *aloudView) timeRowOf(run session.Run) timeRow {
	row := timeRow{name: "taken on " + onDayWords(run.At.Format(time.DateOnly)), parts: make([]timePart, len(a.reading.Items))}
	from := 0.0
	for _, timing := range run.Timings {
		to := from + float64(timing.Ms)/1000
		for i := range a.reading.Items {
			if a.reading.Items[i].ID == timing.Item {
				row.parts[i] = timePart{from: from, to: to, read: true}
				for _, ms := range timing.Stumbles {
					row.parts[i].stumbles = append(row.parts[i].stumbles, float64(ms)/1000)
				}
			}
		}
		from = to
	}
	return row
}

// ends is when the last of a row ends.
func (r *timeRow) ends() float64 {
	end := 0.0
	for _, part := range r.parts {
		end = max(end, part.to)
	}
	return end
}

// arrange lays the rows out, one below the other, on one scale.
func (t *timePlot) arrange(a *aloudView) {
	p := &a.place
	t.room, t.bars = a.plotRoom(), nil
	t.room.Min.Y += p.units(22)
	most := math.Max(60, float64(a.reading.Slot))
	for i := range t.rows {
		most = max(most, t.rows[i].ends())
	}
	t.second = float64(t.room.Dx()-p.units(4)) / (most * 1.02)
	deep := min(p.units(timeRowMost), t.room.Dy()/max(1, len(t.rows)))
	for i := range t.rows {
		y := t.room.Min.Y + i*deep + min(p.units(34), max(0, deep-p.units(timeBarDepth)))
		for item, part := range t.rows[i].parts {
			if part.read {
				at := image.Rect(t.x(part.from), y, max(t.x(part.to)-max(1, p.units(1.5)), t.x(part.from)+2), y+p.units(timeBarDepth))
				t.bars = append(t.bars, timeBar{i, item, at})
			}
		}
	}
}

func (t *timePlot) x(seconds float64) int { return t.room.Min.X + int(seconds*t.second+0.5) }

// bar is where an item is drawn in a row; empty for nowhere.
func (t *timePlot) bar(row, item int) image.Rectangle {
	for _, b := range t.bars {
		if b.row == row && b.item == item {
			return b.at
		}
	}
	return image.Rectangle{}
}

// under is the item under a device pixel, or the nearest within reach.
func (t *timePlot) under(a *aloudView, at image.Point) aloudSpot {
	all := make([]image.Rectangle, len(t.bars))
	for i, b := range t.bars {
		all[i] = b.at
	}
	if i := nearestOf(all, at, a.place.units(aloudReach)); i >= 0 {
		return aloudSpot{onAloudPlot, t.bars[i].item}
	}
	return aloudSpot{}
}

// key walks over the items, and over the rows.
func (t *timePlot) key(a *aloudView, k fyne.KeyName) {
	switch k {
	case fyne.KeyLeft:
		a.walk(a.at - 1)
	case fyne.KeyRight:
		a.walk(a.at + 1)
	case fyne.KeyHome:
		a.walk(0)
	case fyne.KeyEnd:
		a.walk(len(a.reading.Items) - 1)
	case fyne.KeyUp:
		t.walk(a, -1)
	case fyne.KeyDown:
		t.walk(a, 1)
	}
}

func (t *timePlot) walk(a *aloudView, by int) {
	t.at = max(0, min(len(t.rows)-1, t.at+by))
	a.arrange()
	a.tell()
}

// words say what the item at hand took in the row at hand, against what was planned.
func (t *timePlot) words(a *aloudView) string {
	if a.at >= len(a.plan.Items) || len(t.rows) == 0 {
		return "Nothing is read yet · Tab goes on to the lines · Esc the book"
	}
	row := &t.rows[max(0, t.at)]
	planned, part := t.rows[0].parts[a.at], row.parts[a.at]
	said := row.name + ": not read"
	if part.read {
		said = row.name + " " + clock(part.to-part.from) + ", from " + clock(part.from)
	}
	if t.at > 0 && part.read {
		said += " · " + againstPlan(part, planned)
	}
	if n := len(part.stumbles); n > 0 {
		said += " · " + counted(n, "stumble", "stumbles")
	}
	words := fmt.Sprintf("%d %s · %s", a.at+1, a.nameOf(a.at), said)
	if !a.w.desk.brief() {
		words += " · ← → a poem, ↑ ↓ a run-through, Tab the lines"
	}
	return words
}

// againstPlan says how much longer or shorter than planned something took.
func againstPlan(part, planned timePart) string {
	more := math.Round(part.to-part.from) - math.Round(planned.to-planned.from)
	switch {
	case more > 0:
		return clock(more) + " longer than planned"
	case more < 0:
		return clock(more) + " shorter than planned"
	}
	return "as planned"
}
