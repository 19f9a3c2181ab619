package difference

import "headland/pagemodel"

// Kind is what is to be done, in the words of the trade where it has any.
type Kind string

// The kinds of change.
const (
	NewLine       Kind = "new line"
	RunOn         Kind = "run on"
	TurnAt        Kind = "turn at another word"
	IndentLine    Kind = "indent" // from nothing, or to another depth
	CancelIndent  Kind = "cancel indent"
	OpenStanza    Kind = "open a stanza"
	CloseStanza   Kind = "close a stanza"
	Delete        Kind = "delete"
	Insert        Kind = "insert"
	Substitute    Kind = "substitute"
	Transpose     Kind = "transpose"
	Italic        Kind = "italic"
	Roman         Kind = "roman" // no longer italic
	Bold          Kind = "bold"  // or no longer bold: Is says which
	SmallCapitals Kind = "small capitals"
	Space         Kind = "space"
	MovePoem      Kind = "move poem"
	MoveSection   Kind = "move section"
	Part          Kind = "part" // a part of a poem begins here, or no longer
	Prose         Kind = "prose"
	Verse         Kind = "verse"
	Design        Kind = "design" // of the book, or how a poem stands on its pages
)

// Change is one difference between two states of a book.
type Change struct {
	Kind Kind
	Poem pagemodel.PoemID // 0: of the book: its design, its title page, a section, the prelims or end matter
	// Section is the section whose head, or whose place, the change is of; else 0.
	Section pagemodel.SectionID
	// Line is the poet's line, as it was, in which the change stands or after
	// which it stands; zero where it stands in the poem's head or in the book.
	Line pagemodel.LineRef
	// Field says where it stands when it is in no line: "title", "dedication",
	// "imprint", "measure" …; else "".
	Field string
	// From and To are byte offsets in the text, as it was, of that line or field,
	// the lines of a field parted by "\n": the words concerned; where they are
	// equal, a point between two words.
	From, To int
	// Through is the poet's line, as it was, that the words concerned go on to; 0
	// where they all stand in Line. To is then the end of Line's text.
	Through pagemodel.LineID
	// Was and Is quote the words between “ and ”; "/" stands for the end of a line
	// and "//" for the end of a stanza.
	Was, Is string
	// Key is a lasting name of the change: it depends neither on the other changes
	// nor on a number in a list.
	Key string

	about string // what tells it from others of its kind in the same line or field
	at    int    // the atom at which it stands, for their order
	op    operation
}
