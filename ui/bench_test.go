package ui

import (
	"path/filepath"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// BenchmarkDrag measures the window's share of a frame while a setting rule is
// dragged: the edit tried out, the book set, both pages drawn and the words at
// the foot, in a window of 1400 by 900. One operation is one frame; every frame
// has another stop. p95-ms is the 95th percentile of a frame.
func BenchmarkDrag(b *testing.B) {
	d := benchDesk(b)
	h := benchHold(b, d)
	verso, recto := d.plan.sheets[pagemodel.Verso].seen.Size(), d.plan.sheets[pagemodel.Recto].seen.Size()
	var frames []time.Duration
	for i := 0; b.Loop(); i++ {
		s := h.stops[i%len(h.stops)]
		r := &h.page.Rows[s.row]
		d.hand.at = d.plan.fromPage(h.page.Side, typeset.Point{X: s.x, Y: r.Baseline - sizeOf(r)/3})
		d.hand.stirred = true
		began := time.Now()
		d.drawVerso(verso.X, verso.Y)
		d.drawRecto(recto.X, recto.Y)
		d.drawFoot(d.plan.size.X, d.plan.size.Y-d.plan.view.Max.Y)
		frames = append(frames, time.Since(began))
	}
	slices.Sort(frames)
	b.ReportMetric(float64(frames[len(frames)*95/100].Microseconds())/1000, "p95-ms")
}

// benchDesk is the demo on a desk, open at its first unsettled line.
func benchDesk(b *testing.B) *desk {
	b.Helper()
	return benchWindow(b).desk
}

// benchWindow is the window with that desk in it.
func benchWindow(b *testing.B) *Window {
	b.Helper()
	s, err := session.Demo(filepath.Join(b.TempDir(), "demo.headland"))
	if err != nil {
		b.Fatal(err)
	}
	test.NewApp()
	w := NewWindow(fyne.CurrentApp(), s, func(f func()) { f() }, b.TempDir())
	b.Cleanup(w.close)
	w.win.Resize(fyne.NewSize(1400, 900))
	w.desk.nextUnsettled()
	return w
}

// benchHold has the hand take the rule of the line at hand.
func benchHold(b *testing.B, d *desk) *hold {
	b.Helper()
	ref, _ := d.session.Focus()
	for side, s := range d.plan.sheets {
		if h, ok := takeRule(d.session.Committed(), d.page(s.number), ref); ok {
			d.hand = hand{state: dragging, grip: h, on: target{kind: overRule, side: pagemodel.Side(side)}}
			return h
		}
	}
	b.Fatal("the demo's first unsettled line has no rule to take")
	return nil
}
