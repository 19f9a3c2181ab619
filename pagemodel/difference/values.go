package difference

import (
	"strconv"

	"headland/pagemodel"
)

// A value is something about the book or a poem that has no words of the poet's:
// a name, and how it is said.
type value[T any] struct {
	name string
	said func(T) string
}

func number(n int) string { return strconv.Itoa(n) }

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// orElse says a thing, or what stands for nothing.
func orElse(said, nothing string) string {
	if said == "" {
		return nothing
	}
	return said
}

// poemValues are how a poem stands on its pages.
var poemValues = []value[pagemodel.PoemHead]{
	{"form", func(h pagemodel.PoemHead) string { return orElse(string(h.Form), "none") }},
	{"start", func(h pagemodel.PoemHead) string { return h.Start.String() }},
	{"blank page before", func(h pagemodel.PoemHead) string { return yes(h.Blank) }},
	{"lines that pages run long or short", func(h pagemodel.PoemHead) string { return number(h.Run) }},
	{"size", func(h pagemodel.PoemHead) string { return sizeOr(h.Size, "the book’s") }},
	{"left edge", func(h pagemodel.PoemHead) string { return h.Edge.String() }},
	{"lie", func(h pagemodel.PoemHead) string { return h.Lie.String() }},
}

func sizeOr(l pagemodel.Length, nothing string) string {
	if l == 0 {
		return nothing
	}
	return points(l)
}

// designValues are the design, every field of it.
var designValues = []value[pagemodel.Design]{
	{"trim width", func(d pagemodel.Design) string { return points(d.Trim.Width) }},
	{"trim height", func(d pagemodel.Design) string { return points(d.Trim.Height) }},
	{"inner margin", func(d pagemodel.Design) string { return points(d.Margins.Inner) }},
	{"outer margin", func(d pagemodel.Design) string { return points(d.Margins.Outer) }},
	{"head margin", func(d pagemodel.Design) string { return points(d.Margins.Head) }},
	{"foot margin", func(d pagemodel.Design) string { return points(d.Margins.Foot) }},
	{"measure", func(d pagemodel.Design) string { return points(d.Measure()) }},
	{"binding", func(d pagemodel.Design) string { return d.Binding.String() }},
	{"face", func(d pagemodel.Design) string { return orElse(d.Face, "none") }},
	{"type size", func(d pagemodel.Design) string { return points(d.Size) }},
	{"leading", func(d pagemodel.Design) string { return points(d.Leading) }},
	{"title row", func(d pagemodel.Design) string { return number(d.TitleRow) }},
	{"poem row", func(d pagemodel.Design) string { return number(d.PoemRow) }},
	{"lines between stanzas", func(d pagemodel.Design) string { return number(d.StanzaGap) }},
	{"turnovers", func(d pagemodel.Design) string { return d.Turnovers.String() }},
	{"run-out", func(d pagemodel.Design) string { return points(d.RunOut) }},
	{"hanging quotes", func(d pagemodel.Design) string { return yes(d.HangQuotes) }},
	{"per cent that word spaces may be narrowed", func(d pagemodel.Design) string { return number(d.Tighten) }},
	{"left edge", func(d pagemodel.Design) string { return d.Edge.String() }},
	{"titles", func(d pagemodel.Design) string { return d.Titles.String() }},
	{"title size", func(d pagemodel.Design) string { return sizeOr(d.TitleSize, "the usual") }},
	{"titles centred", func(d pagemodel.Design) string { return yes(d.TitleCentred) }},
	{"folios", func(d pagemodel.Design) string { return d.Folios.String() }},
	{"running heads", func(d pagemodel.Design) string { return d.Running.String() }},
	{"prose setting", func(d pagemodel.Design) string { return d.Prose.String() }},
	{"sign of a hidden stanza break", func(d pagemodel.Design) string { return d.Hidden.String() }},
	{"poems on the back of section pages", func(d pagemodel.Design) string { return yes(d.SectionOpen) }},
	{"pages in a signature", func(d pagemodel.Design) string { return number(d.Signature) }},
	{"paper, gsm", func(d pagemodel.Design) string { return number(d.Paper.GSM) }},
	{"paper, volume", func(d pagemodel.Design) string { return number(d.Paper.Volume) }},
}

// matterValues are what the prelims and end matter are like besides their words.
var matterValues = []value[pagemodel.Matter]{
	{"roman folios in the prelims", func(m pagemodel.Matter) string { return yes(m.Roman) }},
	{"parts in the contents", func(m pagemodel.Matter) string { return yes(m.Parts) }},
	{"order of the index", func(m pagemodel.Matter) string { return m.Alphabet.String() }},
}

// valuesOf says each of the values.
func valuesOf[T any](table []value[T], of T) []string {
	said := make([]string, len(table))
	for i, v := range table {
		said[i] = v.said(of)
	}
	return said
}

func namesOf[T any](table []value[T]) []string {
	names := make([]string, len(table))
	for i, v := range table {
		names[i] = v.name
	}
	return names
}
