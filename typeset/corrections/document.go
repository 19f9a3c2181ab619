package corrections

import (
	"fmt"

	"headland/pagemodel"
	"headland/pagemodel/document"
)

// Document is the list for a word processor: a heading, the counting rule, and a
// table with a row for each correction.
func (l *List) Document() document.Document {
	d := document.Document{Title: l.heading(), Author: l.About.Poet, Language: l.About.Language}
	d.Add(document.Plain(document.Title, l.heading()))
	if book := l.book(); book != "" {
		d.Add(document.Plain(document.Author, book))
	}
	d.Add(document.Plain(document.Body, l.span()), document.Plain(document.Body, ruleHeading+plain(l.Rule)))
	if len(l.All) == 0 {
		return d
	}
	table := &document.Table{Widths: []int{7, 24, 47, 22}}
	table.Rows = append(table.Rows, []document.Cell{cellOf("No."), cellOf("Where"), cellOf("What"), cellOf("Whose, and state")})
	for i := range l.All {
		table.Rows = append(table.Rows, l.All[i].cells())
	}
	d.Blocks = append(d.Blocks, document.Block{Table: table})
	return d
}

// cellOf is a cell with a paragraph for each text that is not empty.
func cellOf(texts ...string) document.Cell {
	var cell document.Cell
	for _, text := range texts {
		if text != "" {
			cell = append(cell, document.Plain(document.CellText, text))
		}
	}
	return cell
}

// cells are a correction's cells.
func (c *Correction) cells() []document.Cell {
	what := cellOf(string(c.Change.Kind))
	what[0].Runs[0].Look = pagemodel.Bold
	side := cellOf(c.whose())
	for _, s := range c.says() {
		switch s.label {
		case "state", "query", "answer":
			side = append(side, labelled(s))
		default:
			what = append(what, labelled(s))
		}
	}
	return []document.Cell{cellOf(fmt.Sprint(c.Number)), cellOf(c.where(), c.onPage()), what, side}
}

// labelled is a paragraph of a cell with its label.
func labelled(s said) document.Paragraph {
	return document.Paragraph{Style: document.CellText, Runs: []document.Run{
		{Text: s.label + ":", Look: pagemodel.Italic}, {Text: " " + s.text},
	}}
}
