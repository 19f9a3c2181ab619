package manuscript

import (
	"strconv"
	"strings"

	"headland/pagemodel"
)

// maxEms is the deepest indent and the widest gap, as in pagemodel's edits.
const maxEms = 60 * pagemodel.OneEm

// maxWhite is how many lines of white may stand above a line, as there.
const maxWhite = 60

// quarter is what one leading space stands for.
const quarter = pagemodel.OneEm / 4

// markAt reads the mark that the text begins with: "[gap 2]" has the name gap
// and the argument 2. The length is 0 where there is none.
func markAt(s string) (name, arg string, length int) {
	if !strings.HasPrefix(s, "[") {
		return "", "", 0
	}
	end := strings.IndexAny(s[1:], "[]\n")
	if end < 0 || s[1+end] != ']' {
		return "", "", 0
	}
	name, arg, _ = strings.Cut(s[1:1+end], " ")
	return name, strings.TrimSpace(arg), end + 2
}

// parseEms reads a number of ems from just above nothing to maxEms: "1.3" or
// "1.3em".
func parseEms(s string) (pagemodel.Em, bool) {
	s = strings.TrimSpace(strings.TrimSuffix(s, "em"))
	if s == "" || len(s) > 12 || strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || v > maxEms.Ems() {
		return 0, false
	}
	em := pagemodel.Ems(v)
	return em, em > 0
}

// parseWhite reads a number of lines from 1 to maxWhite.
func parseWhite(s string) (int, bool) {
	n, err := strconv.Atoi(s)
	if err != nil || n < 1 || n > maxWhite {
		return 0, false
	}
	return n, true
}

func formatEms(e pagemodel.Em) string { return strconv.FormatFloat(e.Ems(), 'f', -1, 64) }

// leadingWhite is how much white a line begins with that is its indent.
var leadingWhite = map[rune]pagemodel.Em{
	'\t': pagemodel.OneEm, ' ': quarter, '\u00A0': quarter, // no-break space
	'\u2002': pagemodel.OneEm / 2, '\u2003': pagemodel.OneEm, '\u3000': pagemodel.OneEm, // en, em, ideographic space
	'\u2005': quarter, // four-per-em space
}

// lineStart is what the start of a line says about the whole of it.
type lineStart struct {
	indent  pagemodel.Em
	rng     pagemodel.Range
	dropped bool
	opens   bool   // a page begins with it
	tied    bool   // it keeps to the page of the line below
	white   int    // lines of white above it, besides what parts stanzas
	odd     string // a mark that looks like one of ours and can't be read; or ""
}

// readStart reads the white and the marks at a line's start.
func readStart(s string) (start lineStart, rest string) {
	start.indent, s = readIndent(s)
	for {
		name, arg, n := markAt(s)
		if n == 0 || !start.take(name, arg) {
			if name == "indent" || name == "white" {
				start.odd = s[:n]
			}
			return start, s
		}
		s = strings.TrimLeft(s[n:], " \t")
	}
}

func readIndent(s string) (pagemodel.Em, string) {
	var indent pagemodel.Em
	for i, r := range s {
		step, ok := leadingWhite[r]
		if !ok {
			return indent, s[i:]
		}
		indent += step
	}
	return indent, ""
}

// take takes the mark, or says that it is none of a line's start.
func (l *lineStart) take(name, arg string) bool {
	if name == "indent" {
		em, ok := parseEms(arg)
		l.indent += em
		return ok
	}
	if name == "white" {
		lines, ok := parseWhite(arg)
		l.white = min(maxWhite, l.white+lines)
		return ok
	}
	if arg != "" {
		return false
	}
	switch name {
	case "page":
		l.opens = true
	case "together":
		l.tied = true
	case "drop":
		l.dropped = true
	case "centre", "center":
		l.rng = pagemodel.RangeCentre
	case "right":
		l.rng = pagemodel.RangeRight
	default:
		return false
	}
	return true
}

// written is the start as it is written, with a space behind any mark.
func (l lineStart) written() string {
	var b strings.Builder
	even := l.indent%quarter == 0
	if even {
		b.WriteString(strings.Repeat(" ", int(l.indent/quarter)))
	}
	for _, mark := range []struct {
		name string
		said bool
	}{{"page", l.opens}, {"together", l.tied}, {"drop", l.dropped}} {
		if mark.said {
			b.WriteString("[" + mark.name + "] ")
		}
	}
	if l.white != 0 {
		b.WriteString("[white " + strconv.Itoa(l.white) + "] ")
	}
	if l.rng != pagemodel.RangeLeft {
		b.WriteString("[" + l.rng.String() + "] ")
	}
	if !even {
		b.WriteString("[indent " + formatEms(l.indent) + "] ")
	}
	return b.String()
}

// headingOf gives the level, 1 to 3, of a heading and what it says; 0 for any
// other line. A # not followed by white is verse.
func headingOf(s string) (level int, text string) {
	text = strings.TrimLeft(s, "#")
	level = len(s) - len(text)
	if level > 3 || text != "" && text[0] != ' ' && text[0] != '\t' {
		return 0, ""
	}
	return level, trim(text)
}

// attributeOf reads a line such as "[note: …]".
func attributeOf(s string) (key, value string, ok bool) {
	key, n := attributeKey(s)
	if n == 0 || !strings.HasSuffix(s, "]") {
		return "", "", false
	}
	return key, trim(s[n : len(s)-1]), true
}

// attributeKey is the key that a line begins with and how long "[key:" is.
func attributeKey(s string) (key string, length int) {
	if !strings.HasPrefix(s, "[") {
		return "", 0
	}
	key, _, found := strings.Cut(s[1:], ":")
	if !found || key == "" || strings.Trim(key, "abcdefghijklmnopqrstuvwxyz_") != "" {
		return "", 0
	}
	return key, len(key) + 2
}
