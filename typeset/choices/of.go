package choices

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/prosody"
)

// Of gives the choices for a line of a set book, overlong or not, head by head
// and by place: a break at each place where a poet may break, in the poem and in
// this edition, into three where no two parts fit; the words at which an overlong
// line may turn; and what changes the space round it: room for an overlong line,
// words over the line's end, indents, gaps, white above. A choice that would change
// nothing is left out. Each is an edit that was done and set; setter must be the
// one that made the setting, and the work is on its goroutine. lex is nil where
// nobody knows how the book's language sounds. A paragraph of prose has no
// choices, and the error says so, as it does of a line that is not in the book.
// Whatever is chosen, the line stays: to run it on with the line above is a choice
// of that line.
func Of(setter *typeset.Setter, set *typeset.Setting, ref pagemodel.LineRef, lex *prosody.Lexicon) ([]Choice, error) {
	p, at, err := set.Collection().Line(ref)
	if err != nil {
		return nil, err
	}
	if p.Stanza(at).Kind() == pagemodel.Prose {
		return nil, fmt.Errorf("%q is a paragraph of prose, which has no line ends to choose", phraseAt(p.Line(at).Text(), 0)+" …")
	}
	f := newFinder(setter, set, p, at, lex)
	f.breaks()
	if f.overrun > 0 {
		f.turns()
		f.room()
	}
	f.neighbours()
	f.shape()
	f.edge()
	for i := range f.all {
		f.all[i].place = i
	}
	return f.all, nil
}

// finder finds the choices of one line.
type finder struct {
	setter  *typeset.Setter
	set     *look // as the book stands
	ref     pagemodel.LineRef
	poem    *pagemodel.Poem
	at      pagemodel.Place
	line    pagemodel.Line
	overrun typeset.Length // of the whole line
	voice   voice
	before  standing
	spots   spotted                   // the lines as they stand
	pieces  map[[2]int]typeset.Length // by how much pieces of the line, by their offsets, overrun
	heard   map[string]heard          // how breaks in the poem sound, by their places
	all     []Choice
}

func newFinder(setter *typeset.Setter, set *typeset.Setting, p *pagemodel.Poem, at pagemodel.Place, lex *prosody.Lexicon) *finder {
	f := &finder{
		setter: setter, set: lookAt(set), poem: p, at: at, line: p.Line(at),
		ref:    pagemodel.LineRef{Poem: p.ID(), Line: p.Line(at).ID()},
		pieces: map[[2]int]typeset.Length{}, heard: map[string]heard{},
	}
	f.voice, f.before, f.spots = newVoice(lex, p, at), f.set.standing(f.ref), spotsOf(f.set, p.ID())
	if rows := f.set.rows(f.ref); len(rows) > 0 {
		f.overrun = rows[0].Overrun
	}
	return f
}

// whole are the edits that take back this edition's breaks, if there are any.
func (f *finder) whole() []pagemodel.Edit {
	if len(f.line.Breaks()) == 0 {
		return nil
	}
	return []pagemodel.Edit{pagemodel.Join{LineRef: f.ref, In: pagemodel.InEdition}}
}

// undecided are the edits that take back all that was decided about the line, if
// anything was.
func (f *finder) undecided() []pagemodel.Edit {
	if !f.line.Kept() {
		return f.whole()
	}
	return []pagemodel.Edit{pagemodel.Unsettle{LineRef: f.ref}}
}

// try sets the book after an edit. It is false where the edit can't be done, or
// changes nothing.
func (f *finder) try(e pagemodel.Edit) (*look, bool) {
	tried, err := f.set.Try(e)
	if err != nil || tried == f.set.Setting || f.asItWas(tried.Collection()) {
		return nil, false
	}
	return lookAt(tried), true
}

// asItWas says that a collection is set as the book is, though it was made anew:
// what was decided was taken back and decided again.
func (f *finder) asItWas(c *pagemodel.Collection) bool {
	p, _, ok := c.Poem(f.ref.Poem)
	return ok && p.Key() == f.poem.Key() && c.Design() == f.set.Collection().Design()
}

// tell fills in what a choice does, from the book as it was set after it, and
// adds it. lines are those of the poem that it is about, in order.
func (f *finder) tell(c Choice, tried *look, lines ...pagemodel.LineID) {
	c.Rows = tried.rowsOf(f.ref.Poem, lines)
	if c.Parts == nil {
		c.Parts = linesOf(tried, c.Rows)
	} else if c.Head == InEdition {
		overrunAsSet(c.Parts, c.Rows)
	}
	c.Alone = alone(tried, c.Rows)
	if !f.heardBefore(&c) {
		f.voice.hear(c.Parts, tried.below(pagemodel.LineRef{Poem: f.ref.Poem, Line: lines[len(lines)-1]}))
		if c.Head != LetTurn {
			c.Echoes = f.voice.echoes(c.Parts, lines)
		}
	}
	c.Moves, c.moved = f.moves(tried)
	c.Says = append(c.Says, f.says(&c)...)
	f.all = append(f.all, c)
}

// linesOf are the lines that rows show, as parts. A line that this edition breaks
// so that all of it fits does not overrun; where it would fit on one row and a piece
// of it does not, it overruns by what is carried over.
func linesOf(tried *look, rows []typeset.Row) []Part {
	var parts []Part
	var whole typeset.Length // by how much the line exceeds its room on one row
	for i := range rows {
		row := &rows[i]
		if i == 0 || row.Line != rows[i-1].Line {
			p, at, err := tried.Collection().Line(row.Ref())
			if err != nil {
				return nil
			}
			parts, whole = append(parts, Part{Text: p.Line(at).Text()}), row.Overrun
		}
		part := &parts[len(parts)-1]
		switch over := row.Turn == typeset.Turnover || row.Width > row.Room; {
		case over && whole > 0:
			part.Overrun = whole
		case over:
			part.Overrun += row.Width
		}
	}
	return parts
}
