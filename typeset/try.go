package typeset

import "headland/pagemodel"

// Try is the setting after an edit, with the prelims and end matter as they
// stand, for asking what the edit would do: s itself where it changes nothing.
// Where it gives the lines of the design more room, or turns them over in
// another way, only what takes more than one row is set again: of every other
// poem the places are right, and its rows are still those of s. The error says
// in words why the edit can't be done. It must be called where the setter may be
// used.
func (s *Setting) Try(e pagemodel.Edit) (*Setting, error) {
	next, err := e.Apply(s.collection)
	if err != nil || next == s.collection {
		return s, err
	}
	if roomier(s.design, next.Design()) && s.opensLike(next) {
		return s.inMoreRoom(next), nil
	}
	return s.trial(next), nil
}

// opensLike says that another collection has the same poems in the same order,
// and that none of them may open otherwise.
func (s *Setting) opensLike(next *pagemodel.Collection) bool {
	now, before := next.Entries(), s.collection.Entries()
	if now.Len() != before.Len() {
		return false
	}
	for i := range now.Changed(before) {
		if !sameOpening(now.At(i), before.At(i)) {
			return false
		}
	}
	return true
}

// trial is the setting of another collection, with the prelims and end matter as
// they stand.
func (s *Setting) trial(next *pagemodel.Collection) *Setting {
	s.setter.keepMatter = s.matter
	defer func() { s.setter.keepMatter = nil }()
	return s.setter.Set(s, next)
}

// roomier says that a design differs from another only in ways after which a
// line that fits its row still does.
func roomier(before, after pagemodel.Design) bool {
	if after == before || after.RunOut < before.RunOut || after.Tighten < before.Tighten || after.Margins.Outer > before.Margins.Outer {
		return false
	}
	after.RunOut, after.Tighten, after.Turnovers = before.RunOut, before.Tighten, before.Turnovers
	after.Margins.Outer = before.Margins.Outer
	return after == before
}

// inMoreRoom is the setting of a collection whose design is roomier than that of
// s. It has no key, so that nothing is ever set on from it.
func (s *Setting) inMoreRoom(next *pagemodel.Collection) *Setting {
	set := &Setting{
		collection: next, design: next.Design(), faces: s.faces, setter: s.setter,
		entries: s.entries, matter: s.matter, unsettled: s.unsettled,
	}
	s.setter.comp.faces, s.setter.comp.size = &set.faces, set.design.Size
	edited := map[int]bool{}
	for i := range next.Entries().Changed(s.collection.Entries()) {
		edited[i] = true
	}
	changed := map[int]*chain{}
	for i, was := range s.entries.All() {
		if !edited[i] && !was.needsRoom() {
			continue
		}
		p := s.setter.poem(set, nil, next.Entries().At(i))
		set.entries = set.entries.With(i, p)
		set.unsettled += p.unsettled - was.unsettled
		changed[int(s.seats.chainOf[i])] = nil
	}
	set.reseat(s, changed)
	return set
}

// needsRoom says that more room might change how many rows a poem or a section's
// page takes, or how many stand on a page.
func (s *poemSetting) needsRoom() bool {
	if s.lie != pagemodel.Upright || len(s.turned) > 0 {
		return true
	}
	for i := range s.units {
		u := &s.units[i]
		if u.prose || len(u.rows) > 1 || u.rows[0].Start > 0 {
			return true
		}
	}
	return false
}
