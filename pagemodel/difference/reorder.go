package difference

// chain is the order of a book's entries: what follows each, the book itself
// before the first of them.
type chain map[name]name

// end follows the last entry.
var end = name{-1, -1}

func (c chain) has(n name) bool { _, ok := c[n]; return ok }

func (c chain) put(n, behind name) { c[behind], c[n] = n, c[behind] }

// reorder takes entries out and puts others in their places. Each goes behind the
// one that it is to stand behind, which may have to be put there first.
func (t *Text) reorder(order []operation) {
	if len(order) == 0 {
		return
	}
	known := make(map[name]*entry, len(t.entries))
	for i := range t.entries {
		known[t.entries[i].name] = &t.entries[i]
	}
	gone := map[name]bool{}
	var waiting []placing
	for _, op := range order {
		switch op := op.(type) {
		case removing:
			gone[op.name] = true
		case placing:
			gone[op.name] = true
			waiting = append(waiting, op)
			if op.entry != nil {
				known[op.name] = op.entry
			}
		}
	}
	c := t.chainWithout(gone)
	c.place(waiting)
	entries := make([]entry, 0, len(c))
	for n := c[name{}]; n != end; n = c[n] {
		entries = append(entries, *known[n])
	}
	t.entries = entries
}

func (t *Text) chainWithout(gone map[name]bool) chain {
	c := chain{{}: end}
	last := name{}
	for i := range t.entries {
		if n := t.entries[i].name; !gone[n] {
			c.put(n, last)
			last = n
		}
	}
	return c
}

// place puts in what waits, each as soon as what it stands behind is there. Where
// that is not to come, it goes behind the entry that stays in its place.
func (c chain) place(waiting []placing) {
	for len(waiting) > 0 {
		var later []placing
		for _, op := range waiting {
			if !c.has(op.behind) {
				later = append(later, op)
				continue
			}
			c.put(op.name, op.behind)
		}
		if len(later) == len(waiting) {
			later[0].behind = later[0].nearest(c)
		}
		waiting = later
	}
}

// nearest is the entry that stays, or the book's head where it was taken out too.
func (p placing) nearest(c chain) name {
	if c.has(p.stays) {
		return p.stays
	}
	return name{}
}
