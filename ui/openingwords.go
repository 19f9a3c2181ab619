package ui

import (
	"fmt"
	"strings"

	"headland/pagemodel"
)

// openingWords are what the poet says of a poem's pages, in the fewest words,
// one thing to a line.
func openingWords(h pagemodel.PoemHead) string {
	var said []string
	add := func(words string) {
		if words != "" {
			said = append(said, words)
		}
	}
	add(startSigns[h.Start])
	if h.Blank {
		add("a blank")
	}
	add(runSign(h.Run))
	add(string(h.Form))
	if h.Size != 0 {
		add(sizeWords(h.Size))
	}
	add(lieSigns[h.Lie])
	add(edgeSigns[h.Edge])
	return strings.Join(said, "\n")
}

// What stands in the margin for each; the usual has nothing.
var (
	startSigns = map[pagemodel.Start]string{
		pagemodel.OnVerso: "verso", pagemodel.OnRecto: "recto", pagemodel.SharedPage: "shared", pagemodel.FacingPage: "facing",
	}
	lieSigns  = map[pagemodel.Lie]string{pagemodel.Across: "across", pagemodel.Turned: "turned"}
	edgeSigns = map[pagemodel.Edge]string{
		pagemodel.EdgeLeft: "left", pagemodel.EdgeCentre: "centred", pagemodel.EdgeOptic: "optical",
	}
)

func runSign(lines int) string {
	switch {
	case lines == 0:
		return ""
	case lines == 1:
		return "a line long"
	case lines == -1:
		return "a line short"
	case lines > 0:
		return fmt.Sprintf("%d lines long", lines)
	}
	return fmt.Sprintf("%d lines short", -lines)
}

// sizeWords is a size of type as a printer says it: "10½ pt".
func sizeWords(l pagemodel.Length) string {
	whole, rest := l/pagemodel.Point, l%pagemodel.Point
	switch rest {
	case 0:
		return fmt.Sprintf("%d pt", whole)
	case pagemodel.Point / 2:
		return fmt.Sprintf("%d½ pt", whole)
	}
	return fmt.Sprintf("%.2f pt", l.Points())
}
