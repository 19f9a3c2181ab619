package difference

import (
	"slices"

	"headland/pagemodel"
)

// Between is what differs between two states of a book, in the order of the pages
// of the first: the title page, the design and the prelims; the poems and sections,
// the head of each before its lines; the end matter.
func Between(was, is *pagemodel.Collection) []Change {
	front, back := book(was, is)
	o := orderOf(was.Order(), is.Order())
	all := slices.Concat(front, o.placedBehind(-1))
	var r room
	for i, e := range was.Order() {
		all = append(all, o.moved(i)...)
		if j, ok := o.now[nameOf(e)]; ok {
			all = append(all, r.entries(e, is.Order()[j])...)
		}
		all = append(all, o.placedBehind(i)...)
	}
	return keyed(append(all, back...))
}

// book is what differs in what is true of the whole book. The end matter stands
// behind the poems.
func book(was, is *pagemodel.Collection) (front, back []Change) {
	values := valued(name{}, bookValues(was), bookValues(is))
	fields := fieldsDiffer(name{}, bookTexts(was), bookTexts(is))
	for _, ch := range slices.Concat(withoutGone(fields, values), values) {
		if kind, ok := MatterOf(ch.Field); ok && !kind.Prelim() {
			back = append(back, ch)
		} else {
			front = append(front, ch)
		}
	}
	return front, back
}

// withoutGone is what differs in the words of the book's pages, but for the words
// of pages of the prelims and end matter that are taken out: they go with their
// page, in the one change of its value.
func withoutGone(fields, values []Change) []Change {
	gone := map[pagemodel.MatterKind]*Change{}
	for i := range values {
		if kind, ok := MatterOf(values[i].Field); ok && values[i].Kind == Delete {
			gone[kind] = &values[i]
		}
	}
	var rest []Change
	for _, ch := range fields {
		if kind, ok := MatterOf(ch.Field); ok && gone[kind] != nil {
			gone[kind].op = together{gone[kind].op, ch.op}
		} else {
			rest = append(rest, ch)
		}
	}
	return rest
}

// room is where poems are read, one after another.
type room struct{ was, is body }

// entries is what differs in a poem, or in a section's head.
func (r *room) entries(was, is pagemodel.Entry) []Change {
	if was == is || sameKey(was.Poem, is.Poem) {
		return nil
	}
	n := nameOf(was)
	fields := fieldsDiffer(n, fieldTexts(was), fieldTexts(is))
	if was.Poem == nil {
		return fields
	}
	all := valued(n, valuesOf(poemValues, was.Poem.Head()), valuesOf(poemValues, is.Poem.Head()))
	below := func(ch Change) bool { return ch.Field == FieldPlace || ch.Field == FieldNote }
	for _, ch := range fields {
		if !below(ch) {
			all = append(all, ch)
		}
	}
	r.was, r.is = linesOf(was.Poem, true, r.was), linesOf(is.Poem, true, r.is)
	d := differ{target: target{n, ofLines}, was: r.was, is: r.is}
	all = append(all, d.find()...)
	for _, ch := range fields {
		if below(ch) {
			all = append(all, ch)
		}
	}
	return all
}

// sameKey says that two poems print alike. A poem's key says nothing of its note.
func sameKey(was, is *pagemodel.Poem) bool {
	return was != nil && is != nil && was.Key() == is.Key() && was.Head().Note == is.Head().Note
}

// fieldsDiffer is what differs in the words of an entry's head.
func fieldsDiffer(n name, was, is [][]string) []Change {
	var all []Change
	for i, field := range fieldsOf(n) {
		if slices.Equal(was[i], is[i]) {
			continue
		}
		d := differ{target: target{n, i}, fieldName: field, was: textOf(was[i], true), is: textOf(is[i], true)}
		all = append(all, d.find()...)
	}
	return all
}

// valued is what differs in the values of an entry.
func valued(n name, was, is []string) []Change {
	var all []Change
	for i, field := range valuesNamed(n) {
		if was[i] != is[i] {
			ch := Change{Kind: Design, Poem: n.poem, Field: field, Was: was[i], Is: is[i], about: was[i] + "→" + is[i]}
			switch notInBook {
			case was[i]:
				ch.Kind = Insert
			case is[i]:
				ch.Kind = Delete
			}
			ch.op = valuing{n, i, is[i]}
			all = append(all, ch)
		}
	}
	return all
}
