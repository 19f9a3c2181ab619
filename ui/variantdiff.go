package ui

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset"
)

// versionLine is a line of one version of a poem, and where it stands there.
type versionLine struct {
	pagemodel.Line
	stanza, number int // from 1, the number within its stanza
}

// versionDiff is a place where two versions of a poem, A and B, differ: the
// lines of each that were one line once, or something of the poem's head.
type versionDiff struct {
	lines  [2][]versionLine     // of A and of B; both empty for the head
	after  [2]pagemodel.LineID  // the line before them, where there is one
	parts  [2]bool              // a stanza break parts them from what both have before them
	role   typeset.Role         // of the head: whose rows differ
	says   string               // what differs, in words
	only   int                  // the version that alone has them, or -1
	differ [2][]map[[2]int]bool // of each line the words, from byte to byte, that the other version does not have
}

// onlyNowhere is the only of what both versions have.
const onlyNowhere = -1

// versionDiffs are the places where two versions of a poem differ: of the head
// first, then line by line in the order of A, what only B has after what it
// follows there.
func versionDiffs(a, b *pagemodel.Poem) []versionDiff {
	diffs := headDiffs(a, b)
	kin := kinOf(a, b)
	moved := movedLines(a, b)
	for _, d := range alignedLines(a, b, kin) {
		if d.tell(moved) {
			diffs = append(diffs, d)
		}
	}
	return diffs
}

// versionLines are a poem's lines with their places.
func versionLines(p *pagemodel.Poem) []versionLine {
	var all []versionLine
	for at, l := range p.Lines() {
		all = append(all, versionLine{l, p.StanzaNumber(at), at.Line + 1})
	}
	return all
}

// lineKin says which lines were one line once: each is known by the first of
// them that was met.
type lineKin map[pagemodel.LineID]pagemodel.LineID

func (k lineKin) first(id pagemodel.LineID) pagemodel.LineID {
	for {
		up, ok := k[id]
		if !ok {
			return id
		}
		id = up
	}
}

func (k lineKin) join(a, b pagemodel.LineID) {
	if a, b = k.first(a), k.first(b); a != b {
		k[max(a, b)] = min(a, b)
	}
}

// kinOf joins the lines of one version with those that they were broken from, or
// that were joined into them, where the other version has it otherwise.
func kinOf(a, b *pagemodel.Poem) lineKin {
	kin := lineKin{}
	for _, pair := range [...][2]*pagemodel.Poem{{a, b}, {b, a}} {
		there := placesOf(pair[1])
		for _, l := range pair[0].Lines() {
			if _, in := there[l.ID()]; !in && l.From() != nil {
				kin.join(l.ID(), l.From().Line)
			}
			for _, seam := range l.Absorbed() {
				if _, in := there[seam.Line]; in {
					kin.join(l.ID(), seam.Line)
				}
			}
		}
	}
	return kin
}

// placesOf are the places of a poem's lines among all of them, from 0.
func placesOf(p *pagemodel.Poem) map[pagemodel.LineID]int {
	places := make(map[pagemodel.LineID]int, p.LineCount())
	for _, l := range p.Lines() {
		places[l.ID()] = len(places)
	}
	return places
}

// alignedLines are the lines of both versions, those together that are kin.
func alignedLines(a, b *pagemodel.Poem, kin lineKin) []versionDiff {
	var all []versionDiff
	at := map[pagemodel.LineID]int{} // by the first of its kin
	renumber := func(from int) {
		for i := from; i < len(all); i++ {
			at[kin.first(all[i].anyLine())] = i
		}
	}
	for side, p := range [...]*pagemodel.Poem{a, b} {
		last := -1
		var before pagemodel.LineID
		for _, l := range versionLines(p) {
			i, met := at[kin.first(l.ID())]
			if !met {
				i = last + 1
				all = slices.Insert(all, i, versionDiff{only: onlyNowhere})
				all[i].after[side] = before
				all[i].lines[side] = []versionLine{l}
				renumber(i)
			} else {
				if len(all[i].lines[side]) == 0 {
					all[i].after[side] = before
				}
				all[i].lines[side] = append(all[i].lines[side], l)
			}
			last, before = i, l.ID()
		}
	}
	return withPlaces(all)
}

// withPlaces notes, of what one version alone has, the line that it would follow
// in the other; and of what both have, whether a stanza break stands before it.
func withPlaces(all []versionDiff) []versionDiff {
	var before [2]pagemodel.LineID
	var stanza [2]int // of what both had last
	for i := range all {
		d := &all[i]
		both := len(d.lines[0]) > 0 && len(d.lines[1]) > 0
		for side, lines := range d.lines {
			if len(lines) == 0 {
				d.after[side] = before[side]
				continue
			}
			before[side] = lines[len(lines)-1].ID()
			if both {
				d.parts[side] = stanza[side] > 0 && lines[0].stanza != stanza[side]
				stanza[side] = lines[len(lines)-1].stanza
			}
		}
	}
	return all
}

func (d *versionDiff) anyLine() pagemodel.LineID {
	for _, lines := range d.lines {
		if len(lines) > 0 {
			return lines[0].ID()
		}
	}
	return 0
}

// movedLines are the lines that both versions have and that stand in another
// order there: as few as there can be for the others to be in one order.
func movedLines(a, b *pagemodel.Poem) map[pagemodel.LineID]bool {
	place := placesOf(b)
	var both []pagemodel.LineID
	for _, l := range a.Lines() {
		if _, in := place[l.ID()]; in {
			both = append(both, l.ID())
		}
	}
	stays := rising(len(both), func(i int) int { return place[both[i]] })
	moved := map[pagemodel.LineID]bool{}
	for i, id := range both {
		if !stays[i] {
			moved[id] = true
		}
	}
	return moved
}

// rising is the longest run of n values, not all next to each other, each larger
// than the one before (the longest increasing subsequence, by the last value of
// the best run of every length).
func rising(n int, value func(int) int) []bool {
	var ends []int // of the best run of each length, where it ends
	from := make([]int, n)
	for i := range n {
		length, _ := slices.BinarySearchFunc(ends, value(i), func(end, v int) int { return value(end) - v })
		from[i] = -1
		if length > 0 {
			from[i] = ends[length-1]
		}
		if length == len(ends) {
			ends = append(ends, i)
		}
		ends[length] = i
	}
	in := make([]bool, n)
	if len(ends) == 0 {
		return in
	}
	for i := ends[len(ends)-1]; i >= 0; i = from[i] {
		in[i] = true
	}
	return in
}
