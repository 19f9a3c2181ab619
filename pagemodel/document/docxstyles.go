package document

import (
	"strconv"
	"strings"

	"headland/pagemodel"
)

// docxID is what a .docx knows a style by: its name with capitals and without
// spaces.
func (s Style) docxID() string {
	var id strings.Builder
	for word := range strings.FieldsSeq(looks[s].name) {
		id.WriteString(strings.ToUpper(word[:1]) + word[1:])
	}
	return id.String()
}

func (d Document) docxStyles() []byte {
	t := begin()
	t.start("w:styles", "xmlns:w", wordSpace)
	t.docxDefaults(d.tongue())
	t.start("w:style", "w:type", "paragraph", "w:default", "1", "w:styleId", "Normal")
	t.lone("w:name", "w:val", "Normal")
	t.end("w:style")
	for s := range looks {
		t.docxStyle(Style(s))
	}
	t.start("w:style", "w:type", "table", "w:default", "1", "w:styleId", "TableNormal")
	t.lone("w:name", "w:val", "Normal Table")
	t.start("w:tblPr")
	t.start("w:tblCellMar")
	for _, side := range []string{"w:left", "w:right"} {
		t.lone(side, "w:w", "80", "w:type", "dxa")
	}
	t.end("w:tblCellMar")
	t.end("w:tblPr")
	t.end("w:style")
	t.end("w:styles")
	return t.Bytes()
}

// docxDefaults are what every style begins from.
func (t *tags) docxDefaults(tongue string) {
	t.start("w:docDefaults")
	t.start("w:rPrDefault")
	t.start("w:rPr")
	t.lone("w:rFonts", "w:ascii", textFace, "w:hAnsi", textFace, "w:eastAsia", textFace, "w:cs", textFace)
	t.lone("w:sz", "w:val", halfPoints(typeSize))
	t.lone("w:lang", "w:val", tongue)
	t.end("w:rPr")
	t.end("w:rPrDefault")
	t.start("w:pPrDefault")
	t.start("w:pPr")
	t.lone("w:spacing", "w:before", "0", "w:after", "0", "w:line", twips(lineHeight), "w:lineRule", "atLeast")
	t.end("w:pPr")
	t.end("w:pPrDefault")
	t.end("w:docDefaults")
}

func halfPoints(l pagemodel.Length) string { return strconv.Itoa(int(2 * l / pagemodel.Point)) }

func (t *tags) docxStyle(s Style) {
	l := looks[s]
	attributes := []string{"w:type", "paragraph", "w:styleId", s.docxID()}
	if l.outline == 0 && s != Title {
		attributes = append(attributes, "w:customStyle", "1")
	}
	t.start("w:style", attributes...)
	t.lone("w:name", "w:val", l.name)
	t.lone("w:basedOn", "w:val", "Normal")
	t.lone("w:qFormat")
	t.docxParagraphLook(l)
	t.start("w:rPr")
	if l.bold {
		t.lone("w:b")
	}
	t.lone("w:sz", "w:val", halfPoints(s.sizeOf()))
	t.end("w:rPr")
	t.end("w:style")
}

// docxParagraphLook writes a style's paragraph properties in the order that the
// schema has them in (CT_PPr).
func (t *tags) docxParagraphLook(l look) {
	t.start("w:pPr")
	for _, on := range []struct {
		name string
		said bool
	}{{"w:keepNext", l.next}, {"w:keepLines", l.whole}, {"w:pageBreakBefore", l.page}} {
		if on.said {
			t.lone(on.name)
		}
	}
	t.lone("w:spacing", "w:before", twips(l.before), "w:after", twips(l.after))
	if l.left != 0 {
		t.lone("w:ind", "w:left", twips(l.left))
	}
	t.lone("w:jc", "w:val", justifications[l.rng])
	if l.outline > 0 {
		t.lone("w:outlineLvl", "w:val", strconv.Itoa(l.outline-1))
	}
	t.end("w:pPr")
}
