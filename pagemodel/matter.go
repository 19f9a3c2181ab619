package pagemodel

import (
	"fmt"
	"slices"
)

// MatterKind says what a page of the prelims or the end matter is.
type MatterKind string

// The kinds of matter. The first seven are prelims, in the order in which they
// stand (New Hart's Rules 1.2.1); the last three follow the poems.
const (
	HalfTitle        MatterKind = "half-title"
	AlsoBy           MatterKind = "also by"
	TitlePage        MatterKind = "title"
	Imprint          MatterKind = "imprint"
	DedicationPage   MatterKind = "dedication"
	EpigraphPage     MatterKind = "epigraph"
	ContentsPage     MatterKind = "contents"
	Acknowledgements MatterKind = "acknowledgements"
	NotesPage        MatterKind = "notes"
	IndexPage        MatterKind = "index"
)

// MatterKinds are all kinds in the order in which they stand in the book.
var MatterKinds = []MatterKind{
	HalfTitle, AlsoBy, TitlePage, Imprint, DedicationPage, EpigraphPage, ContentsPage,
	Acknowledgements, NotesPage, IndexPage,
}

// Prelim says that the kind stands before the poems.
func (k MatterKind) Prelim() bool {
	i := slices.Index(MatterKinds, k)
	return i >= 0 && i <= slices.Index(MatterKinds, ContentsPage)
}

// Made says that the kind's words come from the book itself: the contents and
// the index always, the half-title and the title unless the poet wrote others,
// the notes from the poems' own notes.
func (k MatterKind) Made() bool {
	switch k {
	case HalfTitle, TitlePage, ContentsPage, NotesPage, IndexPage:
		return true
	}
	return false
}

// MatterPage is one piece of the prelims or end matter. It takes as many pages
// as it needs.
type MatterPage struct {
	Kind MatterKind `json:"kind"`
	// Title is its heading; "" is the usual one: "Contents", "Notes" …, and none
	// for a dedication, an epigraph or an imprint.
	Title string `json:"title,omitempty"`
	// Text is the poet's words, line by line; an empty line is white. Where the
	// kind is made, words here stand below or instead of what is made: instead for
	// a half-title or title, below the heading for the others.
	Text []string `json:"text,omitempty"`
}

// Alphabet is how the index is put in order.
type Alphabet int

// Word by word, as British indexes are, or letter by letter, as American ones.
const (
	WordByWord Alphabet = iota
	LetterByLetter
)

var alphabetNames = [...]string{WordByWord: "word by word", LetterByLetter: "letter by letter"}

// String is the order in words.
func (a Alphabet) String() string { return nameOf(alphabetNames[:], int(a)) }

// ParseAlphabet reads an order by its words.
func ParseAlphabet(s string) (Alphabet, error) {
	n, err := indexOf(alphabetNames[:], "order of an index", s)
	return Alphabet(n), err
}

// Matter is the prelims and the end matter: at most one page of each kind, in
// the order of [MatterKinds]. The zero Matter is a book of poems alone.
type Matter struct {
	Pages []MatterPage `json:"pages,omitempty"`
	// Roman numbers the prelims in lower-case roman and begins the arabic
	// sequence with the poems; else one arabic sequence runs through the book.
	Roman bool `json:"roman,omitempty"`
	// Parts lists the parts of poems in the contents too.
	Parts    bool     `json:"parts,omitempty"`
	Alphabet Alphabet `json:"alphabet,omitempty"`
}

// Page is the page of a kind, or false.
func (m Matter) Page(k MatterKind) (MatterPage, bool) {
	for _, p := range m.Pages {
		if p.Kind == k {
			return p, true
		}
	}
	return MatterPage{}, false
}

// With is the matter with the page put in its place, or put instead of the one
// of its kind.
func (m Matter) With(page MatterPage) Matter {
	m = m.Without(page.Kind)
	m.Pages = append(m.Pages, page)
	slices.SortFunc(m.Pages, func(a, b MatterPage) int {
		return slices.Index(MatterKinds, a.Kind) - slices.Index(MatterKinds, b.Kind)
	})
	return m
}

// Without is the matter without a page of that kind.
func (m Matter) Without(k MatterKind) Matter {
	m.Pages = slices.DeleteFunc(slices.Clone(m.Pages), func(p MatterPage) bool { return p.Kind == k })
	return m
}

// UsualMatter is what a new book begins with.
func UsualMatter() Matter {
	return Matter{Pages: []MatterPage{{Kind: HalfTitle}, {Kind: TitlePage}, {Kind: ContentsPage}}}
}

// check says in words what makes the matter impossible, or nil.
func (m Matter) check() error {
	seen := map[MatterKind]bool{}
	for _, p := range m.Pages {
		if !slices.Contains(MatterKinds, p.Kind) {
			return fmt.Errorf("%q is no page of a book's prelims or end matter", p.Kind)
		}
		if seen[p.Kind] {
			return fmt.Errorf("there are two pages of the kind %q: a book has one", p.Kind)
		}
		seen[p.Kind] = true
	}
	return nil
}
