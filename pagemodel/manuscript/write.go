package manuscript

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"headland/pagemodel"
)

// Options say how a manuscript is written. The zero Options are Markdown, and
// the poems as the poet keeps them.
type Options struct {
	Kind    Kind
	Edition bool // this edition's breaks are written as line breaks
	// PageEnds are the lines that begin a page where its end hides the stanza break
	// above them: the break is labelled as such. Reading passes over the label.
	PageEnds map[pagemodel.LineID]bool
}

// pageEndLabel stands in the white of a stanza break that a page end hides.
const pageEndLabel = "[page end: stanza break]"

// Write writes the poems of the book as a manuscript, UTF-8 with LF. Read gives
// the same collection back, but for identities and what was decided about long
// lines; the notices say what else could not be kept. The error is the
// writer's, or says that there is no poem.
func Write(w io.Writer, c *pagemodel.Collection, opts Options) ([]Notice, error) {
	out := writer{opts: opts}
	out.frontMatter(c.About(), c.Matter())
	poems := 0
	for _, e := range c.Order() {
		if e.Section != nil {
			out.section(e.Section)
			continue
		}
		out.poem(e.Poem)
		poems++
	}
	if poems == 0 {
		return nil, fmt.Errorf("the book has no poem: there is nothing to write")
	}
	_, err := w.Write(out.b.Bytes())
	return out.lost.notices(len(c.LeftOut())), err
}

type writer struct {
	opts Options
	b    bytes.Buffer
	lost losses
}

func (w *writer) line(s string) {
	w.b.WriteString(s)
	w.b.WriteByte('\n')
}

// apart leaves a blank line, but none at the top.
func (w *writer) apart() {
	if w.b.Len() > 0 {
		w.b.WriteByte('\n')
	}
}

func (w *writer) field(text string) string { return writeField(w.clean(text), w.opts.Kind) }

// tagged is a heading or an epigraph's line; nothing follows the sign where
// there is no text.
func (w *writer) tagged(sign, text string) {
	if text = w.field(text); text != "" {
		sign += " "
	}
	w.line(sign + text)
}

func (w *writer) section(s *pagemodel.Section) {
	w.apart()
	w.tagged("#", s.Title)
	w.epigraph(s.Epigraph)
}

func (w *writer) epigraph(lines []string) {
	for _, line := range lines {
		w.tagged(">", line)
	}
}

func (w *writer) poem(p *pagemodel.Poem) {
	h := p.Head()
	w.apart()
	w.tagged("##", h.Title)
	for i := range attributes {
		w.attribute(attributes[i].key, attributes[i].lines(h))
	}
	w.epigraph(h.Epigraph)
	for i, part := range p.Parts() {
		w.part(part, i > 0 || len(p.Parts()) > 1 && len(part.Stanzas()) == 0)
	}
	if h.Place != "" {
		w.apart()
		w.attribute(placeKey, strings.Split(h.Place, "\n"))
	}
}

// attribute writes "[key: …]", once for each line.
func (w *writer) attribute(key string, lines []string) {
	for _, line := range lines {
		w.line("[" + key + ": " + w.field(line) + "]")
	}
}

// part writes a part, with a heading where it has one or needs one to be seen.
func (w *writer) part(p pagemodel.Part, marked bool) {
	if marked || p.Heading() != "" {
		w.apart()
		w.tagged("###", p.Heading())
	}
	for _, s := range p.Stanzas() {
		w.stanza(s)
	}
}

// label says that a page end hides the stanza break above a line, where it does.
func (w *writer) label(below pagemodel.Line) {
	if w.opts.PageEnds[below.ID()] {
		w.apart()
		w.line(pageEndLabel)
	}
}

func (w *writer) stanza(s pagemodel.Stanza) {
	if s.Kind() == pagemodel.Prose {
		for _, l := range s.Lines() {
			w.label(l)
			w.apart()
			w.line(proseMark)
			w.lost.breaks(l, false)
			w.line(w.verse(l))
		}
		return
	}
	if len(s.Lines()) > 0 {
		w.label(s.Lines()[0])
	}
	w.apart()
	for _, l := range s.Lines() {
		w.lost.breaks(l, w.opts.Edition)
		if !w.opts.Edition {
			w.line(w.verse(l))
			continue
		}
		for _, piece := range l.InEdition() {
			w.line(w.verse(piece))
		}
	}
}
