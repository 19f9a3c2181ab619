package document

import (
	"bytes"
	"encoding/xml"
	"strconv"

	"headland/pagemodel"
)

// tags writes XML. Names carry the prefixes that the root element declares.
type tags struct{ bytes.Buffer }

// begin is XML with its declaration.
func begin() *tags {
	t := &tags{}
	t.WriteString(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>`)
	return t
}

// start opens an element; attributes are names and values in turn.
func (t *tags) start(name string, attributes ...string) {
	t.head(name, attributes)
	t.WriteByte('>')
}

// lone writes an element with nothing in it.
func (t *tags) lone(name string, attributes ...string) {
	t.head(name, attributes)
	t.WriteString("/>")
}

func (t *tags) head(name string, attributes []string) {
	t.WriteByte('<')
	t.WriteString(name)
	for i := 0; i+1 < len(attributes); i += 2 {
		t.WriteString(" " + attributes[i] + `="`)
		t.text(attributes[i+1])
		t.WriteByte('"')
	}
}

func (t *tags) end(name string) { t.WriteString("</" + name + ">") }

// whole writes an element with a text in it.
func (t *tags) whole(name, text string, attributes ...string) {
	t.start(name, attributes...)
	t.text(text)
	t.end(name)
}

// text writes characters, those that can't be written left out.
func (t *tags) text(s string) {
	// A buffer takes whatever is written to it.
	_ = xml.EscapeText(&t.Buffer, []byte(writable(s)))
}

// twips is a length in twentieths of a point, as Office Open XML has them.
func twips(l pagemodel.Length) string {
	return strconv.FormatInt((int64(l)*20+int64(pagemodel.Point)/2)/int64(pagemodel.Point), 10)
}

// points is a length in points, as OpenDocument has them, to a hundredth.
func points(l pagemodel.Length) string {
	return strconv.FormatFloat(float64(int64(l.Points()*100+0.5))/100, 'f', -1, 64) + "pt"
}
