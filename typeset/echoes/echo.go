package echoes

import "headland/pagemodel"

// An Occurrence is one place where an echo is heard.
type Occurrence struct {
	Ref      pagemodel.LineRef // its Line is 0 where the whole poem is marked
	From, To int               // byte offsets in the line's text; 0, 0 for a whole poem
	Page     int               // of the line's first row, or the poem's first page, as typeset.Setting counts them
	Number   int               // the poem's number in the book, from 1
}

// A Gap is how near an echo comes to itself.
type Gap struct {
	Poems int // 1 where two poems with it follow one another
	Pages int // 0 where two poems with it share a page
}

// An Echo is something that comes back in the book.
type Echo struct {
	// Name is what the poet called it, or a word in the form in which it stands
	// most often, the shortest of several.
	Name string

	// Marked says that the poet marked it.
	Marked bool

	// Found are all its places in the order of the book: none for what the poet
	// marked and took out since.
	Found []Occurrence

	// Poems is in how many poems it is found.
	Poems int

	// Expected is how often the language would have it in a book this long, and
	// Surprise the log likelihood ratio of finding it so much more often, 0 where
	// it isn't more often. Both are 0 where nothing is expected: where the poet
	// marked more than words, or words of grammar.
	Expected, Surprise float64

	// Nearest is the least distance between two of its places in different poems,
	// in poems and in pages, each by itself. Where there are none such it is zero,
	// and so are its Poems then only.
	Nearest Gap
}

// space counts the poems in which an echo is found and how near they come. Its
// places must be in the order of the book.
func (e *Echo) space() {
	for i, o := range e.Found {
		if i > 0 && o.Number == e.Found[i-1].Number {
			continue
		}
		if e.Poems++; i > 0 {
			e.Nearest = e.Nearest.orLess(Gap{o.Number - e.Found[i-1].Number, o.Page - e.Found[i-1].Page})
		}
	}
}

// orLess is the lesser of two gaps, in poems and in pages. The zero Gap is none.
func (g Gap) orLess(other Gap) Gap {
	if g.Poems == 0 {
		return other
	}
	return Gap{min(g.Poems, other.Poems), min(g.Pages, other.Pages)}
}
