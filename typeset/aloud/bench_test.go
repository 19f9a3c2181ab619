package aloud

import (
	"fmt"
	"testing"
	"time"

	"headland/assets"
	"headland/pagemodel"
	"headland/pagemodel/manuscript"
	"headland/typeset/prosody"
)

// demo is the demo collection.
func demo(b *testing.B) *pagemodel.Collection {
	c, _, err := manuscript.Read("demo.md", assets.Demo(), pagemodel.DefaultDesign())
	if err != nil {
		b.Fatal(err)
	}
	return c
}

// bookOf is so many poems of the demo's lines, each line with a number in it, so
// that no two are alike.
func bookOf(b *testing.B, poems int) *pagemodel.Collection {
	s, n := newShelf(), 0
	for {
		for _, p := range demo(b).Poems() {
			if n == poems {
				return s.Collection()
			}
			n++
			text := ""
			for at, l := range p.Lines() {
				if text != "" && at.Line == 0 {
					text += "\n"
				}
				text += fmt.Sprintf("%s %d\n", l.Text(), n)
			}
			s.poem(p.Head().Title, text)
		}
	}
}

// BenchmarkPlan times running orders: the demo in its order, thirty poems of it, and
// four hundred poems. first_x is the ratio of the first time to measuring the same
// lines and nothing else; ms is any later time, which is what shows as a running
// order is edited, and lines_per_ms what that is for the lines.
func BenchmarkPlan(b *testing.B) {
	lex := prosody.English()
	thirty := demo(b)
	short := Book(thirty)
	short.Items = append(short.Items, append(short.Items, short.Items...)...)[:30]
	large := bookOf(b, 400)
	for _, test := range []struct {
		name string
		c    *pagemodel.Collection
		r    pagemodel.Reading
	}{{"demo", thirty, Book(thirty)}, {"thirty", thirty, short}, {"four-hundred", large, Book(large)}} {
		b.Run(test.name, func(b *testing.B) {
			bare := since(func() { measureAll(test.c, test.r, lex) })
			clear(memory.of)
			first := since(func() { PlanOf(test.c, test.r, lex, pagemodel.Voice{}, nil) })
			lines := 0
			for _, item := range PlanOf(test.c, test.r, lex, pagemodel.Voice{}, nil).Items {
				lines += item.Lines
			}
			for b.Loop() {
				PlanOf(test.c, test.r, lex, pagemodel.Voice{}, nil)
			}
			ms := float64(b.Elapsed()) / float64(b.N) / float64(time.Millisecond)
			b.ReportMetric(float64(first)/float64(bare), "first_x")
			b.ReportMetric(ms, "ms")
			b.ReportMetric(float64(lines)/ms, "lines_per_ms")
		})
	}
}

func since(do func()) time.Duration {
	start := time.Now()
	do()
	return time.Since(start)
}

// measureAll measures the lines of a running order, each once.
func measureAll(c *pagemodel.Collection, r pagemodel.Reading, lex *prosody.Lexicon) {
	seen := map[string]bool{}
	for _, item := range r.Items {
		p, _ := poemOf(c, item.Poem)
		for _, l := range linesOf(p, item) {
			if !seen[l.text] {
				seen[l.text] = true
				lex.Line(l.text)
			}
		}
	}
}

// BenchmarkFit fits a voice to five hundred timings; x_ten is the ratio to ten.
func BenchmarkFit(b *testing.B) {
	many, few := made(500, pagemodel.UsualVoice(), 0.05, 1), made(10, pagemodel.UsualVoice(), 0.05, 1)
	const times = 200
	ten := since(func() {
		for range times {
			Fit(few, pagemodel.Voice{})
		}
	})
	for b.Loop() {
		Fit(many, pagemodel.Voice{})
	}
	b.ReportMetric(float64(b.Elapsed())/float64(b.N)/(float64(ten)/times), "x_ten")
}
