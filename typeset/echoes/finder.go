package echoes

import (
	"crypto/sha256"

	"headland/typeset"
)

// A Finder finds the echoes of one state of a book after another. It keeps what
// it read of each poem, so that after an edit only the poem that changed is read
// again. The zero Finder is ready. Only one goroutine may use it at a time.
type Finder struct {
	words *vocabulary
	poems map[[sha256.Size]byte]*poem // by the poem's key
}

// book is what is looked through: the poems in order with their words, and how
// often each stem is among them.
type book struct {
	set    *typeset.Setting
	words  *vocabulary
	poems  []*poem
	pages  [][]int // of their lines; 0 as long as nobody asked
	counts []tally // by stem
}

// tally is how often a stem stands in a book, and in how many poems; last is the
// last of those, from 1.
type tally struct{ words, poems, last int }

// Of finds the echoes in a book: what the poet marked, in that order, and then
// the words that repeat more than the language would expect, the most
// surprising first. What is marked isn't put forward once more.
func (f *Finder) Of(set *typeset.Setting) []Echo {
	b := f.read(set)
	return append(b.marked(), b.unmarked()...)
}

// read reads the poems that it has not read yet, and forgets those that are no
// longer there.
func (f *Finder) read(set *typeset.Setting) *book {
	c := set.Collection()
	if language := c.About().Language; f.words == nil || f.words.language != language {
		*f = Finder{words: newVocabulary(language)}
	}
	b := &book{set: set, words: f.words}
	kept := make(map[[sha256.Size]byte]*poem, len(f.poems))
	for _, p := range c.Poems() {
		read, ok := f.poems[p.Key()]
		if !ok {
			read = f.words.read(p)
		}
		kept[p.Key()] = read
		b.poems = append(b.poems, read)
	}
	f.poems, b.pages = kept, make([][]int, len(b.poems))
	b.count()
	return b
}

// count tallies the stems.
func (b *book) count() {
	b.counts = make([]tally, len(b.words.stems))
	for i, p := range b.poems {
		for _, t := range p.tokens {
			c := &b.counts[t.stem]
			if c.words++; c.last != i+1 {
				c.poems, c.last = c.poems+1, i+1
			}
		}
	}
}

// countOf is the tally of a stem, which the book may lack.
func (b *book) countOf(s stem) tally {
	if int(s) < len(b.counts) {
		return b.counts[s]
	}
	return tally{}
}
