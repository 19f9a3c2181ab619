package ui

import (
	"cmp"
	"time"

	"headland/pagemodel"
	"headland/typeset"
)

// version is one text of a poem: the one in the book, a variant kept beside it,
// or a state that the poem has been in.
type version struct {
	name string // what it is called, or what made it so
	when string // its day, or day and time; "" where that is not known
	poem *pagemodel.Poem
	edit pagemodel.Edit // puts it into the book; nil for the one that is there
	kept bool           // a variant, under that name
	back bool           // what made it so was undone
}

// versions are the texts of one poem that can be looked at and compared.
type versions struct {
	w      *Window
	poem   *pagemodel.Poem // as the book has it
	states bool            // they are its states; else its variants
	all    []version
	book   int    // which of them is in the book
	shown  [2]int // A and B, laid side by side
	diff   int    // the difference between those two that is at hand
	was    int    // the page at which the book lay open
	sets   map[int]*setVersion
	diffs  map[[2]int][]versionDiff
}

// variantsOf are the versions of a poem: the one in the book, then those kept
// beside it.
func (w *Window) variantsOf(poem *pagemodel.Poem) *versions {
	c := w.session.Collection()
	v := w.newVersions(poem)
	v.all = []version{{name: cmp.Or(c.VariantName(poem.ID()), inBookWords), poem: poem}}
	for _, kept := range c.Variants(poem.ID()) {
		v.all = append(v.all, version{
			name: kept.Name, when: dayInWords(kept.On, time.Now()), poem: kept.Poem, kept: true,
			edit: pagemodel.UseVariant{Poem: poem.ID(), Name: kept.Name},
		})
	}
	v.choose(min(1, len(v.all)-1))
	return v
}

// statesOf are the states that a poem has been in, the latest first.
func (w *Window) statesOf(poem *pagemodel.Poem) (*versions, error) {
	states, err := w.session.PoemStates(poem.ID())
	if err != nil {
		return nil, err
	}
	v := w.newVersions(poem)
	v.states, v.book = true, -1
	for i := len(states) - 1; i >= 0; i-- {
		s := &states[i]
		state := version{name: s.Label, when: timeInWords(s.At, time.Now()), poem: s.Poem, back: s.Undone}
		if v.book < 0 && !s.Undone {
			v.book, state.poem = len(v.all), poem
		} else {
			state.edit = w.session.BringBack(*s)
		}
		v.all = append(v.all, state)
	}
	v.book = max(0, v.book)
	v.shown[0] = v.book
	v.choose(v.book)
	return v, nil
}

func (w *Window) newVersions(poem *pagemodel.Poem) *versions {
	return &versions{
		w: w, poem: poem, was: w.session.Page(),
		sets: map[int]*setVersion{}, diffs: map[[2]int][]versionDiff{},
	}
}

// choose has a version be B.
func (v *versions) choose(i int) { v.shown[1], v.diff = i, 0 }

// other is the version that is next to another (1) or before it (-1), round and
// round.
func (v *versions) other(i, by int) int { return (i + by + len(v.all)) % len(v.all) }

// set is the book with a version in it, set when it is first wanted; where that
// can't be, the book as it is.
func (v *versions) set(i int) *setVersion {
	if v.sets[i] == nil {
		set := v.w.session.Committed()
		if edit := v.all[i].edit; edit != nil {
			if next, err := edit.Apply(set.Collection()); err == nil {
				set = v.w.session.Setter().Set(set, next)
			}
		}
		v.sets[i] = newSetVersion(set, v.poem.ID())
	}
	return v.sets[i]
}

// between are the places where two versions differ; found once.
func (v *versions) between(a, b int) []versionDiff {
	pair := [2]int{a, b}
	if _, known := v.diffs[pair]; !known {
		v.diffs[pair] = versionDiffs(v.all[a].poem, v.all[b].poem)
	}
	return v.diffs[pair]
}

// compared are the places where A and B differ.
func (v *versions) compared() []versionDiff { return v.between(v.shown[0], v.shown[1]) }

// atHand is the difference at hand, nil where A and B are alike.
func (v *versions) atHand() *versionDiff {
	all := v.compared()
	if len(all) == 0 {
		return nil
	}
	v.diff = max(0, min(v.diff, len(all)-1))
	return &all[v.diff]
}

// pageOf is the page on which a side has the difference at hand.
func (v *versions) pageOf(side int) int {
	return pageOfDiff(v.setting(side), v.atHand(), side, v.poem.ID())
}

// setting is the book with the version of a side in it.
func (v *versions) setting(side int) *typeset.Setting { return v.set(v.shown[side]).set }

// inBookWords say that a version is the one in the book.
const inBookWords = "in the book"

// title is what a version is called, with its day.
func (v *versions) title(i int) string {
	is := &v.all[i]
	switch {
	case is.name == inBookWords:
		return is.name
	case i == v.book:
		return is.name + " · " + inBookWords
	case is.back:
		return joined(" · ", is.name, is.when, "undone")
	}
	return joined(" · ", is.name, is.when)
}
