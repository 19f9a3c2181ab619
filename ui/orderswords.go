package ui

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset/order"
)

// tollWords say what an order costs.
func tollWords(t order.Toll) string {
	return joined(" · ",
		fmt.Sprintf("%s in %s", counted(t.Extent, "page", "pages"), counted(t.Signatures, "signature", "signatures")),
		noneOr(t.Blanks, "blank", "blanks"),
		noneOr(t.Unfaced, "poem", "poems")+" unfaced",
		noneOr(t.Parted, "stanza", "stanzas")+" parted")
}

// noneOr is how many of something there are, in words where there is none.
func noneOr(n int, one, more string) string {
	if n == 0 {
		return "no " + one
	}
	return counted(n, one, more)
}

// rows are the orders as the list shows them.
func (k *keptOrders) rows() []listRow {
	rows := make([]listRow, len(k.all))
	for i := range k.all {
		o := &k.all[i]
		rows[i] = listRow{words: o.words(), quiet: i == 0, under: "counting what it costs…"}
		if i > 0 && o.isBook {
			rows[i].aside = "the book’s order"
		}
		switch {
		case i == 0 && o.tollSeen:
			rows[i].under = tollWords(o.toll)
		case o.tollSeen:
			rows[i].under = joined(" · ", o.elsewhere(), o.toll.Beside(k.all[0].toll), o.leavesOut())
		}
	}
	return rows
}

// elsewhere says how many poems stand elsewhere than in the book.
func (o *keptOrder) elsewhere() string {
	words := noneOr(o.moved, "poem stands", "poems stand") + " elsewhere"
	if o.putIn > 0 {
		words += ", " + counted(o.putIn, "poem", "poems") + " put in"
	}
	return words
}

// leavesOut says which poems would be left out of the book: those that came in
// since, by name, and those that were left out then.
func (o *keptOrder) leavesOut() string {
	words := ""
	switch n := len(o.cameIn); {
	case n == 1:
		words = o.cameIn[0] + " came in since and is left out"
	case n > 1:
		words = fmt.Sprintf("%s and %s came in since and are left out", o.cameIn[0], others(n-1))
	}
	if o.leftOut > 0 {
		words = joined(", ", words, counted(o.leftOut, "poem", "poems")+" of the book left out")
	}
	return words
}

// others are so many more, in words.
func others(n int) string {
	if n == 1 {
		return "1 other"
	}
	return fmt.Sprintf("%d others", n)
}

// tell says at the foot what the chosen order costs, and what can be done.
func (k *keptOrders) tell(i int) {
	d := k.w.desk
	if i < 0 {
		d.tell("Enter keeps the order of the book under this name · Esc leaves")
		return
	}
	o := &k.all[i]
	costs := ""
	if o.tollSeen && i > 0 {
		costs = tollWords(o.toll)
	}
	act := "↑ ↓ or the hand shows one on the pages · a name and Enter keeps the book’s order"
	switch {
	case i > 0 && o.isBook:
		act = "it is the book’s order · Delete drops the name"
	case i > 0:
		act = "Enter uses it · Delete drops it"
	}
	d.tell(joined(" · ", costs, act, "Esc leaves"))
}

// poemNames are the names of poems of the book, in a row.
func poemNames(c *pagemodel.Collection, ids []pagemodel.PoemID) []string {
	var names []string
	for _, id := range ids {
		if p, _, ok := c.Poem(id); ok {
			names = append(names, nameOfPoem(p))
		}
	}
	return names
}
