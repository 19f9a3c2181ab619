package order

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"headland/pagemodel"
	"headland/typeset"
)

// largeBook is a book of so many poems of one to three pages, in sections.
func largeBook(poems, sections int) *pagemodel.Collection {
	d := pagemodel.DefaultDesign()
	d.TitleRow, d.PoemRow = 1, 2
	d.Trim.Height = d.Margins.Head + d.Margins.Foot + d.Size + 11*d.Leading
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, d)
	random := rand.New(rand.NewPCG(7, 7))
	for i := range poems {
		if sections > 0 && i%(poems/sections) == 0 {
			b.Section(fmt.Sprint("Street ", i), nil)
		}
		var stanzas []pagemodel.Stanza
		for range 1 + random.IntN(8) {
			lines := []pagemodel.Line{b.Line("flour on a coat"), b.Line("a lamp in the yard"), b.Line("the oven door"), b.Line("and rain")}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		h := pagemodel.PoemHead{Title: fmt.Sprint("Loaf ", i+1)}
		if i%13 == 5 {
			h.Start = pagemodel.SharedPage
		}
		b.Poem(h, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// tenConditions are ten that agree.
func tenConditions(book *pagemodel.Collection) []Condition {
	var id []pagemodel.PoemID
	for _, p := range book.Poems() {
		id = append(id, p.ID())
	}
	return []Condition{
		First(id[22]), Last(id[3]), Together(id[10], id[40], id[50]), Together(id[50], id[12]), InOrder(id[36], id[28], id[26]),
		Apart(id[6], id[7]), Apart(id[8], id[9]), Apart(id[1], id[2]), Apart(id[33], id[34]), Together(id[15], id[55]),
	}
}

// stopAfter is a context that is done after it has been asked so many times.
type stopAfter struct {
	context.Context
	left int
}

func (c *stopAfter) Err() error {
	if c.left--; c.left < 0 {
		return context.Canceled
	}
	return nil
}

func searchOf(t testing.TB, ctx context.Context, set *typeset.Setting, conditions []Condition) []Found {
	var all []Found
	if err := Search(ctx, set, conditions, func(f Found) { all = append(all, f) }); err != nil {
		t.Fatal(err)
	}
	return all
}

// TestSearchOfSixty: a large book gives better and better orders, each of which
// costs what it is said to when it is set, and the same ones again.
func TestSearchOfSixty(t *testing.T) {
	for _, sections := range []int{0, 4} {
		book := largeBook(60, sections)
		setter := typeset.NewSetter(typeset.Bundled())
		set := setter.Set(nil, book)
		conditions := tenConditions(book)
		once := searchOf(t, &stopAfter{context.Background(), 40_000}, set, conditions)
		again := searchOf(t, &stopAfter{context.Background(), 40_000}, set, conditions)
		if fmt.Sprint(once) != fmt.Sprint(again) {
			t.Error("the same search found other orders")
		}
		before := TollOf(set)
		for i, f := range once {
			next, err := pagemodel.Rearrange{Arrangement: f.Arrangement}.Apply(book)
			if err != nil {
				t.Fatal(err)
			}
			toll := TollOf(setter.Set(set, next))
			toll.Faults = Uncounted
			if toll != f.Toll {
				t.Fatalf("%d: said to cost %+v, costs %+v", i, f.Toll, toll)
			}
		}
		last := once[len(once)-1]
		if last.Toll.Unfaced+last.Toll.Blanks >= before.Unfaced+before.Blanks {
			t.Errorf("after %d orders: %+v against %+v", len(once), last.Toll, before)
		}
		t.Logf("%d orders, the last of %+v with %d moved, against %+v\n%s", len(once), last.Toll, len(last.Moved), before, strings.Join(last.Says, "\n"))
	}
}

// BenchmarkSearch60 searches a book of sixty poems with ten conditions for two
// seconds: how long until the first answer, how many orders are tried a second,
// and what the first, and the best, lose in unfaced poems and blanks.
func BenchmarkSearch60(b *testing.B) {
	book := largeBook(60, 4)
	set := typeset.NewSetter(typeset.Bundled()).Set(nil, book)
	conditions := tenConditions(book)
	var firsts []time.Duration
	for b.Loop() {
		begun, first := time.Now(), time.Duration(0)
		var all []Found
		ctx, stop := context.WithTimeout(context.Background(), 2*time.Second)
		err := Search(ctx, set, conditions, func(f Found) {
			if first == 0 {
				first = time.Since(begun)
			}
			all = append(all, f)
		})
		stop()
		if err != nil {
			b.Fatal(err)
		}
		firsts = append(firsts, first)
		b.ReportMetric(float64(all[0].Toll.Unfaced+all[0].Toll.Blanks), "lost/first")
		b.ReportMetric(float64(all[len(all)-1].Toll.Unfaced+all[len(all)-1].Toll.Blanks), "lost/best")
		b.ReportMetric(float64(len(all[len(all)-1].Moved)), "moved/best")
	}
	slices.Sort(firsts)
	b.ReportMetric(float64(firsts[len(firsts)/2].Microseconds())/1000, "ms/first")
	b.ReportMetric(triedEachSecond(set, conditions), "orders/s")
}

// triedEachSecond is how many orders a search tries in a second.
func triedEachSecond(set *typeset.Setting, conditions []Condition) float64 {
	p := piecesOf(set.Collection())
	var all []bound
	for _, c := range conditions {
		b, _ := bind(set.Collection(), c)
		all = append(all, b)
	}
	ctx, stop := context.WithTimeout(context.Background(), time.Second)
	defer stop()
	s := newSearch(ctx, set, p, all, func(Found) {})
	begin, _ := p.agree(set.Collection(), all)
	begun := time.Now()
	s.improve(begin)
	return float64(s.tried) / time.Since(begun).Seconds()
}
