package pagemodel

// Trim is the size of a page after the book has been cut.
type Trim struct {
	Width, Height Length
}

// NamedTrim is a trim size under the name that the trade gives it.
type NamedTrim struct {
	Name string
	Trim Trim
}

func trimMM(w, h float64) Trim { return Trim{MM(w), MM(h)} }
func trimIn(w, h float64) Trim { return Trim{Pt(72 * w), Pt(72 * h)} }

// TrimPresets are the usual sizes of a book of verse, width before height.
// They are only a start: sources differ by up to 8 mm (demy octavo), and any
// size can be set.
//
// A4, A5, A6: ISO 216:2007. A-format and B-format: the UK trade's sizes as
// printers list them (some give 110 x 178 and 130 x 197). Demy 138 x 216,
// Royal 156 x 234, Crown 127 x 191: UK trade lists, common practice. The
// three US sizes: in inches, US trade.
var TrimPresets = []NamedTrim{
	{"A-format", trimMM(111, 178)},
	{"B-format", trimMM(129, 198)},
	{"A6", trimMM(105, 148)},
	{"A5", trimMM(148, 210)},
	{"A4", trimMM(210, 297)},
	{"Crown octavo", trimMM(127, 191)},
	{"Demy octavo", trimMM(138, 216)},
	{"Royal octavo", trimMM(156, 234)},
	{"US 5 × 8 in", trimIn(5, 8)},
	{"US 5½ × 8½ in", trimIn(5.5, 8.5)},
	{"US 6 × 9 in", trimIn(6, 9)},
}

// TrimNamed finds a preset by its name.
func TrimNamed(name string) (Trim, bool) {
	for _, t := range TrimPresets {
		if t.Name == name {
			return t.Trim, true
		}
	}
	return Trim{}, false
}
