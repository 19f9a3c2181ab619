package marks

import (
	"regexp"
	"strconv"
	"strings"

	"headland/pagemodel/difference"
	"headland/typeset/corrections"
)

// words.go reads what a change says in words; see [difference.Change].

// quoted is what stands between “ and ”, or the words as they are where nothing
// does.
func quoted(words string) string {
	from, to := strings.Index(words, "“"), strings.LastIndex(words, "”")
	if from < 0 || to <= from {
		return words
	}
	return words[from+len("“") : to]
}

// after is what is said of words that are quoted.
func after(words string) string {
	if to := strings.LastIndex(words, "”"); to >= 0 {
		words = words[to+len("”"):]
	}
	return strings.TrimSpace(words)
}

// matterOf is the new matter that words quote, and whether it is to be in italic.
func matterOf(words string) (matter string, italic bool) {
	return quoted(words), after(words) == "in italic"
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
