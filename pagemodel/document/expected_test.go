package document

import (
	"fmt"
	"strings"

	"headland/pagemodel"
)

// What a manuscript must say, worked out from the collection without any of the
// code that makes documents.

// expected is a collection's blocks, in their order.
func expected(c *pagemodel.Collection, o Options) []block {
	x := expecter{o: o}
	x.plain("Title", 0, c.About().Title)
	x.plain("Author", 0, c.About().Poet)
	x.lines("Epigraph", c.About().Epigraph)
	for _, e := range c.Order() {
		if e.Section != nil {
			x.plain("Heading 1", 1, named(e.Section.Title))
			x.lines("Epigraph", e.Section.Epigraph)
			continue
		}
		x.poem(e.Poem)
	}
	return x.blocks
}

func named(title string) string {
	if title == "" {
		return "[no title]"
	}
	return title
}

type expecter struct {
	o      Options
	blocks []block
}

func (x *expecter) plain(style string, level int, text string) {
	if text == "" {
		return
	}
	b := block{style: style, level: level}
	b.add(text, 0)
	x.blocks = append(x.blocks, b)
}

func (x *expecter) lines(style string, lines []string) {
	x.plain(style, 0, strings.Join(lines, "\n"))
}

func (x *expecter) poem(p *pagemodel.Poem) {
	h := p.Head()
	x.plain("Heading 2", 2, named(h.Title))
	x.plain("Poem subtitle", 0, h.Subtitle)
	x.plain("Poem dedication", 0, h.Dedication)
	x.lines("Epigraph", h.Epigraph)
	for i, part := range p.Parts() {
		x.plain("Heading 3", 3, part.Heading())
		if i > 0 && part.Heading() == "" {
			x.plain("Label", 0, "[another part, without a heading]")
		}
		for _, s := range part.Stanzas() {
			x.stanza(s)
		}
	}
	x.plain("Closing place", 0, h.Place)
	if h.Note != "" {
		x.plain("Label", 0, "[note, for the notes of the book]")
		x.plain("Poem note", 0, h.Note)
	}
}

func (x *expecter) stanza(s pagemodel.Stanza) {
	if page, ok := x.o.PageEnds[s.Lines()[0].ID()]; ok {
		x.plain("Label", 0, "[stanza break at the end of page "+page+"]")
	}
	if s.Kind() == pagemodel.Prose {
		b := block{style: "Prose"}
		lineIn(&b, s.Lines()[0], nil)
		x.blocks = append(x.blocks, b)
		return
	}
	b := block{style: "Verse"}
	for i, l := range s.Lines() {
		if i > 0 {
			b.add("\n", 0)
		}
		b.add(strings.Repeat("\u00a0\n", l.Above()), 0)
		breaks := l.Breaks()
		if !x.o.Edition {
			breaks = nil
		}
		lineIn(&b, l, breaks)
	}
	x.blocks = append(x.blocks, b)
}

// lineIn adds a line, character by character, with line ends at the breaks.
func lineIn(b *block, l pagemodel.Line, breaks []int) {
	b.add(white(l.Indent()), 0)
	if l.Text() == "" {
		b.add("\u00a0", 0)
	}
	for at, r := range l.Text() {
		for _, br := range breaks {
			if br == at {
				dropSpace(b)
				b.add("\n"+white(l.Indent()), 0)
			}
		}
		gapIn(b, l, at)
		b.add(string(r), int(styleIn(l, at)))
	}
	gapIn(b, l, len(l.Text()))
}

// dropSpace takes the word space at the end of a block away.
func dropSpace(b *block) {
	last := &b.lines[len(b.lines)-1]
	for n := len(*last); n > 0 && (*last)[n-1].char == ' '; n-- {
		*last = (*last)[:n-1]
	}
}

func gapIn(b *block, l pagemodel.Line, at int) {
	for _, g := range l.Gaps() {
		switch {
		case g.At == at && g.Tab:
			b.add("\t", 0)
		case g.At == at:
			b.add(white(g.Width), 0)
		}
	}
}

func styleIn(l pagemodel.Line, at int) (style pagemodel.Style) {
	for _, s := range l.Spans() {
		if at >= s.Start && at < s.End {
			style |= s.Style
		}
	}
	return style
}

// white is white to the nearest quarter of an em.
func white(width pagemodel.Em) string {
	if width <= 0 {
		return ""
	}
	quarters := max(1, (int(width)+125)/250)
	return strings.Repeat("\u2003", quarters/4) + []string{"", "\u2005", "\u2002", "\u2002\u2005"}[quarters%4]
}

// exact shows blocks with everything in them.
func exact(blocks []block) []string {
	var out []string
	for _, b := range blocks {
		var s strings.Builder
		fmt.Fprintf(&s, "%s:", b.style)
		for _, l := range b.lines {
			s.WriteString(" ⏎ ")
			style := 0
			for _, c := range l {
				if c.style != style {
					fmt.Fprintf(&s, "{%d}", c.style)
					style = c.style
				}
				s.WriteRune(c.char)
			}
		}
		out = append(out, s.String())
	}
	return out
}

// loose shows blocks with what pandoc keeps: of several spaces, or a tab, one space;
// none at a line's ends; and the styles of characters, not of spaces. Only the
// styles asked for are shown.
func loose(blocks []block, styles int) []string {
	var out []string
	for _, b := range blocks {
		var s strings.Builder
		fmt.Fprintf(&s, "%d:", b.level)
		for _, l := range b.lines {
			s.WriteString(" ⏎ ")
			style, space, any := 0, false, false
			for _, c := range l {
				if c.char == ' ' || c.char == '\t' {
					space = any
					continue
				}
				if space {
					s.WriteByte(' ')
				}
				if c.style&styles != style {
					style = c.style & styles
					fmt.Fprintf(&s, "{%d}", style)
				}
				s.WriteRune(c.char)
				space, any = false, true
			}
		}
		out = append(out, s.String())
	}
	return out
}
