//go:build unix

package pdf

import (
	"fmt"
	"io"
	"slices"
	"syscall"
	"testing"
	"time"

	"headland/pagemodel"
	"headland/typeset"
)

// bookOfPages is a book of so many pages: poems of a stanza-less page each.
func bookOfPages(n int) *pagemodel.Collection {
	d := pagemodel.DefaultDesign()
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Pages"}, d)
	for i := range n {
		var lines []pagemodel.Line
		for j := range d.Rows() - d.PoemRow + 1 {
			lines = append(lines, b.Line(fmt.Sprintf("final affinities %d of the office, turning %d fields", i, j)))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Field ", i+1)}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	}
	return b.Collection()
}

// processorTime is what the whole process spends on f.
func processorTime(f func()) time.Duration {
	var before, after syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &before)
	f()
	syscall.Getrusage(syscall.RUSAGE_SELF, &after)
	return time.Duration(after.Utime.Nano() + after.Stime.Nano() - before.Utime.Nano() - before.Stime.Nano())
}

// BenchmarkWriteBook writes 400 pages, made and with the subsetter's code in the
// cache, against setting them; the two by turns, in processor time. Wanted: at
// most 0.5.
func BenchmarkWriteBook(b *testing.B) {
	c := bookOfPages(400)
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, c)
	if set.Extent() != 400 {
		b.Fatalf("%d pages", set.Extent())
	}
	d := Document{Pages: pagesOf(set)}
	size := len(written(b, d))
	var work, reference []time.Duration
	for b.Loop() {
		work = append(work, processorTime(func() {
			if err := Write(io.Discard, d); err != nil {
				b.Fatal(err)
			}
		}))
		reference = append(reference, processorTime(func() { typeset.NewSetter(typeset.Bundled()).Set(nil, c) }))
	}
	slices.Sort(work)
	slices.Sort(reference)
	b.ReportMetric(float64(work[len(work)/2])/float64(reference[len(reference)/2]), "x_setting")
	b.ReportMetric(float64(size)/1e6, "MB")
}
