package sheet

import (
	"strings"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/aloud"
)

// New sets a running order on leaves of a format, in the book's face, by a setter
// that nobody else uses in the meantime. book says on which pages the poems are
// printed, and p what is left out for want of time: it has leaves as the rest has,
// but what comes before it leads on past it.
func New(book *typeset.Setting, p aloud.Plan, f Format, setter *typeset.Setter) *Copy {
	c := book.Collection()
	b := &binder{
		book: book, f: f,
		comp: compositor{setter: setter, about: pagemodel.About{Language: c.About().Language}, family: c.Design().Face, side: f.Side},
	}
	for i := range p.Items {
		b.item(c, i, &p.Items[i])
	}
	b.catchwords(p)
	b.folios()
	return &Copy{p.Reading, f, b.leaves}
}

// binder makes the leaves, one after another.
type binder struct {
	book   *typeset.Setting
	f      Format
	comp   compositor
	leaves []Leaf
	opens  []string // of each leaf, the first words of its verse, or of what is said where it has none
}

// item adds an item's leaves: what is said before it, above the poem if that costs
// the poem no leaf and little of its size, else on leaves of its own; and the poem.
func (b *binder) item(c *pagemodel.Collection, at int, timed *aloud.Timed) {
	item := timed.Item
	s := sourceOf(c, item)
	from := len(b.leaves)
	head := headRows{b.talk(item.Before, b.f.Label, b.talkMeasure()), b.title(&s)}
	if len(s.lines) == 0 {
		b.said(at, strings.TrimSpace(item.Before+"\n"+s.instead), head.title)
	} else {
		alone := headRows{title: head.title}
		p := b.comp.fit(&s, &b.f, alone.depth())
		if below := b.comp.fit(&s, &b.f, head.depth()); b.bears(&p, alone, &below, head) {
			p = below
		} else {
			b.said(at, item.Before, nil)
			head = alone
		}
		b.poem(at, &s, p, head)
	}
	for i := from; i < len(b.leaves); i++ {
		b.leaves[i].First, b.leaves[i].Last = i == from, i == len(b.leaves)-1
		b.asides(&b.leaves[i], &s, item.Said)
		b.spare(&b.leaves[i], timed)
	}
}

// bears says that a poem may stand below what is said before it: it then takes no
// more leaves than it does alone, and seven eighths of the size at least.
func (b *binder) bears(alone *sized, title headRows, below *sized, head headRows) bool {
	return len(b.cuts(below, head)) <= len(b.cuts(alone, title)) && 8*below.size >= 7*alone.size
}

// cuts are where a poem's leaves begin, the first of them below those head rows.
func (b *binder) cuts(p *sized, head headRows) []int {
	return cut(p.units, b.f.rows(p.size, head.depth()), b.f.rows(p.size, 0))
}

// poem adds a poem's leaves.
func (b *binder) poem(at int, s *source, p sized, head headRows) {
	starts := b.cuts(&p, head)
	for i, from := range starts {
		to := len(p.units)
		if i+1 < len(starts) {
			to = starts[i+1]
		}
		l := Leaf{Item: at, Size: p.size}
		top := b.f.firstBase(p.size, 0)
		if i == 0 {
			top = b.f.firstBase(p.size, head.depth())
			l.Words = b.head(head)
		} else {
			l.Words = b.goesOn(s)
		}
		l.Verse = verse(p.units[from:to], top, leadingOf(p.size))
		b.printed(&l, s)
		b.turnSigns(&l)
		b.leaves = append(b.leaves, l)
		b.opens = append(b.opens, opening(&l))
	}
}

// verse is units at their places down a leaf.
func verse(units []unit, base, leading typeset.Length) []typeset.Row {
	var rows []typeset.Row
	for i := range units {
		if i > 0 {
			base += typeset.Length(units[i].before) * leading
		}
		for _, row := range units[i].rows {
			row.Baseline, row.Number, row.Grid = base, len(rows)+1, 0
			rows = append(rows, row)
			base += leading
		}
	}
	return rows
}
