//go:build unix

package choices

import (
	"fmt"
	"math/rand"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/prosody"
)

// bookWith is a book of 400 poems and 10,000 lines, no two alike, of which so
// many, spread over the book, are too long for the measure. The words are the
// demo's, and so is, nearly, how long lines are: 39 letters on average, and 66 to 80
// where they are overlong.
func bookWith(overlong int) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "A Book"}, pagemodel.DefaultDesign())
	words, rnd := strings.Fields(string(assets.Demo())), rand.New(rand.NewSource(1))
	line := func(letters, number int) pagemodel.Line {
		text := fmt.Sprint(number)
		for len(text) < letters {
			text += " " + strings.Trim(words[rnd.Intn(len(words))], "[]#*>—")
		}
		return b.Line(text)
	}
	every := 10000 / overlong
	for i := range 400 {
		var stanzas []pagemodel.Stanza
		for s := range 5 {
			var lines []pagemodel.Line
			for l := range 5 {
				n, letters := 25*i+5*s+l, 24+rnd.Intn(26)
				if n%every == 0 && n/every < overlong {
					letters = 72 + rnd.Intn(10)
				}
				lines = append(lines, line(letters, n))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: fmt.Sprint("Poem ", i+1)}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// unsettledOf are the overlong lines of a book.
func unsettledOf(set *typeset.Setting) []pagemodel.LineRef {
	var refs []pagemodel.LineRef
	for _, o := range set.Turnovers() {
		refs = append(refs, o.Ref)
	}
	return refs
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

// BenchmarkChoices finds all choices of one line, with all that they do, in a book
// of 400 poems with ten overlong lines: of each of them in turn, the first time
// that it is asked for, by the clock. Wanted: under 20 ms each.
func BenchmarkChoices(b *testing.B) {
	book, lex := bookWith(10), prosody.English()
	var took []time.Duration
	n := 0
	for b.Loop() {
		setter := typeset.NewSetter(typeset.Bundled())
		set := setter.Set(nil, book)
		runtime.GC() // what setting the book left is none of the choices' work
		for _, ref := range unsettledOf(set) {
			start := time.Now()
			all, err := Of(setter, set, ref, lex)
			if err != nil {
				b.Fatal(err)
			}
			took, n = append(took, time.Since(start)), max(n, len(all))
		}
	}
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2].Seconds()*1000, "ms/line")
	b.ReportMetric(took[len(took)-1].Seconds()*1000, "ms/slowest")
	b.ReportMetric(float64(n), "choices")
}

// BenchmarkTwoParts finds every break in two of 300 overlong lines among 10,000,
// with all that each does, against setting the book from nothing: in the poem, and
// in the poem and in this edition. Wanted: at most 3.
func BenchmarkTwoParts(b *testing.B) {
	for _, heads := range [][]pagemodel.In{{pagemodel.InPoem}, {pagemodel.InPoem, pagemodel.InEdition}} {
		b.Run(fmt.Sprint(heads), func(b *testing.B) { benchTwoParts(b, heads) })
	}
}

func benchTwoParts(b *testing.B, heads []pagemodel.In) {
	book, lex := bookWith(300), prosody.English()
	var work, cold []time.Duration
	n := 0
	for b.Loop() {
		setter := typeset.NewSetter(typeset.Bundled())
		var set *typeset.Setting
		cold = append(cold, processorTime(func() { set = setter.Set(nil, book) }))
		refs := unsettledOf(set)
		if len(refs) != 300 {
			b.Fatalf("%d lines are overlong, want 300", len(refs))
		}
		n = 0
		work = append(work, processorTime(func() {
			for _, ref := range refs {
				n += twoParts(setter, set, ref, lex, heads)
			}
		}))
	}
	slices.Sort(work)
	slices.Sort(cold)
	b.ReportMetric(float64(work[len(work)/2])/float64(cold[len(cold)/2]), "x_cold_set")
	b.ReportMetric(float64(n), "choices")
}

// twoParts finds the breaks in two of a line, and says how many there are.
func twoParts(setter *typeset.Setter, set *typeset.Setting, ref pagemodel.LineRef, lex *prosody.Lexicon, heads []pagemodel.In) int {
	p, at, _ := set.Collection().Line(ref)
	f := newFinder(setter, set, p, at, lex)
	for _, in := range heads {
		for _, o := range places(f.line.Text()) {
			f.breakAt(in, o)
		}
	}
	return len(f.all)
}
