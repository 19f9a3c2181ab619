package session

import (
	"context"
	"testing"

	"headland/pagemodel"
	"headland/typeset/order"
)

// TestToll: what an order costs is of what is shown, a preview too.
func TestToll(t *testing.T) {
	s := imported(t)
	if got, want := s.Toll(), order.TollOf(s.Committed()); got != want || got.Extent != s.Committed().Extent() || got.Faults != len(s.Committed().Faults()) {
		t.Errorf("the toll is %+v, want %+v", got, want)
	}
	before, first := s.Toll(), int64(s.BookReading().Items[0].Poem)
	a := s.Collection().Arrangement()
	a.Order, a.LeftOut = a.Order[1:], []int64{first}
	must(t, s.Preview(pagemodel.Rearrange{Arrangement: a}))
	if got := s.Toll(); got.Extent >= before.Extent {
		t.Errorf("with a poem left out the toll is %+v, before %+v", got, before)
	}
	s.Drop()
	if got := s.Toll(); got != before {
		t.Errorf("put back, the toll is %+v, want %+v", got, before)
	}
}

// TestOrderSearch: an order is found on another goroutine, meets the condition, is
// not applied, and costs, once it is, what was said.
func TestOrderSearch(t *testing.T) {
	s := imported(t)
	last := s.BookReading().Items[2].Poem
	before := s.Collection()
	found, failed := []order.Found{}, make(chan error)
	search := s.OrderSearch()
	go func() {
		failed <- search.Run(context.Background(), []order.Condition{order.First(last)}, func(f order.Found) { found = append(found, f) })
	}()
	must(t, <-failed)
	if len(found) == 0 || found[len(found)-1].Arrangement.Order[0] != int64(last) {
		t.Fatalf("found are %+v", found)
	}
	if s.Collection() != before {
		t.Error("looking has changed the collection")
	}
	best := found[len(found)-1]
	must(t, s.Do(pagemodel.Rearrange{Arrangement: best.Arrangement}))
	got := s.Toll()
	got.Faults = order.Uncounted
	if got != best.Toll {
		t.Errorf("the order costs %+v, found was %+v", got, best.Toll)
	}
	err := s.SearchOrder(context.Background(), []order.Condition{order.First(last), order.Last(last)}, func(order.Found) {})
	refused(t, err, "all be had")
}

// TestEchoes: what the poet marks is heard where it stands, in a preview too, and is
// there when the file is opened again.
func TestEchoes(t *testing.T) {
	s := threePoems(t)
	must(t, s.Do(pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "heat", Words: []string{"oven"}}}))
	check := func(s *Session, places int) {
		t.Helper()
		all := s.Echoes()
		if len(all) == 0 || all[0].Name != "heat" || !all[0].Marked || len(all[0].Found) != places {
			t.Errorf("the echoes are %+v, want one at %d places", all, places)
		}
	}
	check(s, 1)
	ref, _ := lineOf(t, s, 3, 1, 1)
	must(t, s.Preview(pagemodel.Retype{LineRef: ref, Text: "The ovens went out."}))
	check(s, 2)
	s.Drop()
	s = reopened(t, s)
	check(s, 1)
}
