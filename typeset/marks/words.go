package marks

import (
	"regexp"
	"strconv"
	"strings"

	"headland/pagemodel/difference"
	"headland/typeset/corrections"
)

// words.go reads what a change says in words; see [difference.Change].

// quoted are the words that a change quotes, or what it says where it quotes none.
func quoted(says string) string {
	if words, _, ok := difference.Unquote(says); ok {
		return words
	}
	return says
}

// after is what is said of words that are quoted.
func after(says string) string {
	_, said, _ := difference.Unquote(says)
	return said
}

// newMatter is an entry for words that are to be put in, or to stand instead: in the
// list where a line without words stands among them. What can't be set, or can't be
// told from what stands there, is an instruction.
func newMatter(c *corrections.Correction) entry {
	words, said, ok := difference.Unquote(c.Change.Is)
	was, _, known := difference.Unquote(c.Change.Was)
	switch {
	case !ok:
		return noteOf(c)
	case known && c.Change.Kind == difference.Substitute && was != words && difference.SameInk(was, words):
		return entry{c: c, note: strings.TrimPrefix(said, ", ")}
	}
	return entry{c: c, matter: words, italic: strings.HasPrefix(said, "in italic"), listed: strings.HasPrefix(said, ", an empty")}
}

// amount finds a number of ems in words.
var amount = regexp.MustCompile(`(-?[0-9]+(?:\.[0-9]+)?) ?em`)

// ems is the number of ems that words name, as the margin gives it; "" where they
// name none.
func ems(words string) string {
	if found := amount.FindStringSubmatch(after(words)); found != nil {
		return found[1] + " em"
	}
	return ""
}

// emsIn is how many ems words name; 0 where they name none.
func emsIn(words string) float64 {
	n, _ := strconv.ParseFloat(strings.TrimSuffix(ems(words), " em"), 64)
	return n
}

// white finds a number of lines of white in words.
var white = regexp.MustCompile(`(an?|[0-9]+) lines? of white`)

// linesOf is the number of lines of white that words name, as the margin gives it.
func linesOf(words string) string {
	n := white.FindStringSubmatch(words)[1]
	if n[0] == 'a' {
		return "1"
	}
	return n
}

// noteOf is an entry that says in words what is to be done.
func noteOf(c *corrections.Correction) entry {
	ch := &c.Change
	what := string(ch.Kind)
	if ch.Field != "" && ch.Field != "poem" && ch.Field != "section" {
		what += ", " + ch.Field
	}
	switch ch.Kind {
	case difference.MovePoem, difference.MoveSection:
		return entry{c: c, note: "move " + ch.Is}
	case difference.Delete:
		return entry{c: c, note: what + ": " + ch.Was}
	case difference.Design:
		if ch.Line.Line == 0 {
			return entry{c: c, note: ch.Field + ": " + ch.Is + ", not " + ch.Was}
		}
		return entry{c: c, note: ch.Is}
	}
	return entry{c: c, note: what + ": " + ch.Is}
}
