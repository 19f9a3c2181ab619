package ui

import (
	"fmt"
	"strings"

	"headland/pagemodel"
)

func pageValues(extent int) []designValue {
	return []designValue{
		trimValue(),
		marginsValue(extent),
		lengthOf("inner", inMM, 0.5, func(d *design) *length { return &d.Margins.Inner }),
		lengthOf("outer", inMM, 0.5, func(d *design) *length { return &d.Margins.Outer }),
		lengthOf("head", inMM, 0.5, func(d *design) *length { return &d.Margins.Head }),
		lengthOf("foot", inMM, 0.5, func(d *design) *length { return &d.Margins.Foot }),
		named("binding", func(d *design) *pagemodel.Binding { return &d.Binding }, pagemodel.Sewn, pagemodel.PerfectBound, pagemodel.Stapled),
		paperValue("paper", 5, func(p *pagemodel.Paper) *int { return &p.GSM }, func(n int) string { return fmt.Sprintf("%d gsm", n) }),
		paperValue("volume", 1, func(p *pagemodel.Paper) *int { return &p.Volume }, func(n int) string { return fmt.Sprintf("%d (mm per 100 leaves)", n) }),
		signatureValue(),
	}
}

// trimValue steps through the trade's trims, or takes two measures typed.
func trimValue() designValue {
	var all []pagemodel.Trim
	for _, t := range pagemodel.TrimPresets {
		all = append(all, t.Trim)
	}
	return designValue{
		name:  "trim",
		words: func(d *design) string { return trimWords(d.Trim) },
		step:  func(d *design, by int) { d.Trim = beside(all, d.Trim, by) },
		typed: typeTrim,
	}
}

// trimWords are a trim's name and its size; a name that says the size stands
// alone.
func trimWords(t pagemodel.Trim) string {
	size := strings.TrimSuffix(inMM.words(t.Width), " mm") + " × " + inMM.words(t.Height)
	for _, preset := range pagemodel.TrimPresets {
		switch {
		case preset.Trim != t:
		case strings.HasPrefix(preset.Name, "US"):
			return preset.Name
		default:
			return preset.Name + ", " + size
		}
	}
	return size
}

// typeTrim reads a width and a height, in millimetres unless they say.
func typeTrim(d *design, text string) error {
	parts := strings.FieldsFunc(strings.ReplaceAll(text, " mm", "mm"), func(r rune) bool { return r == '×' || r == 'x' || r == '*' || r == ' ' })
	if len(parts) != 2 {
		return fmt.Errorf("%q is no trim: write its width and its height in mm, such as 129 x 198", text)
	}
	width, err := inMM.parse(parts[0])
	if err != nil {
		return err
	}
	height, err := inMM.parse(parts[1])
	if err == nil {
		d.Trim = pagemodel.Trim{Width: width, Height: height}
	}
	return err
}

// marginsKind is where a design's margins come from.
type marginsKind int

const (
	marginsFree marginsKind = iota
	marginsByBinding
	marginsByCanon
)

func kindOfMargins(d *design, extent int) marginsKind {
	switch {
	case d.Margins == pagemodel.Canon(d.Trim):
		return marginsByCanon
	case d.Margins.Inner == pagemodel.DefaultInner(d.Binding, extent):
		return marginsByBinding
	}
	return marginsFree
}

// setMargins gives a design the margins of a kind: those of a new book with the
// inner one by its binding and extent, or the canon's. Free margins are as they
// are.
func setMargins(d *design, kind marginsKind, extent int) {
	switch kind {
	case marginsByBinding:
		d.Margins = pagemodel.DefaultDesign().Margins
		d.Margins.Inner = pagemodel.DefaultInner(d.Binding, extent)
	case marginsByCanon:
		d.Margins = pagemodel.Canon(d.Trim)
	}
}

// marginsValue goes between the two ways to have margins found; free ones come
// by setting any of the four.
func marginsValue(extent int) designValue {
	words := [...]string{marginsFree: "free", marginsByBinding: "inner by binding and extent", marginsByCanon: "the canon"}
	return designValue{
		name:  "margins",
		words: func(d *design) string { return words[kindOfMargins(d, extent)] },
		step: func(d *design, by int) {
			setMargins(d, beside([]marginsKind{marginsByBinding, marginsByCanon}, kindOfMargins(d, extent), by), extent)
		},
	}
}

// followed has margins that were found from other values found again where
// those have changed.
func followed(was, now design, extent int) design {
	kind := kindOfMargins(&was, extent)
	switch {
	case was.Margins != now.Margins:
	case kind == marginsByCanon && was.Trim != now.Trim:
		setMargins(&now, kind, extent)
	case kind == marginsByBinding && was.Binding != now.Binding:
		now.Margins.Inner = pagemodel.DefaultInner(now.Binding, extent)
	}
	return now
}

// paperValue is a number of the paper, the usual one's where none is said.
func paperValue(name string, step int, field func(*pagemodel.Paper) *int, words func(int) string) designValue {
	value := countOf(name, step, func(d *design) *int { return field(&d.Paper) }, words)
	usual := func(d *design) { d.Paper = d.Paper.Usual() }
	return designValue{
		name:  name,
		words: func(d *design) string { shown := *d; usual(&shown); return value.words(&shown) },
		step:  func(d *design, by int) { usual(d); value.step(d, by) },
		typed: func(d *design, text string) error { usual(d); return value.typed(d, text) },
	}
}

func signatureValue() designValue {
	return designValue{
		name:  "signature",
		words: func(d *design) string { return fmt.Sprintf("%d pages", d.SignaturePages()) },
		step: func(d *design, by int) {
			d.Signature = beside(pagemodel.FoldedSizes[:], d.SignaturePages(), by)
		},
	}
}
