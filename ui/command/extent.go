package command

import "headland/pagemodel"

// extentReport is what the book takes: Pages and Blanks fill Signatures. Both
// spines are of all bound pages, blanks too.
type extentReport struct {
	Pages          int            `json:"pages"`
	Signatures     int            `json:"signatures"`
	Blanks         int            `json:"blanks"`
	SpineMM        float64        `json:"spine_mm"` // by the UK paper trade's formula
	SignaturePages int            `json:"signature_pages"`
	EvenWorking    [3]evenWorking `json:"even_working"`
	SpineIn        float64        `json:"spine_in"`                 // by US printers' formula
	SpineGluedMM   float64        `json:"spine_glued_mm,omitempty"` // of a perfect-bound book
	CreepMM        *creepReport   `json:"creep_mm,omitempty"`       // of a stapled book
	Paper          extentPaper    `json:"paper"`
}

// evenWorking is how many blanks an extent lacks to fill its signatures.
type evenWorking struct {
	SignaturePages int `json:"signature_pages"`
	Blanks         int `json:"blanks"`
}

// creepReport is the creep of the innermost leaf, by how the spine is folded.
type creepReport struct {
	Square float64 `json:"square"`
	Round  float64 `json:"round"`
}

// paperReport is a paper as a design has it.
type paperReport struct {
	GSM    int `json:"gsm"`
	Volume int `json:"volume"`
}

// extentPaper is the paper that the spines are reckoned for.
type extentPaper struct {
	paperReport
	PagesPerInch int `json:"pages_per_inch"`
}

func paperOf(p pagemodel.Paper) paperReport {
	p = p.Usual()
	return paperReport{p.GSM, p.Volume}
}

// extentOf is what a book of that many pages takes in a design.
func extentOf(pages int, d pagemodel.Design) extentReport {
	size, perInch := d.SignaturePages(), pagemodel.PagesPerInch(d.Paper)
	e := extentReport{
		Pages: pages, Blanks: pagemodel.Blanks(pages, size), Signatures: pagemodel.Signatures(pages, size), SignaturePages: size,
		Paper: extentPaper{paperOf(d.Paper), perInch},
	}
	for i, folded := range pagemodel.FoldedSizes {
		e.EvenWorking[i] = evenWorking{folded, pagemodel.Blanks(pages, folded)}
	}
	bound := pages + e.Blanks
	e.SpineMM = pagemodel.SpineUK(bound, d.Paper).Millimetres()
	e.SpineIn = rounded(pagemodel.SpineUS(bound, perInch), 4)
	switch d.Binding {
	case pagemodel.PerfectBound:
		e.SpineGluedMM = pagemodel.SpineGlued(bound, d.Paper).Millimetres()
	case pagemodel.Stapled:
		square, round := pagemodel.Creep(bound, d.Paper)
		e.CreepMM = &creepReport{square.Millimetres(), round.Millimetres()}
	}
	return e
}
