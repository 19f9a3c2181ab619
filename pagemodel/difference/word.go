package difference

import (
	"strings"

	"headland/pagemodel"
)

// A text is words with a boundary before each: the two take turns, so that what
// differs is either a word or what parts it from the word above or before it.

// level is how far a boundary parts two words.
type level uint8

// The levels, each of which includes the ones before it.
const (
	within   level = iota // a line goes on
	lineEnd               // a printed line ends: the poem's or this edition's
	stanza                // and a stanza
	partEnds              // and a part of the poem
)

// void says why a token has no words.
type void uint8

// An empty line, a stanza without lines and a part without stanzas hold no words.
const (
	hasWords void = iota
	emptyLine
	emptyStanza
	emptyPart
)

// look is how a printed line begins.
type look struct {
	indent  pagemodel.Em
	above   int32 // lines of white
	rng     int8  // a pagemodel.Range
	dropped bool
	opens   bool // a page
	tied    bool // to the page of the line above
}

// boundary is what stands between two words. Below the level lineEnd it has no
// look; below the level stanza no kind; below partEnds no heading.
type boundary struct {
	level      level
	kind       int8 // a pagemodel.StanzaKind
	turn       bool // an overlong line is to turn here
	look       look
	lead       string // the white characters before the word
	leadStyles string // of those characters
	gap        string // white put before the word, in words; "" for none
	heading    string
}

// word is some characters without a space between them and the style of each
// byte; no styles are plain ones.
type word struct {
	text, styles string
	void         void
}

// token is a word and the boundary before it.
type token struct {
	boundary
	word
}

// source is the bytes of a line, or of a field, that a word was read from.
type source struct {
	line       pagemodel.LineID
	start, end int
}

// body is a poem's lines, or the text of a field, as tokens. There is at least
// one.
type body struct {
	tokens  []token
	sources []source // of the tokens, where somebody asked for them
}

// stylesOf has a byte for each byte of a line's text: its style. It is "" where
// all is plain.
func stylesOf(l *pagemodel.Line) string {
	if len(l.Spans()) == 0 {
		return ""
	}
	styles := make([]byte, len(l.Text()))
	for _, s := range l.Spans() {
		for i := s.Start; i < s.End; i++ {
			styles[i] |= byte(s.Style)
		}
	}
	return string(styles)
}

// cutStyles is the styles of some bytes, "" where they are plain.
func cutStyles(styles string, from, to int) string {
	if styles == "" {
		return ""
	}
	return plainIsNone(styles[from:to])
}

func plainIsNone(styles string) string {
	if strings.Trim(styles, "\x00") == "" {
		return ""
	}
	return styles
}

// styleAt is the style of a byte.
func styleAt(styles string, at int) pagemodel.Style {
	if styles == "" {
		return 0
	}
	return pagemodel.Style(styles[at])
}

// restyled is the styles of n bytes with one of them given to or taken from some.
func restyled(styles string, n, from, to int, style pagemodel.Style, off bool) string {
	bytes := make([]byte, n)
	copy(bytes, styles)
	for i := from; i < min(to, n); i++ {
		if off {
			bytes[i] &^= byte(style)
		} else {
			bytes[i] |= byte(style)
		}
	}
	return plainIsNone(string(bytes))
}
