package difference

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"headland/pagemodel"
)

// shelf is a book of 400 poems of 25 lines, no two lines the same.
func shelf() *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "A Shelf"}, pagemodel.DefaultDesign())
	texts := []string{breathe, salt, moon, "the street lamp goes over the bridge and the bread goes under", "nobody asks what the flour remembers"}
	for n := range 400 {
		var stanzas []pagemodel.Stanza
		for s := range 5 {
			var lines []pagemodel.Line
			for k, text := range texts {
				lines = append(lines, b.Line(fmt.Sprintf("%s %d of %d", text, 5*s+k, n)))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Loaf ", n+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// BenchmarkBetween500 finds the changes of 500 edits in a book of 10,000 lines, by
// turns with loading the book. Loading is stood in for by reading it from the bytes
// that a file keeps, without the file's own share, which would only make it longer.
func BenchmarkBetween500(b *testing.B) {
	was := shelf()
	r := chooser{rand.New(rand.NewPCG(1, 2))}
	is := was
	for done := 0; done < 500; {
		if next, err := r.lineEdit(is).Apply(is); err == nil && next != is {
			is, done = next, done+1
		}
	}
	stored, next := is.Stored(), is.NextID()
	var found, loaded time.Duration
	var changes int
	for b.Loop() {
		start := time.Now()
		changes = len(Between(was, is))
		middle := time.Now()
		if _, err := pagemodel.FromStored(stored, next); err != nil {
			b.Fatal(err)
		}
		found, loaded = found+middle.Sub(start), loaded+time.Since(middle)
	}
	b.ReportMetric(float64(found)/float64(loaded), "x-of-load")
	b.ReportMetric(float64(changes), "changes")
	b.ReportMetric(float64(found.Milliseconds())/float64(b.N), "ms-between")
}

// lineEdit is an edit of some line.
func (r chooser) lineEdit(c *pagemodel.Collection) pagemodel.Edit {
	order := c.Order()
	p := order[r.IntN(len(order))].Poem
	var lines []pagemodel.Line
	for _, l := range p.Lines() {
		lines = append(lines, l)
	}
	l := lines[r.IntN(len(lines))]
	ref := pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
	return []pagemodel.Edit{
		pagemodel.Break{LineRef: ref, At: len(l.Text()) / 2, In: pagemodel.InEdition}, pagemodel.Break{LineRef: ref, At: len(l.Text()) / 2},
		pagemodel.Join{LineRef: ref}, pagemodel.Carry{LineRef: ref, Count: 1}, pagemodel.Indent{LineRef: ref, To: pagemodel.OneEm},
		pagemodel.Retype{LineRef: ref, Text: r.retyped(l.Text())}, pagemodel.StanzaBreak{LineRef: ref, Open: true},
		pagemodel.Restyle{LineRef: ref, Start: 0, End: 4, Style: pagemodel.Italic},
	}[r.IntN(8)]
}
