package ui

import (
	"testing"
	"time"

	"headland/pagemodel"
)

// BenchmarkPointAtChoice measures the window's share of a frame in which another
// choice is pointed at: the edit tried out, the book set, both pages drawn, the
// words at the foot and the leaf, in a window of 1400 by 900 at 1x. One operation
// is one choice; p95-ms is the 95th percentile.
func BenchmarkPointAtChoice(b *testing.B) {
	d, l := benchChoices(b)
	verso, recto := d.plan.sheets[pagemodel.Verso].seen.Size(), d.plan.sheets[pagemodel.Recto].seen.Size()
	foot, leaf := d.plan.footBand().Size(), l.plan.at.Size()
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		began := time.Now()
		l.goTo(i % len(l.all))
		d.drawVerso(verso.X, verso.Y)
		d.drawRecto(recto.X, recto.Y)
		d.drawFoot(foot.X, foot.Y)
		l.draw(leaf.X, leaf.Y)
		took = append(took, time.Since(began))
	}
	b.ReportMetric(percentile(took, 95), "p95-ms")
}

// BenchmarkLayChoices measures from asking for the choices of a line to the leaf
// drawn.
func BenchmarkLayChoices(b *testing.B) {
	d, l := benchChoices(b)
	l.lift()
	leaf := l.plan.at.Size()
	for b.Loop() {
		d.choose()
		l := l.w.win.Canvas().Overlays().Top().(*choiceLeaf)
		l.draw(leaf.X, leaf.Y)
		l.lift()
	}
}

// benchChoices is the leaf for the demo's first unsettled line.
func benchChoices(b *testing.B) (*desk, *choiceLeaf) {
	b.Helper()
	w := benchWindow(b)
	w.askChoices()
	return w.desk, w.win.Canvas().Overlays().Top().(*choiceLeaf)
}
