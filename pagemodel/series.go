package pagemodel

import "slices"

// Series is a list that never changes, made so that the same list with one item
// replaced costs what was replaced and not the length: the two share all items
// but the few that differ. The zero Series is empty.
type Series[T comparable] struct {
	base []T
	over []replaced[T] // by index, at most a few
}

type replaced[T any] struct {
	at   int
	item T
}

// mostReplaced is how many replaced items a series carries before it is laid
// out afresh.
const mostReplaced = 24

// SeriesOf is a series of the items. It keeps the slice.
func SeriesOf[T comparable](items []T) Series[T] { return Series[T]{base: items} }

// Len is how many items there are.
func (s Series[T]) Len() int { return len(s.base) }

// At is the item at an index from 0.
func (s Series[T]) At(i int) T {
	for _, r := range s.over {
		if r.at == i {
			return r.item
		}
	}
	return s.base[i]
}

// With is the series with the item at an index replaced.
func (s Series[T]) With(i int, item T) Series[T] {
	over := slices.DeleteFunc(slices.Clone(s.over), func(r replaced[T]) bool { return r.at == i })
	s.over = append(over, replaced[T]{i, item})
	if len(s.over) > mostReplaced {
		return SeriesOf(s.All())
	}
	return s
}

// All is the items as a slice, which is not to be changed.
func (s Series[T]) All() []T {
	if len(s.over) == 0 {
		return s.base
	}
	all := slices.Clone(s.base)
	for _, r := range s.over {
		all[r.at] = r.item
	}
	return all
}

// Changed goes over the indexes at which the series differs from another of
// the same length, in no order to rely on.
func (s Series[T]) Changed(old Series[T]) func(yield func(i int) bool) {
	return func(yield func(int) bool) {
		if len(s.base) > 0 && &s.base[0] == &old.base[0] {
			s.changedAmong(old, yield)
			return
		}
		a, b := s.All(), old.All()
		for i := range a {
			if a[i] != b[i] && !yield(i) {
				return
			}
		}
	}
}

// changedAmong looks only at what either has replaced of the base they share.
func (s Series[T]) changedAmong(old Series[T], yield func(int) bool) {
	for _, r := range s.over {
		if r.item != old.At(r.at) && !yield(r.at) {
			return
		}
	}
	for _, r := range old.over {
		back := !slices.ContainsFunc(s.over, func(n replaced[T]) bool { return n.at == r.at })
		if back && r.item != s.base[r.at] && !yield(r.at) {
			return
		}
	}
}
