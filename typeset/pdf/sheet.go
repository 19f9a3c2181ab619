package pdf

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset"
)

// A placed is a page on a side of a sheet, and what of it is shown there.
type placed struct {
	Placed
	rows []typeset.Row
	clip typeset.Rect // of the paper; nothing of the page is shown outside
}

// A side is one side of a sheet of the file. Places on it count from the paper's
// top left corner, y down.
type side struct {
	label  string
	paper  pagemodel.Trim
	trim   typeset.Rect   // what is left when the sheet has been cut
	bleed  typeset.Length // what ink may cover beyond that, on all four sides
	placed []placed
	rules  []typeset.Rect
	rows   []typeset.Row
}

// full is the size of a page that is not reduced, in hundredths.
const full = 100

// sides lays the pages on sheets: as the document says, or one each, or verso
// and recto together.
func sides(d *Document, trim pagemodel.Trim) []side {
	var all []side
	for i := range d.Sides {
		all = append(all, imposed(d, &d.Sides[i], trim))
	}
	for i := 0; len(d.Sides) == 0 && i < len(d.Pages); i = all[len(all)-1].next() {
		if d.Sheet.Spreads {
			all = append(all, spread(d, i, trim))
		} else {
			all = append(all, single(d, i, trim))
		}
	}
	return all
}

// imposed is a side as the document says it. Each page is cut at its own trim.
func imposed(d *Document, by *Side, trim pagemodel.Trim) side {
	s := side{label: by.Label, paper: by.Paper, trim: by.Area, rules: by.Rules, rows: by.Rows}
	for _, p := range by.Pages {
		reduced := func(l typeset.Length) typeset.Length { return typeset.Length(int64(l) * int64(p.Percent) / full) }
		clip := typeset.Rect{X: p.Corner.X, Y: p.Corner.Y, W: reduced(trim.Width), H: reduced(trim.Height)}
		s.placed = append(s.placed, placed{p, d.Pages[p.Page].Rows, clip})
	}
	return s
}

// single is page i on a sheet of its own. At the spine it is cut at the trim:
// what runs on there is the facing page's.
func single(d *Document, i int, trim pagemodel.Trim) side {
	s := d.Sheet.around(trim)
	clip := grown(s.trim, s.bleed)
	clip.W -= s.bleed
	if d.Pages[i].Side == pagemodel.Recto {
		clip.X += s.bleed
	}
	s.placed = []placed{{Placed{i, corner(s.trim), full}, d.Pages[i].Rows, clip}}
	return s
}

// spread is page i and, if that is a verso, the recto that faces it. A page
// without one facing it keeps its own half. A line that lies across both pages
// is drawn with the verso, whole.
func spread(d *Document, i int, trim pagemodel.Trim) side {
	s := d.Sheet.around(pagemodel.Trim{Width: 2 * trim.Width, Height: trim.Height})
	left, clip := corner(s.trim), grown(s.trim, s.bleed)
	right := typeset.Point{X: left.X + trim.Width, Y: left.Y}
	first := d.Pages[i]
	if first.Side == pagemodel.Recto {
		s.placed = []placed{{Placed{i, right, full}, first.Rows, clip}}
		return s
	}
	s.placed = []placed{{Placed{i, left, full}, first.Rows, clip}}
	if i+1 < len(d.Pages) && d.Pages[i+1].Side == pagemodel.Recto {
		s.placed = append(s.placed, placed{Placed{i + 1, right, full}, ownRows(d.Pages[i+1], first), clip})
	}
	return s
}

// next is the page after those on the side of a sheet.
func (s *side) next() int { return s.placed[len(s.placed)-1].Page + 1 }

// around is a side with nothing on it yet: a trim, its bleed, its crop marks,
// and the paper round it.
func (s Sheet) around(trim pagemodel.Trim) side {
	edge := s.Bleed
	if s.Marks {
		edge = max(s.Bleed, markGap) + markLength
	}
	edge = max(edge, s.Proof)
	area := typeset.Rect{X: edge, Y: edge, W: trim.Width, H: trim.Height}
	all := side{
		paper: pagemodel.Trim{Width: trim.Width + 2*edge, Height: trim.Height + 2*edge},
		trim:  area, bleed: s.Bleed,
	}
	if s.Marks {
		all.rules = cropMarks(area, max(s.Bleed, markGap))
	}
	if s.Proof > 0 {
		all.rules = append(all.rules, corners(area)...)
	}
	return all
}

// boxes are the side's boxes (ISO 14.11.2): all the paper, what the ink of the
// page may cover, and the size after cutting.
func (s *side) boxes() string {
	return fmt.Sprintf("/MediaBox %s /BleedBox %s /TrimBox %s",
		s.box(typeset.Rect{W: s.paper.Width, H: s.paper.Height}), s.box(grown(s.trim, s.bleed)), s.box(s.trim))
}

// box is an area of the side as PDF wants it, y up.
func (s *side) box(r typeset.Rect) string {
	return box(r.X, s.paper.Height-r.Y-r.H, r.X+r.W, s.paper.Height-r.Y)
}

// grown is an area with so much more on each of its four sides.
func grown(r typeset.Rect, by typeset.Length) typeset.Rect {
	return typeset.Rect{X: r.X - by, Y: r.Y - by, W: r.W + 2*by, H: r.H + 2*by}
}

func corner(r typeset.Rect) typeset.Point { return typeset.Point{X: r.X, Y: r.Y} }
