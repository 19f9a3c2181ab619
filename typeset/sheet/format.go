package sheet

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// Format is what a running order is set on. Lengths are in points; on a window a
// point is one of its units.
type Format struct {
	Trim        pagemodel.Trim
	Side        typeset.Length // the margins left and right
	Head, Foot  typeset.Length // from the edges to the tops of the head's words, and to the catchword's baseline
	Least, Most typeset.Length // the smallest and the largest type that verse is set in
	Title       typeset.Length // the size of titles
	Label       typeset.Length // and of all other words: what is said, the printed page, the catchword
	Folios      bool           // leaves are numbered at their foot
}

// Papers are the papers that a copy can be printed on, by name.
var Papers = []string{"A4", "A5", "Letter"}

// Verse on paper is set in 16 to 24 points: large print begins at 16 (common
// practice, no source), and at 24 the lines of most verse still fit A4.
var leastOnPaper, mostOnPaper = pagemodel.Pt(16), pagemodel.Pt(24)

// OnPaper is the format of a paper by its name: A4, A5 (ISO 216) or Letter (8½ by
// 11 inches). The error says what there is.
func OnPaper(name string) (Format, error) {
	f := Format{
		Side: pagemodel.MM(25), Head: pagemodel.MM(22), Foot: pagemodel.MM(20),
		Least: leastOnPaper, Most: mostOnPaper, Title: pagemodel.Pt(20), Label: pagemodel.Pt(15), Folios: true,
	}
	switch strings.ToUpper(strings.TrimSpace(name)) {
	case "A4":
		f.Trim = pagemodel.Trim{Width: pagemodel.MM(210), Height: pagemodel.MM(297)}
	case "LETTER":
		f.Trim = pagemodel.Trim{Width: pagemodel.Pt(612), Height: pagemodel.Pt(792)}
	case "A5":
		f.Trim = pagemodel.Trim{Width: pagemodel.MM(148), Height: pagemodel.MM(210)}
		f.Side, f.Head, f.Foot = pagemodel.MM(16), pagemodel.MM(15), pagemodel.MM(13)
		f.Title, f.Label = pagemodel.Pt(16), pagemodel.Pt(13)
	default:
		return Format{}, fmt.Errorf("a reading copy can't be set on %q: it is one of %s", name, strings.Join(Papers, ", "))
	}
	return f, nil
}

// OnWindow is the format of a window of that many units. Verse is set in a 40th to
// a 20th of its height, and never under 16 units; what is left at the foot, an
// eighth, is for the time.
func OnWindow(width, height float64) Format {
	width, height = max(width, 320), max(height, 240)
	share := func(of, n float64) typeset.Length { return pagemodel.Pt(of / n) }
	least := max(pagemodel.Pt(16), share(height, 40))
	return Format{
		Trim: pagemodel.Trim{Width: pagemodel.Pt(width), Height: pagemodel.Pt(height)},
		Side: max(pagemodel.Pt(24), share(width, 7)-share(height, 30)), Head: share(height, 15), Foot: share(height, 8),
		Least: least, Most: max(least, share(height, 20)),
		Title: max(pagemodel.Pt(14), share(height, 30)), Label: max(pagemodel.Pt(12), share(height, 40)),
	}
}

// measure is the width that lines have.
func (f *Format) measure() typeset.Length { return f.Trim.Width - 2*f.Side }

// leadingOf is the distance from baseline to baseline of type of a size: generous,
// as the eye leaves the line and comes back, and words said otherwise stand between.
func leadingOf(size typeset.Length) typeset.Length { return size * 7 / 5 }

// headBase is the baseline of the first row at a leaf's head.
func (f *Format) headBase() typeset.Length { return f.Head + f.Title }

// firstBase is the baseline of the first line of verse of a size, below head rows
// that take depth more than one row does.
func (f *Format) firstBase(size, depth typeset.Length) typeset.Length {
	return f.headBase() + depth + leadingOf(size) + f.Title
}

// rows is how many rows of verse of a size a leaf has room for, below such a head.
func (f *Format) rows(size, depth typeset.Length) int {
	foot := f.Trim.Height - f.Foot - f.Label*8/5 - size*3/10
	return max(1, int((foot-f.firstBase(size, depth))/leadingOf(size))+1)
}
