package document

import (
	"strings"

	"headland/pagemodel"
)

func (d Document) docxText() []byte {
	t := docxWriter{begin()}
	t.start("w:document", "xmlns:w", wordSpace)
	t.start("w:body")
	for _, b := range d.Blocks {
		if b.Table != nil {
			t.table(b.Table)
			continue
		}
		t.paragraph(b.Paragraph)
	}
	if n := len(d.Blocks); n > 0 && d.Blocks[n-1].Table != nil {
		t.lone("w:p") // word processors want a paragraph below a table (common practice)
	}
	t.start("w:sectPr")
	t.lone("w:pgSz", "w:w", twips(sheetWidth), "w:h", twips(sheetHeight))
	m := twips(sheetMargin)
	t.lone("w:pgMar", "w:top", m, "w:right", m, "w:bottom", m, "w:left", m, "w:header", "720", "w:footer", "720", "w:gutter", "0")
	t.end("w:sectPr")
	t.end("w:body")
	t.end("w:document")
	return t.Bytes()
}

// docxWriter writes the text of a .docx.
type docxWriter struct{ *tags }

// justifications are the names of the ranges.
var justifications = map[pagemodel.Range]string{pagemodel.RangeLeft: "left", pagemodel.RangeCentre: "center", pagemodel.RangeRight: "right"}

func (t docxWriter) paragraph(p Paragraph) {
	t.start("w:p")
	t.start("w:pPr")
	t.lone("w:pStyle", "w:val", p.Style.docxID())
	if len(p.Stops) > 0 {
		t.start("w:tabs")
		for _, s := range p.Stops {
			t.lone("w:tab", "w:val", justifications[s.Kind], "w:pos", twips(s.At.At(typeSize)))
		}
		t.end("w:tabs")
	}
	if p.Range != pagemodel.RangeLeft {
		t.lone("w:jc", "w:val", justifications[p.Range])
	}
	t.end("w:pPr")
	for _, r := range p.Runs {
		t.run(r, p.Style)
	}
	t.end("w:p")
}

func (t docxWriter) run(r Run, style Style) {
	t.start("w:r")
	switch r.Mark {
	case LineEnd:
		t.lone("w:br")
	case Tab:
		t.lone("w:tab")
	case White:
		text, each := spaces(r.Width)
		if by := twips(each.At(style.sizeOf())); by != "0" {
			t.start("w:rPr")
			t.lone("w:spacing", "w:val", by)
			t.end("w:rPr")
		}
		t.words(text)
	default:
		t.look(r.Look)
		t.words(r.Text)
	}
	t.end("w:r")
}

// look writes the styles in the order that the schema has them in (CT_RPr).
func (t docxWriter) look(look pagemodel.Style) {
	if look == 0 {
		return
	}
	t.start("w:rPr")
	for _, s := range []struct {
		style pagemodel.Style
		name  string
	}{{pagemodel.Bold, "w:b"}, {pagemodel.Italic, "w:i"}, {pagemodel.SmallCaps, "w:smallCaps"}} {
		if look&s.style != 0 {
			t.lone(s.name)
		}
	}
	t.end("w:rPr")
}

// words writes a text, with a mark for each tab in it. A soft hyphen is written as
// the character that it is: not every reader knows the element for it.
func (t docxWriter) words(text string) {
	for i, piece := range strings.Split(text, "\t") {
		if i > 0 {
			t.lone("w:tab")
		}
		if piece != "" {
			t.whole("w:t", piece, "xml:space", "preserve")
		}
	}
}

func (t docxWriter) table(table *Table) {
	t.start("w:tbl")
	t.start("w:tblPr")
	t.lone("w:tblW", "w:w", "5000", "w:type", "pct")
	t.start("w:tblBorders")
	for _, side := range []string{"w:top", "w:bottom", "w:insideH"} {
		t.lone(side, "w:val", "single", "w:sz", "4", "w:space", "0", "w:color", "auto")
	}
	t.end("w:tblBorders")
	t.lone("w:tblLayout", "w:type", "fixed")
	t.lone("w:tblLook", "w:val", "0020", "w:firstRow", "1", "w:lastRow", "0", "w:firstColumn", "0", "w:lastColumn", "0", "w:noHBand", "1", "w:noVBand", "1")
	t.end("w:tblPr")
	t.start("w:tblGrid")
	for _, width := range table.Widths {
		t.lone("w:gridCol", "w:w", twips(columnWidth(width)))
	}
	t.end("w:tblGrid")
	for i, row := range table.Rows {
		t.row(table, row, i == 0)
	}
	t.end("w:tbl")
}

func columnWidth(hundredths int) pagemodel.Length {
	return textWidth * pagemodel.Length(hundredths) / 100
}

func (t docxWriter) row(table *Table, row []Cell, heading bool) {
	t.start("w:tr")
	t.start("w:trPr")
	t.lone("w:cantSplit")
	if heading {
		t.lone("w:tblHeader")
	}
	t.end("w:trPr")
	for i, cell := range row {
		t.start("w:tc")
		t.start("w:tcPr")
		t.lone("w:tcW", "w:w", twips(columnWidth(table.Widths[i])), "w:type", "dxa")
		t.end("w:tcPr")
		for _, p := range cell {
			t.paragraph(p)
		}
		t.end("w:tc")
	}
	t.end("w:tr")
}
