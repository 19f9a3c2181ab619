//go:build unix

package typeset

import (
	"fmt"
	"testing"

	"github.com/go-text/typesetting/harfbuzz"

	"headland/assets"
	"headland/pagemodel"
)

// pagingBook is a book of 400 poems and 10,000 lines in stanzas of every usual
// shape, some of them deeper than a page.
func pagingBook() *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "A Book"}, pagemodel.DefaultDesign())
	shapes := [][]int{{2}, {3}, {4}, {6}, {5, 4, 7}, {14}, {1, 8, 3}, {40}}
	lines := lineList(10000)
	next := 0
	for i := range 400 {
		left := []int{13, 20, 25, 25, 42}[i%5]
		shape := shapes[i%len(shapes)]
		var stanzas []pagemodel.Stanza
		for s := 0; left > 0; s++ {
			n := min(left, shape[s%len(shape)])
			var stanza []pagemodel.Line
			for range n {
				stanza = append(stanza, b.Line(lines[next]+fmt.Sprint(" ", i)))
				next++
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, stanza))
			left -= n
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Poem ", i+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// BenchmarkPageBook finds the page ends of 10,000 lines that are set already,
// against shaping the lines once. Wanted: at most 0.1.
func BenchmarkPageBook(b *testing.B) {
	book := pagingBook()
	texts := textsOf(book, nil)
	faces := Bundled()
	face, _ := faces.Face(assets.EBGaramond, false, false)
	set := NewSetter(faces).Set(nil, book)
	buffer := harfbuzz.NewBuffer()
	var r ratios
	for b.Loop() {
		r.measure(func() {
			for number, p := range book.Poems() {
				s := *set.entries.At(number - 1)
				s.steps = s.stepsOf(&set.design, p.Head().Form)
				soloChain(&s, &set.design)
			}
			set.seatAll(nil)
		}, func() { merelyShape(buffer, face, texts) })
	}
	r.report(b, "x_shaping")
	b.ReportMetric(float64(set.Extent()), "pages")
}

// BenchmarkPageEdit sets and pages the book of 400 poems again after an edit
// after which no page moves, and after one that turns every later page over,
// against shaping the changed poem once. Wanted: at most 2; and at most 2 and a
// microsecond for each of the 397 later poems. Every edit has words that were
// never shaped before.
func BenchmarkPageEdit(b *testing.B) {
	book := pagingBook()
	poem := book.Order()[2].Poem
	ref := pagemodel.LineRef{Poem: poem.ID(), Line: poem.Line(pagemodel.Place{}).ID()}
	b.Run("nothing moves", func(b *testing.B) {
		pageEdit(b, book, poem, func(i int) pagemodel.Edit {
			return pagemodel.Retype{LineRef: ref, Text: fmt.Sprint("words no ", i)}
		})
	})
	b.Run("all moves", func(b *testing.B) {
		pageEdit(b, book, poem, func(i int) pagemodel.Edit {
			return pagemodel.SetHead{Poem: poem.ID(), Head: pagemodel.PoemHead{Title: fmt.Sprint("Poem no ", i), Blank: true}}
		})
	})
}

// pageEdit reports the ratio for the book after one edit; edit gives another each
// time.
func pageEdit(b *testing.B, book *pagemodel.Collection, poem *pagemodel.Poem, edit func(i int) pagemodel.Edit) {
	faces := Bundled()
	setter := NewSetter(faces)
	face, _ := faces.Face(assets.EBGaramond, false, false)
	set := setter.Set(nil, book)
	lines := textsOf(book, poem)
	buffer := harfbuzz.NewBuffer()
	const times = 200 // one edit is less than the clock can tell
	next := make([]*pagemodel.Collection, times)
	made := 0
	var r ratios
	for b.Loop() {
		for i := range next {
			var err error
			if next[i], err = edit(made).Apply(book); err != nil {
				b.Fatal(err)
			}
			made++
		}
		r.measure(func() {
			for _, c := range next {
				setter.Set(set, c)
			}
		}, func() {
			for range times {
				merelyShape(buffer, face, lines)
			}
		})
	}
	work := r.report(b, "x_shaping")
	b.ReportMetric(float64(work.Microseconds())/times, "µs/set")
}
