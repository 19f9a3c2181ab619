package pagemodel

import "math"

// What a book of so many pages takes: signatures, thickness, creep. All of it is
// told and nothing of it comes back into the setting, whose pages are chosen
// without a thought for the sheet.

// Micrometres is a thickness of paper or of a book. It is no [Length]: the trade
// quotes leaves in single micrometres, and 1/64 pt is five and a half of them.
type Micrometres int

// Millimetres is the thickness in millimetres.
func (m Micrometres) Millimetres() float64 { return float64(m) / 1000 }

func micrometres(um float64) Micrometres { return Micrometres(math.Round(um)) }

// FoldedSizes are the pages that a sheet is usually folded into, by which an
// extent is an even working or not (New Hart's Rules after R. Ritter, The Oxford
// Guide to Style, 2002, p. 1: a multiple of 16 or 32; 8 is the half sheet).
var FoldedSizes = [...]int{8, 16, 32}

// Signatures is how many signatures of that many pages a book is folded into, the
// blanks that fill the last one counted: see [Blanks].
func Signatures(extent, signature int) int {
	if signature <= 0 {
		return 0
	}
	return (extent + Blanks(extent, signature)) / signature
}

// Leaf is the thickness of one leaf: gsm x volume / 10.
func (p Paper) Leaf() Micrometres {
	p = p.Usual()
	return micrometres(float64(p.GSM*p.Volume) / 10)
}

// SpineUK is the thickness of a block of so many bound pages by the UK paper
// trade's formula: pages x gsm x volume / 20000 millimetres, the volume being how
// many millimetres 100 leaves of 100 gsm are thick (from memory; paper makers' lists
// of bulk give the same by pages / 2 x gsm x bulk / 1000).
func SpineUK(pages int, p Paper) Micrometres {
	p = p.Usual()
	return micrometres(float64(pages*p.GSM*p.Volume) / 20)
}

// SpineGlued is the width of a perfect-bound spine by a cover maker's rule: half a
// millimetre for the glue on top of the leaves, and the whole rounded up to half a
// millimetre.
func SpineGlued(pages int, p Paper) Micrometres {
	const half = 500
	bare := int(SpineUK(pages, p)) + half
	return Micrometres((bare + half - 1) / half * half)
}

// PagesPerInch is the bulk of a paper as US mills quote it: how many pages, two to
// a leaf, make an inch. It is quoted whole (common practice, no source).
func PagesPerInch(p Paper) int {
	p = p.Usual()
	const inch = 25400 * 10 // tenths of a micrometre
	if p.GSM*p.Volume == 0 {
		return 0
	}
	return int(math.Round(2 * inch / float64(p.GSM*p.Volume)))
}

// SpineUS is the thickness of a block of so many bound pages in inches, by the
// formula of US printers: pages / pages per inch. A paper of no thickness gives 0.
func SpineUS(pages, perInch int) float64 {
	if perInch <= 0 {
		return 0
	}
	return float64(pages) / float64(perInch)
}

// Creep is by how much the innermost leaf of a stapled book stands out beyond the
// outermost before the fore-edge is cut: of n sheets folded one in another, each
// leaf pushed out by the n - 1 leaves outside it where the spine is folded square,
// and by a quarter of the way round them, pi/2 as much, where it is round. That is
// geometry; a press adds to it by its own experience.
func Creep(pages int, p Paper) (square, round Micrometres) {
	const pagesPerSheet = 4
	outside := (pages+pagesPerSheet-1)/pagesPerSheet - 1
	if outside <= 0 {
		return 0, 0
	}
	square = Micrometres(outside) * p.Leaf()
	return square, micrometres(float64(square) * math.Pi / 2)
}
