package echoes

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// large is a book of 400 poems of 25 lines, 7 words a line, made of the words of the
// demo collection as they come there.
func large() *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "A Book"}, pagemodel.DefaultDesign())
	words := strings.Fields(string(assets.Demo()))
	random := rand.New(rand.NewPCG(5, 11))
	for i := range 400 {
		var lines []pagemodel.Line
		for range 25 {
			var line []string
			for range 7 {
				line = append(line, words[random.IntN(len(words))])
			}
			lines = append(lines, b.Line(strings.Join(line, " ")))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Poem ", i+1)}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, lines)})})
	}
	return b.Collection()
}

// countWords is the reference: each word of the book, parted at white space, in
// small letters, counted.
func countWords(c *pagemodel.Collection) map[string]int {
	counts := map[string]int{}
	for _, p := range c.Poems() {
		for _, line := range p.Lines() {
			for word := range strings.FieldsSeq(line.Text()) {
				counts[strings.ToLower(word)]++
			}
		}
	}
	return counts
}

// BenchmarkEchoes finds the echoes of a large book with a new finder, twice with
// one that knows all but a poem, and after a mark of the commonest words, each by
// turns with the reference, and reports how many times that each takes.
func BenchmarkEchoes(b *testing.B) {
	c := large()
	setter := typeset.NewSetter(typeset.Bundled())
	set := setter.Set(nil, c)
	english()
	var one *pagemodel.Poem
	for _, p := range c.Poems() {
		one = p
	}
	after := func(e pagemodel.Edit) *typeset.Setting {
		changed, err := e.Apply(c)
		if err != nil {
			b.Fatal(err)
		}
		return setter.Set(set, changed)
	}
	ref := pagemodel.LineRef{Poem: one.ID(), Line: one.Line(pagemodel.Place{}).ID()}
	retyped := after(pagemodel.Retype{LineRef: ref, Text: "bread and an oven"})
	marked := after(pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "the", Words: []string{"the", "a", "bread"}}})
	var warm Finder
	warm.Of(set)
	for _, work := range []struct {
		name string
		do   func()
	}{
		{"new", func() { new(Finder).Of(set) }},
		{"two edits", func() { warm.Of(retyped); warm.Of(set) }},
		{"marked", func() { warm.Of(marked) }},
	} {
		b.Run(work.name, func(b *testing.B) {
			var ours, reference time.Duration
			for b.Loop() {
				start := time.Now()
				work.do()
				ours += time.Since(start)
				start = time.Now()
				countWords(c)
				reference += time.Since(start)
			}
			b.ReportMetric(float64(ours)/float64(reference), "times-counting-words")
			b.ReportMetric(float64(ours.Microseconds())/1000/float64(b.N), "ms-ours")
		})
	}
}

// BenchmarkLoad unpacks the table, as the first book in English does.
func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		load(assets.Frequencies())
	}
}
