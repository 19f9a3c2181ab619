package choices

import (
	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/prosody"
)

// Head is what a choice is a kind of.
type Head int

// The heads, in the order in which they are shown.
const (
	InPoem    Head = iota // the poet's own line ends there
	InEdition             // this book breaks the line, the poem keeps it
	LetTurn               // no break: the setting carries the tail over
	Space                 // what is round the line changes, or its neighbours do
)

var headNames = [...]string{"a break in the poem", "in this edition", "let it turn", "space"}

// String is the head in words.
func (h Head) String() string { return headNames[h] }

// Part is a piece of what the line becomes: a line of the poem, what this
// edition makes a line of its own, or a row of a line that turns.
type Part struct {
	Text      string
	Overrun   typeset.Length // by how much it exceeds its room, 0 where it fits
	Syllables int            // 0 in a language without a dictionary, as are Stress and Guessed, unless the poet has said how all its words go
	Stress    string         // a digit a syllable, as prosody.Measure has it
	Guessed   bool           // some word of it is only guessed
	Guesses   []string       // those words as they are written, in order
	End       prosody.End    // by signs alone in a language without a dictionary
	LastWord  string
}

// Choice is one way of settling a line, and what it would do. Nothing in it may
// be changed.
type Choice struct {
	Head   Head
	Title  string         // in words: "before “curtain”"
	At     []int          // byte offsets in the line's text that it breaks or turns at
	Edit   pagemodel.Edit // takes it, in one step
	Rows   []typeset.Row  // as set: X from the left of the measure, Baseline from the head of the first row's line, Grid from 1
	Parts  []Part         // what the line becomes, and the line below where that changes too
	Alone  string         // words that would stand alone on a row, parted by commas; "" for none
	Echoes []string       // in words: what its new line ends and lengths are like
	Moves  string         // in words: what changes place; "" for nothing
	Says   []string       // all of it in short phrases, in the order in which to show them

	place int // among all choices of the line
	moved int // how many other poems change place
}
