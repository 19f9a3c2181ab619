package ui

import (
	"fmt"
	"math"

	"headland/pagemodel"
	"headland/typeset"
)

// gapStep is the step in which gaps and indents grow and shrink.
const gapStep = pagemodel.OneEm / 2

// push is the hand on a word: to the right it opens a gap before it, or, on the
// first word, indents the line; to the left it closes them.
type push struct {
	ref   pagemodel.LineRef
	word  string
	at    int // byte offset of the word in the line's text
	first bool
	size  typeset.Length
	from  typeset.Length // where the hand took it
	was   pagemodel.Em   // the gap or indent then
	now   pagemodel.Em
}

// takeWord takes the word of a row at a byte offset of its line's text.
func takeWord(line pagemodel.Line, r *typeset.Row, offset int, x typeset.Length) (*push, bool) {
	i, ok := wordAt(line.Text(), offset)
	if !ok {
		return nil, false
	}
	w := pagemodel.Words(line.Text())[i]
	p := &push{ref: r.Ref(), word: line.Text()[w.Start:w.End], at: w.Start, first: i == 0, size: sizeOf(r), from: x}
	p.was = line.Indent()
	if !p.first {
		p.was = gapBefore(line, w.Start)
	}
	p.now = p.was
	return p, true
}

// wordAt is the word that the byte offset is in, or the last before it.
func wordAt(text string, offset int) (int, bool) {
	words := pagemodel.Words(text)
	for i := len(words) - 1; i >= 0; i-- {
		if offset >= words[i].Start {
			return i, true
		}
	}
	return 0, len(words) > 0
}

func gapBefore(line pagemodel.Line, at int) pagemodel.Em {
	for _, g := range line.Gaps() {
		if g.At == at {
			return g.Width
		}
	}
	return 0
}

// move snaps the gap to steps of half an em.
func (p *push) move(at typeset.Point, _ keysDown) {
	steps := math.Round(float64(at.X-p.from) / float64(gapStep.At(p.size)))
	p.now = max(0, p.was+pagemodel.Em(steps)*gapStep)
}

// stance is how wide it is.
func (p *push) stance() stance { return stance{width: p.now} }

// edit is the gap or the indent.
func (p *push) edit() pagemodel.Edit {
	switch {
	case p.now == p.was:
		return nil
	case p.first:
		return pagemodel.Indent{LineRef: p.ref, To: p.now}
	}
	return pagemodel.SetGap{LineRef: p.ref, At: p.at, Width: p.now}
}

// say tells how wide it is.
func (p *push) say() string {
	switch {
	case p.first && p.now == 0:
		return "No indent · Esc puts it back"
	case p.first:
		return fmt.Sprintf("Indent the line by %s · Esc puts it back", emWords(p.now))
	case p.now == 0:
		return "No gap before " + quoted(p.word) + " · Esc puts it back"
	}
	return fmt.Sprintf("A gap of %s before %s · Esc puts it back", emWords(p.now), quoted(p.word))
}

// emWords is a distance in ems as a printer writes it: "1½ em".
func emWords(e pagemodel.Em) string {
	whole, rest := e/pagemodel.OneEm, e%pagemodel.OneEm
	switch {
	case rest == gapStep && whole == 0:
		return "½ em"
	case rest == gapStep:
		return fmt.Sprintf("%d½ em", whole)
	case rest == 0:
		return fmt.Sprintf("%d em", whole)
	}
	return fmt.Sprintf("%.2f em", e.Ems())
}
