package order

import (
	"fmt"
	"strings"

	"headland/pagemodel"
)

// report is the best order so far as it is told.
func (s *search) report() Found {
	book := s.set.Collection()
	f := Found{Toll: tollOf(s.set, s.worth.tally)}
	now := book.Arrangement()
	f.Arrangement.LeftOut = now.LeftOut
	for _, id := range s.order {
		b := &s.blocks[id]
		f.Arrangement.Order = append(f.Arrangement.Order, now.Order[b.from:b.to]...)
	}
	for _, id := range s.movedBlocks(s.order) {
		for e := s.blocks[id].from; e < s.blocks[id].to; e++ {
			f.Moved = append(f.Moved, pagemodel.PoemID(now.Order[e]))
		}
		f.Says = append(f.Says, s.says(id))
	}
	if len(f.Moved) == 0 {
		f.Says = append(f.Says, "nothing is moved")
	}
	f.Says = append(f.Says, f.Toll.Beside(s.before))
	return f
}

// says where a block was and where it is: "“Crust” from behind “Oven” to behind
// “Salt”".
func (s *search) says(id int32) string {
	var names []string
	for e := s.blocks[id].from; e < s.blocks[id].to; e++ {
		names = append(names, s.nameAt(e))
	}
	return fmt.Sprintf("%s from %s to %s", strings.Join(names, " with "), s.behind(s.present(), id), s.behind(s.order, id))
}

// behind is what a block stands behind in an order, in words.
func (s *search) behind(order []int32, id int32) string {
	before := int32(-1)
	for _, other := range order {
		if other == id {
			break
		}
		before = other
	}
	switch {
	case before < 0:
		return "the beginning of the book"
	case s.blocks[before].head:
		return "the head of the section " + s.nameAt(s.blocks[before].from)
	}
	return "behind " + s.nameAt(s.blocks[before].to-1)
}

// nameAt is the name of an entry of the present order.
func (s *search) nameAt(entry int32) string {
	e := s.set.Collection().Entries().At(int(entry))
	if e.Section != nil {
		return "“" + e.Section.Title + "”"
	}
	return "“" + e.Poem.Name() + "”"
}
