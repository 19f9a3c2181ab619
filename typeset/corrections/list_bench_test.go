package corrections

import (
	"fmt"
	"testing"
	"time"

	"headland/pagemodel"
	"headland/typeset"
)

// BenchmarkOf500 lists 500 edits of a book of 10,000 lines, both states of which are
// set already, by turns with loading the book. Loading is stood in for by reading it
// from the bytes that a file keeps, without the file's own share, which would only
// make it longer.
func BenchmarkOf500(b *testing.B) {
	build := pagemodel.NewBuilder(pagemodel.About{Title: "A Shelf"}, pagemodel.DefaultDesign())
	for n := range 400 {
		var stanzas []pagemodel.Stanza
		for s := range 5 {
			var lines []pagemodel.Line
			for k := range 5 {
				lines = append(lines, build.Line(fmt.Sprintf("loaf %d of %d on the shelf below the oven’s breath", 5*s+k, n)))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		build.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Loaf ", n+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	was := build.Collection()
	is := was
	for n := range 500 {
		p := was.Order()[n*3%400].Poem
		at, err := p.At(1+n%5, 1+n/100%5)
		if err != nil {
			b.Fatal(err)
		}
		l := p.Line(at)
		ref := pagemodel.LineRef{Poem: p.ID(), Line: l.ID()}
		edit := []pagemodel.Edit{pagemodel.Break{LineRef: ref, At: 10, In: pagemodel.InEdition}, pagemodel.Retype{LineRef: ref, Text: l.Text() + " again"}}[n%2]
		if is, err = edit.Apply(is); err != nil {
			b.Fatal(err)
		}
	}
	setter := typeset.NewSetter(typeset.Bundled())
	sent := setter.Set(nil, was)
	now := setter.Set(sent, is)
	places := PlacesOf(sent)
	stored, next := is.Stored(), is.NextID()
	var listed, loaded time.Duration
	all := 0
	for b.Loop() {
		start := time.Now()
		all = len(Of(sent, now, places, pagemodel.Round{}, "", noReply).All)
		middle := time.Now()
		if _, err := pagemodel.FromStored(stored, next); err != nil {
			b.Fatal(err)
		}
		listed, loaded = listed+middle.Sub(start), loaded+time.Since(middle)
	}
	b.ReportMetric(float64(listed)/float64(loaded), "x-of-load")
	b.ReportMetric(float64(all), "corrections")
}
