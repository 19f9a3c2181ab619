package order_test

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/order"
)

// fataler is a test of either kind.
type fataler interface{ Fatalf(string, ...any) }

// search gives all that a search finds.
func search(t fataler, set *typeset.Setting, wishes []wish) (found []order.Found, err error) {
	var conditions []order.Condition
	for _, w := range wishes {
		conditions = append(conditions, w.condition())
	}
	err = order.Search(context.Background(), set, conditions, func(f order.Found) { found = append(found, f) })
	if (err == nil) != (len(found) > 0) {
		t.Fatalf("%d orders found, and the error is %v", len(found), err)
	}
	return found, err
}

// checkAgainstAll holds a search of a book of so many poems to what trying all
// orders gives. It is false where the wishes contradict one another.
func checkAgainstAll(t fataler, setter *typeset.Setter, book *pagemodel.Collection, wishes []wish) bool {
	j := newJudge(setter, book, wishes)
	want, possible := j.best()
	found, err := search(t, j.set, wishes)
	if possible != (err == nil) {
		t.Fatalf("wishes %v of %v: there is such an order: %v, and the search says %v", wishes, j.now, possible, err)
	}
	last := judged{loss: 1 << 20}
	for _, f := range found {
		it := checkFound(t, j, f)
		if it.compare(last) >= 0 {
			t.Fatalf("%v was found after %v and is no better", it, last)
		}
		last = it
	}
	if possible && last != want {
		t.Fatalf("wishes %v of %v: found %v (%+v), the best is %v", wishes, j.now, last, found[len(found)-1], want)
	}
	return possible
}

// checkFound holds that an order is possible, meets the wishes and costs what it
// is said to.
func checkFound(t fataler, j *judge, f order.Found) judged {
	ids := f.Arrangement.Order
	set := j.in(ids)
	if !j.possible(ids) || !j.meets(ids) || !j.apart(set, ids) {
		t.Fatalf("wishes %v: %v does not meet them, or can't be", j.wishes, ids)
	}
	it := j.of(set, ids)
	toll := order.TollOf(set)
	toll.Faults = order.Uncounted
	if f.Toll != toll || toll.Blanks+toll.Unfaced != it.loss || toll.Parted != it.parted || toll.Extent != it.extent {
		t.Fatalf("%v is said to cost %+v; it costs %+v, by its pages %+v", ids, f.Toll, toll, it)
	}
	if len(f.Moved) != it.moved {
		t.Fatalf("%v to %v: %v are said to be moved, %d are", j.now, ids, f.Moved, it.moved)
	}
	return it
}

// smallCase is a book and what is wished of its order.
type smallCase struct {
	book   *pagemodel.Collection
	wishes []wish
}

// narrow says that the wishes leave few enough orders that the judge can set the
// book in each of them.
func (c *smallCase) narrow() bool {
	n := 0
	for _, w := range c.wishes {
		if w.kind != "apart" && w.kind != "stay" {
			n++
		}
	}
	return n >= 2
}

// TestSearchIsExhaustive: of books of up to eight poems, the search finds an order
// as good as the best of all, finds none where there is none, and says truly what
// each costs.
func TestSearchIsExhaustive(t *testing.T) {
	setter := typeset.NewSetter(typeset.Bundled())
	met, not := 0, 0
	for poems, books := range []int{1: 10, 2: 60, 3: 100, 4: 120, 5: 70, 6: 10, 7: 12, 8: 12} {
		cases := rapid.Custom(func(t *rapid.T) smallCase {
			book := drawBook(t, poems)
			return smallCase{book, drawWishes(t, book)}
		})
		for i := range books {
			c := cases.Example(1000*poems + i)
			if poems > 6 && i > 0 && !c.narrow() {
				continue
			}
			if checkAgainstAll(t, setter, c.book, c.wishes) {
				met++
			} else {
				not++
			}
		}
	}
	if met < 200 || not < 30 {
		t.Errorf("%d books had an order that meets the wishes and %d had none: draw others", met, not)
	}
}

// TestApartOnThePages: poems that do not follow one another come to face each
// other where one of them shares its page, and are then side by side.
func TestApartOnThePages(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, tinyDesign())
	for _, start := range []pagemodel.Start{0, 0, pagemodel.SharedPage, 0, 0} { // on pages 1, 2, 2, 3 and 4
		line := []pagemodel.Line{b.Line("flour on a coat")}
		b.Poem(pagemodel.PoemHead{Start: start}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, line)})})
	}
	book := b.Collection()
	ids := book.Arrangement().Order
	wishes := []wish{{"apart", []pagemodel.PoemID{pagemodel.PoemID(ids[1]), pagemodel.PoemID(ids[3])}}}
	setter := typeset.NewSetter(typeset.Bundled())
	checkAgainstAll(t, setter, book, wishes)
	found, _ := search(t, setter.Set(nil, book), wishes)
	if last := found[len(found)-1]; len(last.Moved) != 1 {
		t.Errorf("as the book is, page 2 and page 3 show both: found %+v", last)
	}
}
