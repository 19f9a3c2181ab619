package corrections

import (
	"fmt"
	"strings"
)

// joined puts clauses together, leaving out empty ones.
func joined(clauses []string) string {
	var said []string
	for _, c := range clauses {
		if c != "" {
			said = append(said, c)
		}
	}
	return strings.Join(said, "; ")
}

// words say that lines, by their places as sent, go on to a later page, or come
// back to one.
func (c *crossing) words(page string) string {
	lines, goes := "", [2]string{"come back", "go over"}
	switch {
	case c.first == c.last:
		lines, goes = fmt.Sprintf("stanza %d, line %d", c.first.stanza, c.first.line), [2]string{"comes back", "goes over"}
	case c.first.stanza == c.last.stanza:
		lines = fmt.Sprintf("stanza %d, lines %d–%d", c.first.stanza, c.first.line, c.last.line)
	default:
		lines = fmt.Sprintf("the lines from stanza %d, line %d, to stanza %d, line %d", c.first.stanza, c.first.line, c.last.stanza, c.last.line)
	}
	how := goes[0]
	if c.over {
		how = goes[1]
	}
	return fmt.Sprintf("%s %s to page %s", lines, how, page)
}

// poemsMove says that n later poems begin so many pages further on, or back.
func poemsMove(n, by int) string {
	if n == 0 {
		return ""
	}
	poems, way := fmt.Sprintf("%d later poems move", n), "on"
	if n == 1 {
		poems = "the next poem moves"
	}
	if by < 0 {
		way, by = "back", -by
	}
	if by == 1 {
		return fmt.Sprintf("%s %s by a page", poems, way)
	}
	return fmt.Sprintf("%s %s by %d pages", poems, way, by)
}
