package ui

import (
	"fmt"

	"headland/pagemodel"
)

// The values of a design in the order in which a designer settles them. A field
// is given as a function that finds it in a design.

type (
	design = pagemodel.Design
	length = pagemodel.Length
)

// designValues are all values of a design. extent is how many pages the book
// has, for the inner margin that goes with its binding; families are the faces
// that there are.
func designValues(extent int, families []string) []valueGroup {
	return []valueGroup{
		{"the page", pageValues(extent)},
		{"the type", typeValues(families)},
		{"stanzas", stanzaValues()},
		{"openings", openingValues()},
		{"furniture", []designValue{
			named("folio", func(d *design) *pagemodel.FolioPlace { return &d.Folios },
				pagemodel.FolioOuter, pagemodel.FolioCentre, pagemodel.FolioNone),
			named("running heads", func(d *design) *pagemodel.RunningHeads { return &d.Running },
				pagemodel.HeadsOff, pagemodel.PoetAndBook, pagemodel.BookAndSection, pagemodel.SectionAndPoem),
		}},
	}
}

func typeValues(families []string) []designValue {
	return []designValue{
		choiceOf("face", func(d *design) *string { return &d.Face }, families, func(s string) string { return s }),
		lengthOf("size", inPt, 0.25, func(d *design) *length { return &d.Size }),
		lengthOf("leading", inPt, 0.25, func(d *design) *length { return &d.Leading }),
		edgeValue(),
		yesOrNo("opening marks", "hang outside the edge", "stand in the line", func(d *design) *bool { return &d.HangQuotes }),
		named("turnovers", func(d *design) *pagemodel.TurnoverStyle { return &d.Turnovers }, pagemodel.TurnIndented, pagemodel.TurnRight),
		countOf("word spaces", 5, func(d *design) *int { return &d.Tighten }, func(n int) string {
			if n == 0 {
				return "0 % narrower: never"
			}
			return fmt.Sprintf("up to %d %% narrower", n)
		}),
		lengthOf("run into margin", inPt, 1, func(d *design) *length { return &d.RunOut }),
		named("prose", func(d *design) *pagemodel.ProseStyle { return &d.Prose }, pagemodel.ProseRagged, pagemodel.ProseJustified),
	}
}

func stanzaValues() []designValue {
	return []designValue{
		countOf("gap", 1, func(d *design) *int { return &d.StanzaGap }, func(n int) string { return counted(n, "line", "lines") }),
		named("hidden break", func(d *design) *pagemodel.HiddenBreaks { return &d.Hidden },
			pagemodel.HiddenPlain, pagemodel.HiddenSign, pagemodel.HiddenWhite),
	}
}

func openingValues() []designValue {
	onLine := func(n int) string { return fmt.Sprintf("on line %d", n) }
	return []designValue{
		countOf("title", 1, func(d *design) *int { return &d.TitleRow }, onLine),
		countOf("poem", 1, func(d *design) *int { return &d.PoemRow }, onLine),
		named("title’s type", func(d *design) *pagemodel.TitleStyle { return &d.Titles },
			pagemodel.TitleRoman, pagemodel.TitleItalic, pagemodel.TitleSmallCaps),
		titleSizeValue(),
		yesOrNo("title stands", "centred", "at the left", func(d *design) *bool { return &d.TitleCentred }),
		yesOrNo("section’s page", "not backed", "backed by a blank", func(d *design) *bool { return &d.SectionOpen }),
	}
}

// edgeValue is the left edge; a design that says none has it at the left.
func edgeValue() designValue {
	shown := func(d *design) pagemodel.Edge { return max(pagemodel.EdgeLeft, d.Edge) }
	return designValue{
		name:  "left edge",
		words: func(d *design) string { return shown(d).String() },
		step: func(d *design, by int) {
			d.Edge = beside([]pagemodel.Edge{pagemodel.EdgeLeft, pagemodel.EdgeCentre, pagemodel.EdgeOptic}, shown(d), by)
		},
	}
}

// titleSizeValue is the size of titles, five quarters of the verse's unless
// said.
func titleSizeValue() designValue {
	own := func(d *design) *length {
		if d.TitleSize == 0 {
			d.TitleSize = d.Size * 5 / 4
		}
		return &d.TitleSize
	}
	value := lengthOf("title’s size", inPt, 0.25, own)
	words := value.words
	value.words = func(d *design) string {
		shown := *d
		return words(&shown)
	}
	return value
}
