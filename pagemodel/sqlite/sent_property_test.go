package sqlite

import (
	"maps"
	"slices"
	"strconv"

	"headland/pagemodel"
)

// rounds holds that every round, undone or not, is as it was in memory when it
// went out.
func (t *trial) rounds() {
	for id, want := range t.m.sent {
		got, places, err := t.s.Sent(id)
		if err != nil {
			t.Fatal(err)
		}
		if sum(got) != sum(want) || !maps.Equal(places, placesOf(want)) {
			t.Fatalf("round %d: got %v\n%s\nwant %v\n%s", id, places, sum(got), placesOf(want), sum(want))
		}
	}
}

// poemStates holds that every poem has the states that the tree in memory has,
// the last that was not undone being the one in the book.
func (t *trial) poemStates() {
	for _, p := range t.s.Collection().Poems() {
		states, err := t.s.PoemStates(p.ID())
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, s := range states {
			got = append(got, bodyIn(t.withPoem(s.Poem), p.ID())+undoneSign(s.Undone))
		}
		if want := t.m.poemStates(p.ID()); !slices.Equal(got, want) {
			t.Fatalf("poem %d: got %q\nwant %q", p.ID(), got, want)
		}
	}
}

// withPoem is the book with a state of one of its poems.
func (t *trial) withPoem(p *pagemodel.Poem) *pagemodel.Collection {
	c, err := pagemodel.BringBack{Poem: p}.Apply(t.s.Collection())
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// poemStates looks through every place of the tree for what was done there to
// the poem.
func (m *model) poemStates(id pagemodel.PoemID) (bodies []string) {
	last := ""
	for _, n := range m.all {
		body, before := bodyIn(n.c, id), ""
		if n.parent != nil {
			before = bodyIn(n.parent.c, id)
		}
		sign := undoneSign(!m.onWay(n))
		switch i := len(bodies) - 1; {
		case body == before:
			continue
		case body != last:
			bodies = append(bodies, body+sign)
		case bodies[i] == body+undoneSign(true):
			bodies[i] = body + sign
		}
		last = body
	}
	return bodies
}

func (m *model) onWay(to *node) bool {
	for n := m.at; n != nil; n = n.parent {
		if n == to {
			return true
		}
	}
	return false
}

func bodyIn(c *pagemodel.Collection, id pagemodel.PoemID) string {
	for _, s := range c.Stored() {
		if s.Kind == "poem" && s.Key == strconv.FormatInt(int64(id), 10) {
			return string(s.Body)
		}
	}
	return ""
}

func undoneSign(undone bool) string {
	if undone {
		return " undone"
	}
	return ""
}
