package difference

import (
	"headland/pagemodel"
)

// order is which entries were moved, put in or taken out: as few as can be.
type order struct {
	was, is   []pagemodel.Entry
	then, now map[name]int // index in was and in is
	stays     map[name]bool
	behind    map[int][]Change // new entries, by the index of the entry that stays before them
}

func orderOf(was, is []pagemodel.Entry) *order {
	o := &order{was: was, is: is, then: indexes(was), now: indexes(is), stays: make(map[name]bool, len(was)), behind: map[int][]Change{}}
	var common []int
	for _, e := range is {
		if i, ok := o.then[nameOf(e)]; ok {
			common = append(common, i)
		}
	}
	for _, at := range rising(common) {
		o.stays[nameOf(was[common[at]])] = true
	}
	o.findNew()
	return o
}

func indexes(entries []pagemodel.Entry) map[name]int {
	all := make(map[name]int, len(entries))
	for i, e := range entries {
		all[nameOf(e)] = i
	}
	return all
}

// findNew finds the entries that were not in the book.
func (o *order) findNew() {
	stays := -1
	for j, e := range o.is {
		n := nameOf(e)
		if o.stays[n] {
			stays = o.then[n]
			continue
		}
		if _, known := o.then[n]; known {
			continue
		}
		text := entryOf(e)
		ch := o.change(Insert, e, "nothing "+behindWords(o.is, j), known(e)+" "+behindWords(o.is, j))
		ch.op = placing{n, o.nameBefore(j), o.staysBefore(j), &text}
		o.behind[stays] = append(o.behind[stays], ch)
	}
}

// placedBehind are the new entries behind the one that stood at an index; -1 is the
// head of the book.
func (o *order) placedBehind(i int) []Change { return o.behind[i] }

// moved is the change of the entry that stood at an index, if it does not stay.
func (o *order) moved(i int) []Change {
	e := o.was[i]
	n := nameOf(e)
	if o.stays[n] {
		return nil
	}
	j, ok := o.now[n]
	if !ok {
		ch := o.change(Delete, e, known(e), "nothing")
		ch.op = removing{n}
		return []Change{ch}
	}
	kind := MovePoem
	if n.section != 0 {
		kind = MoveSection
	}
	ch := o.change(kind, e, known(e)+" "+behindWords(o.was, i), known(e)+" "+behindWords(o.is, j))
	ch.op = placing{n, o.nameBefore(j), o.staysBefore(j), nil}
	return []Change{ch}
}

// change is a change of a whole entry.
func (o *order) change(kind Kind, e pagemodel.Entry, was, is string) Change {
	ch := Change{Kind: kind, Poem: nameOf(e).poem, Section: nameOf(e).section, Field: "poem", Was: was, Is: is, about: known(e)}
	if e.Section != nil {
		ch.Field = "section"
	}
	return ch
}

// nameBefore is the entry before one of the order as it is; staysBefore the nearest
// before it that stays.
func (o *order) nameBefore(j int) name {
	if j == 0 {
		return name{}
	}
	return nameOf(o.is[j-1])
}

func (o *order) staysBefore(j int) name {
	for j--; j >= 0; j-- {
		if n := nameOf(o.is[j]); o.stays[n] {
			return n
		}
	}
	return name{}
}

// known is what an entry is called in words.
func known(e pagemodel.Entry) string {
	if e.Section != nil {
		return "the section " + quoted(e.Section.Title)
	}
	if e.Poem.Head().Title == "" {
		return "the poem " + e.Poem.Name()
	}
	return "the poem " + quoted(e.Poem.Head().Title)
}

// behindWords says where an entry stands.
func behindWords(entries []pagemodel.Entry, i int) string {
	if i == 0 {
		return "at the head of the book"
	}
	return "after " + known(entries[i-1])
}
