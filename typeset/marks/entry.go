package marks

import (
	"strconv"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/corrections"
)

// An entry is what one correction has in the margin.
type entry struct {
	c        *corrections.Correction
	matter   string         // new matter to be set
	italic   bool           // in italic
	before   *shape         // a mark before the matter: of a new line, to which the correction belongs
	shape    *shape         // nil for words that replace others
	amount   bool           // the matter says how much the mark asks for, which means nothing without it
	listed   bool           // the matter is to be read in the list
	note     string         // an instruction, circled; then there is nothing else
	baseline typeset.Length // of its row
	x        typeset.Length // of its place in the row
}

// A bit is a piece of an entry that is not parted: a word, a mark, a number.
type bit struct {
	text   string
	italic bool
	size   typeset.Length
	shape  *shape
	width  typeset.Length
	gap    typeset.Length // white before it, unless it begins a line
	glued  bool           // it stays on the line of the bit before it
	entry  typeset.Length // the width of the entry that it begins behind another, else 0
	whose  pagemodel.Whose
}

// The sizes of what stands in a wide margin, of the size of the book's verse. The
// number is small, so that it is not taken for new matter.
const (
	matterSize = 0.92
	labelSize  = 0.66
	noteSize   = 0.72
)

// smaller is what those sizes are multiplied by in a narrow margin.
const smaller = 0.88

// leastSize is the size under which nothing in the margins is set, so that a whole
// page on a screen can be read: common practice, no source.
var leastSize = pagemodel.Pt(8)

// bits are the pieces of an entry in order. Without its matter the number says
// where that is to be read.
func (m *marker) bits(c *column, e *entry, short bool) []bit {
	if short && e.amount {
		return m.labelBits(c, e, true, false)
	}
	size := c.sized(matterSize)
	var all []bit
	if e.before != nil {
		all = append(all, bit{shape: e.before, size: size, width: times(size, e.before.width), whose: e.c.Whose})
	}
	if e.note == "" && !short {
		all = append(all, m.wordBits(e, e.matter, size)...)
	}
	tail := func(s *shape, glued bool) {
		all = append(all, bit{shape: s, size: size, width: times(size, s.width), gap: size / 4, glued: glued, whose: e.c.Whose})
	}
	if e.note != "" {
		all = m.wordBits(e, e.said(short), c.sized(noteSize))
	} else if e.shape != nil {
		tail(e.shape, false)
	}
	if e.c.State == pagemodel.Queried {
		tail(&queryShape, len(all) > 0)
	}
	if e.note == "" {
		tail(&endShape, len(all) > 0)
	}
	return append(all, m.labelBits(c, e, short && e.matter != "", e.note == "" && len(all) > 0)...)
}

// labelBits are the number and letters of an entry, and that they are to be looked
// up in the list.
func (m *marker) labelBits(c *column, e *entry, see, glued bool) []bit {
	size := c.sized(labelSize)
	label := m.textBit(e, strconv.Itoa(e.c.Number)+" "+string(e.c.Whose), size, false)
	if !see {
		label.gap, label.glued = c.sized(matterSize)/4, glued
		return []bit{label}
	}
	word := m.textBit(e, "see", size, false)
	word.gap, word.glued = c.sized(matterSize)/4, glued
	label.gap = m.words(" ", size, false).Width
	return []bit{word, label}
}

// said is the instruction, or without its particulars the kind alone.
func (e *entry) said(short bool) string {
	if short {
		return string(e.c.Change.Kind)
	}
	return e.note
}

// signs are the marks for the signs with which changes quote the end of a line and
// of a stanza: a stroke in the margin ends a correction.
var signs = map[string]*shape{"/": &newLineShape, "//": &openShape}

// wordBits are words one by one.
func (m *marker) wordBits(e *entry, words string, size typeset.Length) []bit {
	var all []bit
	for _, w := range strings.Fields(words) {
		b := m.textBit(e, w, size, e.italic)
		if s := signs[w]; s != nil && e.note == "" {
			b = bit{shape: s, size: size, width: times(size, s.width), whose: e.c.Whose}
		}
		b.gap = m.words(" ", size, e.italic).Width
		all = append(all, b)
	}
	return all
}

func (m *marker) textBit(e *entry, text string, size typeset.Length, italic bool) bit {
	return bit{text: text, italic: italic, size: size, width: m.words(text, size, italic).Width, whose: e.c.Whose}
}

// words are set in the book's own face, without its bold.
func (m *marker) words(text string, size typeset.Length, italic bool) typeset.Run {
	return m.setter.Words(text, typeset.WordStyle{Family: m.design.Face, Size: size, Italic: italic})
}

// most is how many lines of a wide margin new matter may take; what needs more is
// read in the list. In a narrow one it takes a line, so that marks stay beside
// their rows.
const most = 3

// fitted are an entry's bits for lines of that width in a column: short where they
// would take too many, or hold a word that is too long. The number goes below the
// rest where it must.
func (m *marker) fitted(c *column, e *entry, width typeset.Length) []bit {
	whole, lines := m.bits(c, e, false), most
	if c.narrow && e.note == "" && !e.amount {
		lines = 1
	}
	if e.listed || len(wrapped(whole, width)) > lines || widest(whole[:len(whole)-1]) > width {
		whole = m.bits(c, e, true)
	}
	if widest(whole) > width {
		for i := max(0, len(whole)-2); i < len(whole); i++ {
			whole[i].glued = whole[i].glued && whole[i].shape != nil
		}
	}
	return whole
}

// widest is the width of the widest bit with what is glued to it.
func widest(bits []bit) typeset.Length {
	var most typeset.Length
	for _, line := range wrapped(bits, 0) {
		most = max(most, widthOf(line))
	}
	return most
}

// wrapped are bits in lines, as many on each as its width takes.
func wrapped(bits []bit, width typeset.Length) [][]bit {
	var lines [][]bit
	for i := 0; i < len(bits); {
		group := i + 1
		for group < len(bits) && bits[group].glued {
			group++
		}
		need := max(bits[i].entry, widthOf(bits[i:group]))
		if last := len(lines) - 1; last >= 0 && widthOf(lines[last])+bits[i].gap+need <= width {
			lines[last] = append(lines[last], bits[i:group]...)
		} else {
			lines = append(lines, bits[i:group:group])
		}
		i = group
	}
	return lines
}

// widthOf is how wide bits are beside each other.
func widthOf(bits []bit) typeset.Length {
	var w typeset.Length
	for i := range bits {
		if i > 0 {
			w += bits[i].gap
		}
		w += bits[i].width
	}
	return w
}
