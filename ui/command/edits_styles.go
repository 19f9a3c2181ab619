package command

import (
	"fmt"

	"headland/pagemodel"
)

// styles takes how titles, folios and the rest look.
func (f *fields) styles(d *pagemodel.Design) {
	if f.has("edge") {
		f.edge(d)
	}
	if f.has("titles") {
		parsed(f, "titles", &d.Titles, pagemodel.ParseTitleStyle)
	}
	if f.has("title_size_pt") {
		d.TitleSize = pagemodel.Pt(f.number("title_size_pt"))
	}
	f.take("title_centred", &d.TitleCentred, "true or false")
	if f.has("folios") {
		parsed(f, "folios", &d.Folios, pagemodel.ParseFolioPlace)
	}
	if f.has("running_heads") {
		parsed(f, "running_heads", &d.Running, pagemodel.ParseRunningHeads)
	}
	if f.has("prose") {
		parsed(f, "prose", &d.Prose, pagemodel.ParseProseStyle)
	}
	if f.has("hidden_breaks") {
		parsed(f, "hidden_breaks", &d.Hidden, pagemodel.ParseHiddenBreaks)
	}
}

// edge takes the book's left edge. One that is left already stays as it is kept.
func (f *fields) edge(d *pagemodel.Design) {
	var edge pagemodel.Edge
	parsed(f, "edge", &edge, pagemodel.ParseEdge)
	switch {
	case f.err != nil:
	case edge == pagemodel.EdgeOfBook:
		f.err = fmt.Errorf(`"edge" of the book itself can't be %q: choose left, centred or optical`, edge.String())
	case edge != bookEdge(*d):
		d.Edge = edge
	}
}

// bookEdge is the left edge of a design, which is left where it says nothing.
func bookEdge(d pagemodel.Design) pagemodel.Edge {
	if d.Edge == pagemodel.EdgeOfBook {
		return pagemodel.EdgeLeft
	}
	return d.Edge
}

// making takes what the book is made of.
func (f *fields) making(d *pagemodel.Design) {
	f.take("sections_open", &d.SectionOpen, "true or false")
	pages := d.SignaturePages()
	f.count("signature", &pages)
	if pages == 0 && f.err == nil {
		f.err = fmt.Errorf("a signature of 0 pages can't be folded: choose 8, 16 or 32")
	}
	if pages != d.SignaturePages() {
		d.Signature = pages
	}
	if f.has("paper") {
		f.paper(d)
	}
}

// paper takes what is said of the paper; the rest of it stays.
func (f *fields) paper(d *pagemodel.Design) {
	const wants = `an object of whole numbers, as in {"gsm":80,"volume":18}`
	var given map[string]int
	f.take("paper", &given, wants)
	p := d.Paper.Usual()
	for name, value := range given {
		place := map[string]*int{"gsm": &p.GSM, "volume": &p.Volume}[name]
		switch {
		case f.err != nil:
		case place == nil:
			f.err = fmt.Errorf(`"paper" takes no field %q: it takes gsm, volume`, name)
		case value < 1:
			f.err = fmt.Errorf("paper has no %q of %d: choose 1 or more", name, value)
		default:
			*place = value
		}
	}
	if p != d.Paper.Usual() {
		d.Paper = p
	}
}
