package document

import (
	"strconv"
	"strings"
)

// odtName is the name of a style in a .odt. Those that every word processor knows
// are named as ODF's users name them.
func (s Style) odtName() string {
	name := looks[s].name
	return strings.ReplaceAll(strings.ToUpper(name[:1])+name[1:], " ", "_20_")
}

// odtStyles are the named styles and the page.
func (d Document) odtStyles() []byte {
	t := begin()
	t.start("office:document-styles", odtSpaces...)
	t.start("office:font-face-decls")
	t.lone("style:font-face", "style:name", textFace, "svg:font-family", "'"+textFace+"'", "style:font-family-generic", "roman")
	t.end("office:font-face-decls")
	t.start("office:styles")
	t.odtDefaults(d.tongue())
	for s := range looks {
		t.odtStyle(Style(s))
	}
	t.end("office:styles")
	t.start("office:automatic-styles")
	t.start("style:page-layout", "style:name", "Sheet")
	t.lone("style:page-layout-properties", "fo:page-width", points(sheetWidth), "fo:page-height", points(sheetHeight), "fo:margin", points(sheetMargin))
	t.end("style:page-layout")
	t.end("office:automatic-styles")
	t.start("office:master-styles")
	t.lone("style:master-page", "style:name", "Standard", "style:page-layout-name", "Sheet")
	t.end("office:master-styles")
	t.end("office:document-styles")
	return t.Bytes()
}

// odtDefaults are what every style begins from.
func (t *tags) odtDefaults(tongue string) {
	language, country, _ := strings.Cut(tongue, "-")
	if len(country) != 2 {
		country = "none"
	}
	t.start("style:default-style", "style:family", "paragraph")
	t.lone("style:paragraph-properties", "style:line-height-at-least", points(lineHeight))
	t.lone("style:text-properties", "style:font-name", textFace, "fo:font-size", points(typeSize), "fo:language", language, "fo:country", country)
	t.end("style:default-style")
	t.lone("style:style", "style:name", "Standard", "style:family", "paragraph", "style:class", "text")
}

func (t *tags) odtStyle(s Style) {
	l := looks[s]
	shown := strings.ToUpper(l.name[:1]) + l.name[1:]
	attributes := []string{"style:name", s.odtName(), "style:display-name", shown, "style:family", "paragraph", "style:parent-style-name", "Standard"}
	if l.outline > 0 {
		attributes = append(attributes, "style:default-outline-level", strconv.Itoa(l.outline))
	}
	t.start("style:style", attributes...)
	t.lone("style:paragraph-properties", l.odtParagraph()...)
	weight := "normal"
	if l.bold {
		weight = "bold"
	}
	t.lone("style:text-properties", "fo:font-size", points(s.sizeOf()), "fo:font-weight", weight)
	t.end("style:style")
}

// odtParagraph are the attributes of a style's paragraphs.
func (l look) odtParagraph() []string {
	list := []string{"fo:text-align", odtRanges[l.rng], "fo:margin-top", points(l.before), "fo:margin-bottom", points(l.after)}
	if l.left != 0 {
		list = append(list, "fo:margin-left", points(l.left))
	}
	if l.page {
		list = append(list, "fo:break-before", "page")
	}
	if l.next {
		list = append(list, "fo:keep-with-next", "always")
	}
	if l.whole {
		list = append(list, "fo:keep-together", "always")
	}
	return list
}
