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

// linesGo says that lines, numbered through the poem as it is now, go on to a
// later page, or come back to one.
func linesGo(first, last int, over bool, page string) string {
	lines, goes := fmt.Sprintf("lines %d–%d", first, last), [2]string{"come back", "go over"}
	if first == last {
		lines, goes = fmt.Sprintf("line %d", first), [2]string{"comes back", "goes over"}
	}
	how := goes[0]
	if over {
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
