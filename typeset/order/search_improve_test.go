package order

import (
	"context"
	"math/rand/v2"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// TestImproveIsAsGoodAsAll: what serves large books finds in small ones, soon, an
// order as good as trying all does.
func TestImproveIsAsGoodAsAll(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	setter := typeset.NewSetter(typeset.Bundled())
	compared := 0
	for i := range 40 {
		book := largeBook(5+random.IntN(4), random.IntN(3))
		set := setter.Set(nil, book)
		conditions := someConditions(book, random)
		p := piecesOf(book)
		var all []bound
		for _, c := range conditions {
			b, err := bind(book, c)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, b)
		}
		begin, err := p.agree(book, all)
		if err != nil {
			continue
		}
		compared++
		every := newSearch(context.Background(), set, p, all, func(Found) {})
		every.tryAll()
		some := newSearch(&stopAfter{context.Background(), 2500}, set, p, all, func(Found) {})
		some.improve(begin)
		if (every.order == nil) != (some.order == nil) || every.worth.compare(some.worth) != 0 {
			t.Errorf("book %d, %v: of all orders the best is %v, worth %+v; found %v, worth %+v", i, conditions, every.order, every.worth, some.order, some.worth)
		}
	}
	if compared < 25 {
		t.Errorf("only %d books had an order to compare", compared)
	}
}

// someConditions are up to four, of poems drawn at random.
func someConditions(book *pagemodel.Collection, random *rand.Rand) []Condition {
	var id []pagemodel.PoemID
	for _, p := range book.Poems() {
		id = append(id, p.ID())
	}
	var all []Condition
	for range random.IntN(5) {
		random.Shuffle(len(id), func(i, j int) { id[i], id[j] = id[j], id[i] })
		all = append(all, []Condition{
			Together(id[0], id[1]), Together(id[2], id[1], id[0]), InOrder(id[0], id[1]),
			First(id[0]), Last(id[0]), Apart(id[0], id[1]), Apart(id[1], id[2]), SectionsStay(),
		}[random.IntN(8)])
	}
	return all
}
