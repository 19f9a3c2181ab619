package document

import (
	"fmt"
	"strconv"
	"strings"

	"headland/pagemodel"
)

// odtWriter writes the text of a .odt. Whatever differs from a named style has a
// style of its own, which stands before the text; so the text is written apart.
type odtWriter struct {
	*tags
	own   []string // styles, as XML, named by prefix and place
	names map[string]string
}

func (d Document) odtText() []byte {
	text := &odtWriter{tags: &tags{}, names: map[string]string{}}
	tables := 0
	for _, b := range d.Blocks {
		if b.Table != nil {
			tables++
			text.table(b.Table, tables)
			continue
		}
		text.paragraph(b.Paragraph)
	}
	t := begin()
	t.start("office:document-content", odtSpaces...)
	t.start("office:automatic-styles")
	for _, s := range text.own {
		t.WriteString(s)
	}
	t.end("office:automatic-styles")
	t.start("office:body")
	t.start("office:text")
	t.Write(text.Bytes())
	t.end("office:text")
	t.end("office:body")
	t.end("office:document-content")
	return t.Bytes()
}

// named is the name of a style of its own, made the first time that it is asked
// for: what makes one writes it under the name.
func (t *odtWriter) named(key string, write func(t *tags, name string)) string {
	name, ok := t.names[key]
	if !ok {
		name = "A" + strconv.Itoa(len(t.names)+1)
		t.names[key] = name
		style := &tags{}
		write(style, name)
		t.own = append(t.own, style.String())
	}
	return name
}

func (t *odtWriter) paragraph(p Paragraph) {
	name, level := t.styleOf(p), looks[p.Style].outline
	if level > 0 {
		t.start("text:h", "text:style-name", name, "text:outline-level", strconv.Itoa(level))
	} else {
		t.start("text:p", "text:style-name", name)
	}
	spaced := true // a space here would be lost
	for _, r := range p.Runs {
		spaced = t.run(r, p.Style, spaced)
	}
	if level > 0 {
		t.end("text:h")
	} else {
		t.end("text:p")
	}
}

// odtRanges are the names of the ranges.
var odtRanges = map[pagemodel.Range]string{pagemodel.RangeLeft: "start", pagemodel.RangeCentre: "center", pagemodel.RangeRight: "end"}

// styleOf is the name of a paragraph's style.
func (t *odtWriter) styleOf(p Paragraph) string {
	if p.Range == pagemodel.RangeLeft && len(p.Stops) == 0 {
		return p.Style.odtName()
	}
	return t.named(fmt.Sprint("p", p.Style, p.Range, p.Stops), func(t *tags, name string) {
		t.start("style:style", "style:name", name, "style:family", "paragraph", "style:parent-style-name", p.Style.odtName())
		var attributes []string
		if p.Range != pagemodel.RangeLeft {
			attributes = []string{"fo:text-align", odtRanges[p.Range]}
		}
		t.start("style:paragraph-properties", attributes...)
		if len(p.Stops) > 0 {
			t.start("style:tab-stops")
			for _, s := range p.Stops {
				kind := [...]string{"left", "center", "right"}[s.Kind]
				t.lone("style:tab-stop", "style:position", points(s.At.At(typeSize)), "style:type", kind)
			}
			t.end("style:tab-stops")
		}
		t.end("style:paragraph-properties")
		t.end("style:style")
	})
}

// run writes a run; spaced says, before and after, that a space would be lost
// there.
func (t *odtWriter) run(r Run, style Style, spaced bool) bool {
	switch r.Mark {
	case LineEnd:
		t.lone("text:line-break")
		return true
	case Tab:
		t.lone("text:tab")
		return true
	case White:
		text, each := spaces(r.Width)
		by := each.At(style.sizeOf())
		if by == 0 {
			return t.words(text, spaced)
		}
		name := t.named(fmt.Sprint("w", by), func(t *tags, name string) {
			t.textStyle(name, "fo:letter-spacing", odtLength(by))
		})
		return t.span(name, text, spaced)
	}
	if r.Look == 0 {
		return t.words(r.Text, spaced)
	}
	name := t.named(fmt.Sprint("l", r.Look), func(t *tags, name string) { t.textStyle(name, odtLook(r.Look)...) })
	return t.span(name, r.Text, spaced)
}

// odtLength is a length that may be less than nothing.
func odtLength(l pagemodel.Length) string {
	if l < 0 {
		return "-" + points(-l)
	}
	return points(l)
}

func (t *tags) textStyle(name string, attributes ...string) {
	t.start("style:style", "style:name", name, "style:family", "text")
	t.lone("style:text-properties", attributes...)
	t.end("style:style")
}

// odtLook are the attributes of styles of words.
func odtLook(look pagemodel.Style) []string {
	var list []string
	if look&pagemodel.Italic != 0 {
		list = append(list, "fo:font-style", "italic")
	}
	if look&pagemodel.Bold != 0 {
		list = append(list, "fo:font-weight", "bold")
	}
	if look&pagemodel.SmallCaps != 0 {
		list = append(list, "fo:font-variant", "small-caps")
	}
	return list
}

func (t *odtWriter) span(style, text string, spaced bool) bool {
	t.start("text:span", "text:style-name", style)
	spaced = t.words(text, spaced)
	t.end("text:span")
	return spaced
}

// words writes a text with a mark for each tab, and for each space that follows
// another or begins a line, which would be lost (ODF 1.2, part 1, 6.1.2 and 6.1.3).
func (t *odtWriter) words(text string, spaced bool) bool {
	text = writable(text)
	for text != "" {
		n := strings.IndexAny(text, " \t")
		if n < 0 {
			t.text(text)
			return false
		}
		t.text(text[:n])
		spaced = spaced && n == 0
		switch {
		case text[n] == '\t':
			t.lone("text:tab")
		case spaced:
			t.lone("text:s")
		default:
			t.text(" ")
		}
		spaced, text = true, text[n+1:]
	}
	return spaced
}

func (t *odtWriter) table(table *Table, number int) {
	t.start("table:table", "table:name", "Table"+strconv.Itoa(number))
	for _, width := range table.Widths {
		wide := points(columnWidth(width))
		name := t.named("c"+wide, func(t *tags, name string) {
			t.start("style:style", "style:name", name, "style:family", "table-column")
			t.lone("style:table-column-properties", "style:column-width", wide)
			t.end("style:style")
		})
		t.lone("table:table-column", "table:style-name", name)
	}
	// The heading is a row like any other: pandoc passes over table:table-header-rows.
	for _, row := range table.Rows {
		t.row(row)
	}
	t.end("table:table")
}

func (t *odtWriter) row(row []Cell) {
	ruled := t.named("ruled", func(t *tags, name string) {
		t.start("style:style", "style:name", name, "style:family", "table-cell")
		t.lone("style:table-cell-properties", "fo:padding", "3pt", "fo:border-bottom", "0.5pt solid #000000")
		t.end("style:style")
	})
	t.start("table:table-row")
	for _, cell := range row {
		t.start("table:table-cell", "table:style-name", ruled, "office:value-type", "string")
		for _, p := range cell {
			t.paragraph(p)
		}
		t.end("table:table-cell")
	}
	t.end("table:table-row")
}
