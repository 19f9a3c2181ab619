package ui

import (
	"image"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"headland/ui/session"
)

// benchOrder is a book of 400 poems on a desk, in a window of 1400 by 900. What is
// to come back to the window comes by the channel.
func benchOrder(b *testing.B) (*Window, chan func()) {
	b.Helper()
	s, err := session.Create(filepath.Join(b.TempDir(), "batch.headland"), batches(400))
	if err != nil {
		b.Fatal(err)
	}
	test.NewApp()
	posted := make(chan func(), 1000)
	w := NewWindow(fyne.CurrentApp(), s, func(f func()) { posted <- f }, b.TempDir())
	b.Cleanup(w.close)
	w.win.Resize(fyne.NewSize(1400, 900))
	return w, posted
}

// drawOrder draws what the toolkit would ask for: the rows in sight and the words.
func drawOrder(v *orderView) {
	for _, band := range v.bands {
		if band.row*v.plan.depth-v.top < v.plan.view.Dy() {
			band.draw(v.plan.size.X, v.plan.depth)
		}
	}
	p := &v.plan
	v.drawFoot(p.size.X, p.size.Y-p.view.Max.Y+v.strip().Dy())
}

// BenchmarkOrderOpens measures from the key to the first picture of the order of
// a book of 400 poems (first-ms), and the longest of the frames in which the small
// pages fill in (longest-ms).
func BenchmarkOrderOpens(b *testing.B) {
	w, posted := benchOrder(b)
	var first, frames []time.Duration
	for b.Loop() {
		began := time.Now()
		w.askOrder()
		v := w.desk.order
		drawOrder(v)
		v.drawHead(v.plan.size.X, v.plan.view.Min.Y)
		first = append(first, time.Since(began))
		for len(v.pages.wanted) > 0 {
			fill := <-posted
			began := time.Now()
			fill()
			drawOrder(v)
			frames = append(frames, time.Since(began))
		}
		w.desk.leaveOrder()
	}
	b.ReportMetric(percentile(first, 95), "first-ms")
	b.ReportMetric(percentile(frames, 95), "frame-p95-ms")
	b.ReportMetric(float64(slices.Max(frames).Microseconds())/1000, "longest-ms")
}

// BenchmarkOrderDrag measures the window's share of a frame while a poem is moved
// by the hand across the whole of a book of 400 poems, rows moving past under it:
// the order tried out, the book set, its toll found, and the rows that look
// otherwise drawn. One operation is one frame, and in every frame the poem stands
// elsewhere; p95-ms is the 95th percentile.
func BenchmarkOrderDrag(b *testing.B) {
	w, posted := benchOrder(b)
	w.askOrder()
	v := w.desk.order
	drawOrder(v)
	at := v.plan.pageRect(v.plan.rows[0].cells[2]).Min.Add(v.plan.view.Min).Add(image.Pt(20, 40))
	press := fyne.PointEvent{Position: fyne.NewPos(float32(at.X), float32(at.Y))}
	v.MouseDown(&desktop.MouseEvent{PointEvent: press, Button: desktop.MouseButtonPrimary})
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		column := i % v.plan.each
		row := i / v.plan.each % v.plan.books
		began := time.Now()
		v.scroll(row*v.plan.depth - v.plan.depth)
		x := v.plan.rows[row].cells[column].x + v.plan.page.X/3
		v.drag(image.Pt(x, v.plan.view.Min.Y+row*v.plan.depth-v.top+v.plan.depth/2))
		drawOrder(v)
		took = append(took, time.Since(began))
		for len(posted) > 0 {
			(<-posted)()
		}
	}
	v.putBack()
	b.ReportMetric(percentile(took, 95), "p95-ms")
}
