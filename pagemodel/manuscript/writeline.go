package manuscript

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"headland/pagemodel"
)

// verse writes a line.
func (w *writer) verse(l pagemodel.Line) string {
	l = w.writable(l)
	start := lineStart{indent: l.Indent(), rng: l.Range(), dropped: l.Dropped(), opens: l.OpensPage(), tied: l.Tied(), white: l.Above()}
	if w.opts.Kind == Text {
		w.lost.styles += len(l.Spans())
		l = l.WithSpans(nil)
	}
	raw := writeInline(l, w.opts.Kind)
	if raw == "" {
		raw = `\`
	}
	w.lost.length(l)
	return start.written() + raw
}

// writeInline writes the inside of a line with * and **, if it is read back
// so, else with marks, which serve for anything.
func writeInline(l pagemodel.Line, k Kind) string {
	e := lineEncoder{line: l, escaper: escaper{text: l.Text(), grammar: k.lines(), verse: true}, stars: true}
	raw := e.encode()
	if len(l.Spans()) == 0 || readsAs(raw, l) {
		return raw
	}
	e = lineEncoder{line: l, escaper: e.escaper}
	return e.encode()
}

func readsAs(raw string, l pagemodel.Line) bool {
	lines, odd := readInline(raw, Markdown.lines())
	in := lines[0]
	got := pagemodel.NewLine(0, in.text).WithSpans(in.spans)
	return odd == nil && in.text == l.Text() && slices.Equal(got.Spans(), l.Spans()) && slices.Equal(in.gaps, l.Gaps())
}

// lineEncoder writes the inside of a line.
type lineEncoder struct {
	escaper
	line  pagemodel.Line
	stars bool
	b     strings.Builder
	span  int // how many spans are behind
	gap   int // how many gaps are behind
	style pagemodel.Style
}

func (e *lineEncoder) encode() string {
	for i, r := range e.text {
		e.place(i)
		e.write(&e.b, i, r)
	}
	e.place(len(e.text))
	return e.b.String()
}

// place writes what stands before the byte offset: the end of styles, a gap,
// the start of styles.
func (e *lineEncoder) place(at int) {
	next := e.styleAt(at)
	e.close(e.style &^ next)
	for gaps := e.line.Gaps(); e.gap < len(gaps) && gaps[e.gap].At <= at; e.gap++ {
		e.writeGap(gaps[e.gap], at)
	}
	e.open(next &^ e.style)
	e.style = next
}

func (e *lineEncoder) styleAt(at int) pagemodel.Style {
	spans := e.line.Spans()
	for e.span < len(spans) && spans[e.span].End <= at {
		e.span++
	}
	if e.span == len(spans) || spans[e.span].Start > at {
		return 0
	}
	return spans[e.span].Style
}

// writeGap writes a gap or a tab with the space after it that belongs to the mark, where
// it will be read so.
func (e *lineEncoder) writeGap(gap pagemodel.Gap, at int) {
	out, name := e.b.String(), "gap"
	if gap.Tab {
		name = "tab"
	}
	e.b.WriteString("[" + name + " " + formatEms(gap.Width) + "]")
	if (out == "" || strings.HasSuffix(out, " ")) && at < len(e.text) {
		e.b.WriteByte(' ')
	}
}

func (e *lineEncoder) open(s pagemodel.Style) {
	e.b.WriteString(e.starsFor(s))
	e.marks(s, "[")
}

func (e *lineEncoder) close(s pagemodel.Style) {
	e.marks(s, "[/")
	e.b.WriteString(e.starsFor(s))
}

// starsFor is as many stars as the styles are worth: one for italic, two for
// bold, three for both, which is what the two constants add up to.
func (e *lineEncoder) starsFor(s pagemodel.Style) string {
	if !e.stars {
		return ""
	}
	return strings.Repeat("*", int(s&(pagemodel.Italic|pagemodel.Bold)))
}

// marks writes marks for the styles that stars don't stand for.
func (e *lineEncoder) marks(s pagemodel.Style, bracket string) {
	for i, style := range styleOf {
		if s&style != 0 && (!e.stars || style == pagemodel.SmallCaps) {
			e.b.WriteString(bracket + styleMarks[i] + "]")
		}
	}
}

// clean is text without the characters that no manuscript holds: an end of
// line becomes a space, a control is left out.
func (w *writer) clean(text string) string {
	if utf8.ValidString(text) && strings.IndexFunc(text, isControl) < 0 {
		return text
	}
	w.lost.controls++
	return strings.Map(cleanRune, text)
}

func cleanRune(r rune) rune {
	switch {
	case !isControl(r):
		return r
	case unicode.IsSpace(r):
		return ' '
	}
	return -1
}

// writable is the line with clean text and with an indent and gaps that can be
// read again; what stands in the text moves with its words.
func (w *writer) writable(l pagemodel.Line) pagemodel.Line {
	text := w.clean(l.Text())
	indent, white := min(maxEms, max(0, l.Indent())), min(maxWhite, max(0, l.Above()))
	bad := func(g pagemodel.Gap) bool { return g.Width <= 0 || g.Width > maxEms }
	if text == l.Text() && indent == l.Indent() && white == l.Above() && !slices.ContainsFunc(l.Gaps(), bad) {
		return l
	}
	moved := func(at int) int { return len(strings.Map(cleanRune, l.Text()[:min(max(0, at), len(l.Text()))])) }
	c := pagemodel.NewLine(l.ID(), text).WithIndent(indent).WithRange(l.Range()).WithDropped(l.Dropped())
	c = c.WithOpensPage(l.OpensPage()).WithTied(l.Tied()).WithAbove(white)
	var spans []pagemodel.Span
	for _, s := range l.Spans() {
		spans = append(spans, pagemodel.Span{Start: moved(s.Start), End: moved(s.End), Style: s.Style})
	}
	c = c.WithSpans(spans)
	for _, g := range l.Gaps() {
		if g.Width = min(g.Width, maxEms); g.Width > 0 {
			g.At = moved(g.At)
			c = withGap(c, g)
		}
	}
	w.lost.measure(indent != l.Indent() || white != l.Above() || slices.ContainsFunc(l.Gaps(), bad))
	return c
}
