package order_test

import (
	"cmp"
	"fmt"
	"slices"

	"pgregory.net/rapid"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/order"
)

// The judge is a second opinion on orders. It knows nothing of how the search
// finds them: it makes every order of a small book, sets the book in it, looks at
// the finished pages, and keeps the best.

// wish is a condition as the judge understands it.
type wish struct {
	kind  string
	poems []pagemodel.PoemID
}

func (w wish) condition() order.Condition {
	switch w.kind {
	case "together":
		return order.Together(w.poems...)
	case "in order":
		return order.InOrder(w.poems...)
	case "first":
		return order.First(w.poems[0])
	case "last":
		return order.Last(w.poems[0])
	case "apart":
		return order.Apart(w.poems[0], w.poems[1])
	}
	return order.SectionsStay()
}

// judged is what the judge thinks of an order.
type judged struct{ loss, moved, parted, extent int }

func (j judged) compare(k judged) int {
	return cmp.Or(cmp.Compare(j.loss, k.loss), cmp.Compare(j.moved, k.moved), cmp.Compare(j.parted, k.parted), cmp.Compare(j.extent, k.extent))
}

// judge knows a small book, and a setter to set it with.
type judge struct {
	setter *typeset.Setter
	set    *typeset.Setting
	now    []int64
	starts map[int64]pagemodel.Start
	wishes []wish
}

func newJudge(setter *typeset.Setter, book *pagemodel.Collection, wishes []wish) *judge {
	j := &judge{setter: setter, set: setter.Set(nil, book), now: book.Arrangement().Order, starts: map[int64]pagemodel.Start{}, wishes: wishes}
	for _, p := range book.Poems() {
		j.starts[int64(p.ID())] = p.Head().Start
	}
	return j
}

// best is the best of all orders, or false where none meets the wishes.
func (j *judge) best() (best judged, found bool) {
	j.each(nil, func(ids []int64) {
		if !j.possible(ids) || !j.meets(ids) {
			return
		}
		set := j.in(ids)
		if !j.apart(set, ids) {
			return
		}
		if it := j.of(set, ids); !found || it.compare(best) < 0 {
			best, found = it, true
		}
	})
	return best, found
}

// each makes every order that begins so, in which heads of sections keep theirs.
func (j *judge) each(begun []int64, make func([]int64)) {
	if len(begun) == len(j.now) {
		make(begun)
		return
	}
	head := false
	for _, id := range j.now {
		if slices.Contains(begun, id) || id < 0 && head {
			continue
		}
		head = head || id < 0
		j.each(append(slices.Clip(begun), id), make)
	}
}

// possible says that the book can be in the order: poems that begin facing or
// sharing a page are behind what they were behind, and the same parts of the book
// have poems.
func (j *judge) possible(ids []int64) bool {
	for i, id := range ids {
		if s := j.starts[id]; s != pagemodel.FacingPage && s != pagemodel.SharedPage {
			continue
		}
		if before(ids, i) != before(j.now, slices.Index(j.now, id)) {
			return false
		}
	}
	return slices.Equal(parts(ids), parts(j.now))
}

func before(ids []int64, i int) int64 {
	if i == 0 {
		return 0
	}
	return ids[i-1]
}

// parts says of each part of the book whether it has poems.
func parts(ids []int64) []bool {
	filled := []bool{false}
	for _, id := range ids {
		if id < 0 {
			filled = append(filled, false)
		} else {
			filled[len(filled)-1] = true
		}
	}
	return filled
}

// partOf is the head of the section that a poem is in, 0 for none.
func partOf(ids []int64, id int64) (head int64) {
	for _, other := range ids {
		if other == id {
			return head
		}
		if other < 0 {
			head = other
		}
	}
	return head
}

// meets says that an order meets the wishes, as far as that can be seen without
// pages.
func (j *judge) meets(ids []int64) bool {
	for _, w := range j.wishes {
		if !j.meetsOne(ids, w) {
			return false
		}
	}
	return true
}

func (j *judge) meetsOne(ids []int64, w wish) bool {
	var at []int
	for _, p := range w.poems {
		at = append(at, slices.Index(ids, int64(p)))
	}
	poems := slices.DeleteFunc(slices.Clone(ids), func(id int64) bool { return id < 0 })
	switch w.kind {
	case "in order":
		for i := range at[1:] {
			if at[i+1] != at[i]+1 {
				return false
			}
		}
	case "together":
		slices.Sort(at)
		return at[len(at)-1]-at[0] == len(at)-1
	case "first":
		return poems[0] == int64(w.poems[0])
	case "last":
		return poems[len(poems)-1] == int64(w.poems[0])
	case "apart":
		return at[0]-at[1] != 1 && at[1]-at[0] != 1
	case "stay":
		for _, id := range poems {
			if partOf(ids, id) != partOf(j.now, id) {
				return false
			}
		}
	}
	return true
}

// in is the book set in an order.
func (j *judge) in(ids []int64) *typeset.Setting {
	next, err := pagemodel.Rearrange{Arrangement: pagemodel.Arrangement{Order: slices.Clone(ids)}}.Apply(j.set.Collection())
	if err != nil {
		panic(err)
	}
	return j.setter.Set(j.set, next)
}

// apart says that no opening has something of two poems that are to be apart.
func (j *judge) apart(set *typeset.Setting, ids []int64) bool {
	for _, w := range j.wishes {
		if w.kind != "apart" {
			continue
		}
		a, b := openings(set, w.poems[0]), openings(set, w.poems[1])
		for o := range a {
			if b[o] {
				return false
			}
		}
	}
	return true
}

// openings are those that show something of a poem, by the number of the verso.
func openings(set *typeset.Setting, id pagemodel.PoemID) map[int]bool {
	found := map[int]bool{}
	first, last := set.Body() // the contents name poems too
	for n := first; n <= last; n++ {
		for _, r := range set.Page(n).Rows {
			if r.Poem == id {
				found[n-n%2] = true
			}
		}
	}
	return found
}

// of judges the pages of a book in an order.
func (j *judge) of(set *typeset.Setting, ids []int64) judged {
	cost := set.Cost()
	it := judged{parted: cost.Turned + cost.Split, extent: set.Extent(), moved: j.moved(ids)}
	for _, f := range set.Faults() {
		if f.Kind == typeset.UnfacedPoem {
			it.loss++
		}
	}
	first, _ := set.Body()
	for n := first; n <= set.Extent(); n++ {
		if len(set.Page(n).Rows) == 0 {
			it.loss++
		}
	}
	return it
}

// moved is the fewest poems that can have been moved: of all sets of poems that are
// in their section and in their order still, the largest is what was not.
func (j *judge) moved(ids []int64) int {
	var poems []int64
	for _, id := range j.now {
		if id > 0 {
			poems = append(poems, id)
		}
	}
	least := len(poems)
	for set := range 1 << len(poems) {
		at, kept := -1, 0
		for i, id := range poems {
			if set>>i&1 == 0 {
				continue
			}
			now := slices.Index(ids, id)
			if now < at || partOf(ids, id) != partOf(j.now, id) {
				kept = -1 << 10
			}
			at, kept = now, kept+1
		}
		least = min(least, len(poems)-kept)
	}
	return least
}

// tinyDesign is a page of few rows, so that short poems take several.
func tinyDesign() pagemodel.Design {
	d := pagemodel.DefaultDesign()
	d.TitleRow, d.PoemRow = 1, 2
	d.Trim.Height = d.Margins.Head + d.Margins.Foot + d.Size + 7*d.Leading
	return d
}

// drawBook is a book of so many poems, some of which begin facing, sharing a
// page, on a given side or after a blank.
func drawBook(t *rapid.T, poems int) *pagemodel.Collection {
	d := tinyDesign()
	d.SectionOpen = rapid.Bool().Draw(t, "section open")
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, d)
	sections := rapid.Bool().Draw(t, "sections")
	for i := range poems {
		if sections && rapid.IntRange(0, 3).Draw(t, "section") == 0 {
			b.Section(fmt.Sprint("Street ", i), nil)
		}
		h := pagemodel.PoemHead{Title: fmt.Sprint("Loaf ", i+1)}
		h.Start = rapid.SampledFrom([]pagemodel.Start{0, 0, 0, 0, 0, 0, pagemodel.OnVerso, pagemodel.OnRecto, pagemodel.SharedPage, pagemodel.FacingPage}).Draw(t, "start")
		h.Blank = rapid.IntRange(0, 9).Draw(t, "blank") == 0
		b.Poem(h, []pagemodel.Part{pagemodel.NewPart("", drawStanzas(t, b))})
	}
	if sections && rapid.IntRange(0, 5).Draw(t, "empty section") == 0 {
		b.Section("Street of nobody", nil)
	}
	c := b.Collection()
	return withMatter(t, c)
}

// withMatter gives the book, or not, such prelims and end matter as take the same
// pages in every order.
func withMatter(t *rapid.T, c *pagemodel.Collection) *pagemodel.Collection {
	if !rapid.Bool().Draw(t, "matter") {
		return c
	}
	m := pagemodel.Matter{Pages: []pagemodel.MatterPage{{Kind: pagemodel.HalfTitle}, {Kind: pagemodel.IndexPage}}}
	c, err := pagemodel.SetMatter{Matter: m}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func drawStanzas(t *rapid.T, b *pagemodel.Builder) []pagemodel.Stanza {
	var stanzas []pagemodel.Stanza
	for range rapid.IntRange(1, 3).Draw(t, "stanzas") {
		var lines []pagemodel.Line
		for range rapid.IntRange(1, 8).Draw(t, "lines") {
			lines = append(lines, b.Line("flour on a coat"))
		}
		stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
	}
	return stanzas
}

// drawWishes are up to three.
func drawWishes(t *rapid.T, book *pagemodel.Collection) []wish {
	var ids []pagemodel.PoemID
	for _, p := range book.Poems() {
		ids = append(ids, p.ID())
	}
	var wishes []wish
	for range rapid.IntRange(0, 3).Draw(t, "wishes") {
		mixed := rapid.Permutation(ids).Draw(t, "poems")
		kind := rapid.SampledFrom([]string{"together", "in order", "first", "last", "apart", "apart", "stay"}).Draw(t, "wish")
		n := map[string]int{"first": 1, "last": 1, "apart": 2}[kind]
		if kind == "together" || kind == "in order" {
			n = min(len(ids), rapid.IntRange(2, 3).Draw(t, "poems together"))
		}
		if n <= len(ids) && (n > 1 || kind == "first" || kind == "last" || kind == "stay") {
			wishes = append(wishes, wish{kind, mixed[:n]})
		}
	}
	return wishes
}
