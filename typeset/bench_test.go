//go:build unix

package typeset

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/go-text/typesetting/harfbuzz"

	"headland/assets"
	"headland/pagemodel"
)

// The benchmarks below give ratios: each times the program's work and a
// reference by turns in one run, so that a machine whose speed drifts moves
// both, in processor time, so that what else runs there does not count. The reference is go-text's HarfBuzz merely shaping the same lines, with
// the same features, into a buffer that is thrown away.

// bookOf is a book of n poems of 25 lines, no two lines the same.
func bookOf(n int) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "A Book"}, pagemodel.DefaultDesign())
	lines := lineList(25 * n)
	for i := range n {
		var stanzas []pagemodel.Stanza
		for s := range 5 {
			var stanza []pagemodel.Line
			for l := range 5 {
				stanza = append(stanza, b.Line(lines[25*i+5*s+l]+fmt.Sprint(" ", i)))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, stanza))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Poem ", i+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

func textsOf(c *pagemodel.Collection, only *pagemodel.Poem) []string {
	var texts []string
	for _, p := range c.Poems() {
		if only != nil && p != only {
			continue
		}
		for _, l := range p.Lines() {
			texts = append(texts, l.Text())
		}
	}
	return texts
}

// merelyShape is the reference.
func merelyShape(b *harfbuzz.Buffer, f *Face, lines []string) {
	for _, line := range lines {
		b.Clear()
		b.AddRunes([]rune(line), 0, -1)
		b.GuessSegmentProperties()
		b.Shape(f.shaping, features[plainCase])
	}
}

// ratios collects times of work and of its reference, taken by turns.
type ratios struct{ work, reference []time.Duration }

func (r *ratios) measure(work, reference func()) {
	r.work = append(r.work, processorTime(work))
	r.reference = append(r.reference, processorTime(reference))
}

// processorTime is what the whole process spends on f, collecting garbage
// included.
func processorTime(f func()) time.Duration {
	var before, after syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &before)
	f()
	syscall.Getrusage(syscall.RUSAGE_SELF, &after)
	return time.Duration(after.Utime.Nano() + after.Stime.Nano() - before.Utime.Nano() - before.Stime.Nano())
}

// report gives the ratio of the medians, and the median of the work.
func (r *ratios) report(b *testing.B, unit string) time.Duration {
	slices.Sort(r.work)
	slices.Sort(r.reference)
	work, reference := r.work[len(r.work)/2], r.reference[len(r.reference)/2]
	b.ReportMetric(float64(work)/float64(reference), unit)
	b.ReportMetric(float64(work.Microseconds()), "µs/set")
	return work
}

// BenchmarkSetCold sets 10,000 lines from nothing, against shaping them.
func BenchmarkSetCold(b *testing.B) {
	book := bookOf(400)
	texts := textsOf(book, nil)
	faces := Bundled()
	face, _ := faces.Face(assets.EBGaramond, false, false)
	buffer := harfbuzz.NewBuffer()
	var r ratios
	merelyShape(buffer, face, texts[:100])
	for b.Loop() {
		r.measure(func() { NewSetter(faces).Set(nil, book) }, func() { merelyShape(buffer, face, texts) })
	}
	r.report(b, "x_shaping")
	b.ReportMetric(float64(hbShapeTime(b, face, texts).Milliseconds()), "ms/hb-shape")
}

// hbShapeTime is how long HarfBuzz's command-line shaper takes for the lines,
// starting and printing included: what the C library does with the same work.
func hbShapeTime(b *testing.B, f *Face, lines []string) time.Duration {
	path := filepath.Join(b.TempDir(), "font")
	if err := os.WriteFile(path, f.Data(), 0o600); err != nil {
		b.Fatal(err)
	}
	cmd := exec.Command("hb-shape", "--shaper=ot", "--text-file=-", "--features=onum", "--output-file="+os.DevNull, path)
	cmd.Stdin = strings.NewReader(strings.Join(lines, "\n") + "\n")
	start := time.Now()
	if err := cmd.Run(); err != nil {
		b.Fatalf("hb-shape (Debian package libharfbuzz-bin): %v", err)
	}
	return time.Since(start)
}

// BenchmarkSetOneWord carries one word over a line's end and back and sets the
// book again, against shaping that poem once, in a small book and a large one.
func BenchmarkSetOneWord(b *testing.B) {
	var small time.Duration
	for _, n := range []int{50, 1000} {
		b.Run(fmt.Sprintf("poems=%d", n), func(b *testing.B) {
			took := oneWord(b, n)
			if n == 50 {
				small = took
			} else if small > 0 {
				b.ReportMetric(float64(took)/float64(small), "x_small_book")
			}
		})
	}
}

// oneWord gives the median time of the set after one edit.
func oneWord(b *testing.B, n int) time.Duration {
	book := bookOf(n)
	faces := Bundled()
	setter := NewSetter(faces)
	face, _ := faces.Face(assets.EBGaramond, false, false)
	poem := book.Order()[n/2].Poem
	first := poem.Line(pagemodel.Place{})
	lines := textsOf(book, poem)
	ref := pagemodel.LineRef{Poem: poem.ID(), Line: first.ID()}
	set := setter.Set(nil, book)
	buffer := harfbuzz.NewBuffer()
	var r ratios
	words := len(strings.Fields(first.Text()))
	for i := 0; b.Loop(); i++ {
		edit := pagemodel.Carry{LineRef: ref, Count: 1 + i%(words-1)}
		r.measure(func() {
			next, err := edit.Apply(book)
			if err != nil {
				b.Fatal(err)
			}
			setter.Set(set, next)
		}, func() { merelyShape(buffer, face, lines) })
	}
	return r.report(b, "x_shaping")
}
