package manuscript

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"headland/pagemodel"
)

// The inside of lines is read by hand rather than by a Markdown parser. One of
// those reads blocks, links, HTML and entities too, any of which would change
// the poet's characters or lose the line's end; what remains, emphasis, is the
// small algorithm of emphasis.go, and our own marks have to be read with it.

// grammar is which marks are read.
type grammar struct {
	styles bool // emphasis, and the marks [italic], [bold] and [caps]
	gaps   bool // the marks [gap 2] and [tab 12]
}

func (k Kind) lines() grammar  { return grammar{styles: k == Markdown, gaps: true} }
func (k Kind) fields() grammar { return grammar{styles: k == Markdown} }

// inline is what is inside a line.
type inline struct {
	text  string
	spans []pagemodel.Span
	gaps  []pagemodel.Gap
}

// oddity is something that looks like a mark and was left as text.
type oddity struct {
	line int // from 0
	text string
}

// token is a piece of the raw text: characters, a run of delimiters, a gap or
// a line's end.
type token struct {
	text   string        // literal characters
	gap    pagemodel.Gap // its place not yet known; no width for none
	ends   bool          // the line ends here
	line   int           // from 0
	delim  delimiters
	styles [3]int // by how much italic, bold and small capitals begin or end before it
}

// styleOf are the styles in the order that tokens count them.
var styleOf = [3]pagemodel.Style{pagemodel.Italic, pagemodel.Bold, pagemodel.SmallCaps}

// styleMarks are the names of the marks for them.
var styleMarks = [3]string{"italic", "bold", "caps"}

// inlineReader reads the insides of the lines of a stanza, which emphasis may
// run across.
type inlineReader struct {
	grammar
	raw      string
	at       int
	line     int
	tokens   []token
	open     [3]int // tokens of style marks not yet closed; 0 for none
	openers  []int  // tokens of delimiters that may open
	bottoms  [12]int
	oddities []oddity
}

// readInline reads lines parted by LF.
func readInline(raw string, g grammar) ([]inline, []oddity) {
	p := &inlineReader{grammar: g, raw: raw, tokens: make([]token, 1, 8)}
	for p.at < len(raw) {
		p.next()
	}
	p.push(token{ends: true})
	for s, i := range p.open {
		p.unclosed(s, i)
	}
	return p.lines(), p.oddities
}

func (p *inlineReader) push(t token) {
	t.line = p.line
	p.tokens = append(p.tokens, t)
}

// next reads one token.
func (p *inlineReader) next() {
	switch c := p.raw[p.at]; {
	case c == '\n':
		p.push(token{ends: true})
		p.line++
		p.at++
	case c == '\\':
		p.escape()
	case c == '[':
		p.mark()
	case p.styles && (c == '*' || c == '_'):
		p.delimiterRun(c)
	default:
		n := strings.IndexAny(p.raw[p.at+1:], p.special())
		if n < 0 {
			n = len(p.raw) - p.at - 1
		}
		p.literal(n + 1)
	}
}

// special are the characters that a run of literal ones ends at.
func (p *inlineReader) special() string {
	if p.styles {
		return "\n\\[*_"
	}
	return "\n\\["
}

func (p *inlineReader) literal(n int) {
	p.push(token{text: p.raw[p.at : p.at+n]})
	p.at += n
}

// escape reads a backslash: before white or a sign it stands for that one;
// before anything else it is itself. At a line's end it is Markdown's hard
// break and vanishes; in text only where it is all that stands on the line.
func (p *inlineReader) escape() {
	rest := p.raw[p.at+1:]
	if rest == "" || rest[0] == '\n' {
		if p.styles || p.atLineStart() {
			p.at++
			return
		}
		p.literal(1)
		return
	}
	r, n := utf8.DecodeRuneInString(rest)
	if !p.escapable(r) {
		p.literal(1)
		return
	}
	p.at++
	p.literal(n)
}

func (p *inlineReader) escapable(r rune) bool {
	if unicode.IsSpace(r) || strings.ContainsRune(`\[]#>`, r) {
		return true
	}
	return p.styles && r < utf8.RuneSelf && (unicode.IsPunct(r) || unicode.IsSymbol(r))
}

func (p *inlineReader) atLineStart() bool { return p.at == 0 || p.raw[p.at-1] == '\n' }

// mark reads a mark in square brackets, or the bracket.
func (p *inlineReader) mark() {
	name, arg, n := markAt(p.raw[p.at:])
	switch {
	case n > 0 && p.gaps && isWhiteMark(name):
		p.gap(name, arg, n)
	case n > 0 && p.styles && arg == "" && p.style(name, n):
	default:
		p.literal(1)
	}
}

// isWhiteMark says that the mark is a gap's or a tab's.
func isWhiteMark(name string) bool { return name == "gap" || name == "tab" }

// gap reads a gap or a tab. Where a space stands before the mark, or it begins the line,
// one space after it belongs to the mark.
func (p *inlineReader) gap(name, arg string, n int) {
	em, ok := parseEms(arg)
	if !ok {
		p.oddities = append(p.oddities, oddity{p.line, p.raw[p.at:p.at+n] + " is no " + name + " of up to 60 ems: it was kept as text"})
		p.literal(n)
		return
	}
	spaced := p.atLineStart() || p.raw[p.at-1] == ' '
	p.push(token{gap: pagemodel.Gap{Width: em, Tab: name == "tab"}})
	p.at += n
	if spaced && strings.HasPrefix(p.raw[p.at:], " ") {
		p.at++
	}
}

// style reads [caps] or [/caps] and the like; false if the name is none.
func (p *inlineReader) style(name string, n int) bool {
	plain := strings.TrimPrefix(name, "/")
	for s, mark := range styleMarks {
		if plain != mark {
			continue
		}
		p.literal(n)
		last := len(p.tokens) - 1
		if plain == name {
			p.unclosed(s, p.open[s])
			p.open[s] = last
		} else {
			p.closeStyle(s, last, name)
		}
		return true
	}
	return false
}

func (p *inlineReader) closeStyle(s, last int, name string) {
	first := p.open[s]
	if first == 0 {
		p.oddities = append(p.oddities, oddity{p.line, "[" + name + "] closes nothing: it was kept as text"})
		return
	}
	p.tokens[first].text, p.tokens[last].text = "", ""
	p.tokens[first].styles[s]++
	p.tokens[last].styles[s]--
	p.open[s] = 0
}

// unclosed says that the style mark at a token, if there is one, stayed text.
func (p *inlineReader) unclosed(s, i int) {
	if i > 0 {
		p.oddities = append(p.oddities, oddity{p.tokens[i].line, "[" + styleMarks[s] + "] is never closed in its stanza: it was kept as text"})
	}
}

// lines puts the tokens together.
func (p *inlineReader) lines() []inline {
	var lines []inline
	var depth [3]int
	var l inline
	var b strings.Builder
	for _, t := range p.tokens {
		for s := range depth {
			depth[s] += t.styles[s]
		}
		start := b.Len()
		b.WriteString(t.text)
		b.WriteString(t.delim.literal())
		if style := styleFor(depth); style != 0 && b.Len() > start {
			l.spans = append(l.spans, pagemodel.Span{Start: start, End: b.Len(), Style: style})
		}
		l.addGap(start, t.gap)
		if t.ends {
			l.text = b.String()
			lines = append(lines, l)
			l = inline{}
			b.Reset()
		}
	}
	return lines
}

func styleFor(depth [3]int) pagemodel.Style {
	var style pagemodel.Style
	for s, n := range depth {
		if n > 0 {
			style |= styleOf[s]
		}
	}
	return style
}

// addGap adds white before an offset; gaps at one place add up, and a tab stands
// instead of whatever else is said there.
func (l *inline) addGap(at int, gap pagemodel.Gap) {
	if gap.Width == 0 {
		return
	}
	gap.At = at
	last := len(l.gaps) - 1
	switch {
	case last < 0 || l.gaps[last].At != at:
		l.gaps = append(l.gaps, gap)
	case gap.Tab:
		l.gaps[last] = gap
	case !l.gaps[last].Tab:
		l.gaps[last].Width = min(maxEms, l.gaps[last].Width+gap.Width)
	}
}

// withGap is the line with a gap or a tab.
func withGap(l pagemodel.Line, g pagemodel.Gap) pagemodel.Line {
	if g.Tab {
		return l.WithTab(g.At, g.Width)
	}
	return l.WithGap(g.At, g.Width)
}
