package ui

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"headland/pagemodel"
	"headland/ui/session"
)

// BenchmarkDesignSpread measures from a step of a value to the open spread and
// the sheet drawn, in a book of 400 poems and 10,000 lines, in a window of 1400
// by 900. One operation is one step; p95-ms is the 95th percentile.
func BenchmarkDesignSpread(b *testing.B) {
	d, s := benchDesign(b)
	size := d.plan.sheets
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		by := 1 - 2*(i/8%2)
		began := time.Now()
		s.step(12, by)
		d.drawVerso(size[pagemodel.Verso].seen.Dx(), size[pagemodel.Verso].seen.Dy())
		d.drawRecto(size[pagemodel.Recto].seen.Dx(), size[pagemodel.Recto].seen.Dy())
		d.drawFoot(d.plan.footBand().Dx(), d.plan.footBand().Dy())
		s.leaf.draw(s.leaf.plan.at.Dx(), s.leaf.plan.at.Dy())
		took = append(took, time.Since(began))
	}
	b.ReportMetric(percentile(took, 95), "p95-ms")
}

// benchDesign is the sheet over the middle of a large book; nothing is set
// beside it.
func benchDesign(b *testing.B) (*desk, *designSheet) {
	b.Helper()
	s, err := session.Create(filepath.Join(b.TempDir(), "batch.headland"), batches(400))
	if err != nil {
		b.Fatal(err)
	}
	test.NewApp()
	w := NewWindow(fyne.CurrentApp(), s, func(func()) {}, b.TempDir())
	b.Cleanup(w.close)
	w.win.Resize(fyne.NewSize(1400, 900))
	w.desk.showPage(s.Committed().Extent() / 2)
	w.askDesign()
	sheet := w.win.Canvas().Overlays().Top().(*leaf).hand.(*designSheet)
	sheet.leaf.byMouse = true
	return w.desk, sheet
}

// batches is a book of so many poems of 25 lines, no two lines alike.
func batches(poems int) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "The Night Batch"}, pagemodel.DefaultDesign())
	for i := range poems {
		var stanzas []pagemodel.Stanza
		for s := range 5 {
			var lines []pagemodel.Line
			for l := range 5 {
				lines = append(lines, b.Line(fmt.Sprintf("the %d of %d went in at ten to %d, and the street slept on", l+1, s+1, i+1)))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Batch ", i+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// percentile is a percentile of some times, in milliseconds.
func percentile(took []time.Duration, of int) float64 {
	slices.Sort(took)
	return float64(took[len(took)*of/100].Microseconds()) / 1000
}
