package pagemodel

import (
	"fmt"
	"math"
	"strconv"
)

// TurnoverStyle is where the tail of an overlong line is put.
type TurnoverStyle int

const (
	// TurnIndented puts the tail one em beyond the poem's deepest indent (New
	// Hart's Rules 9.4.2).
	TurnIndented TurnoverStyle = iota
	// TurnRight sets the tail towards the right of the measure, beginning a
	// little left of where the first part ends (E. Mendelson's rule).
	TurnRight
)

var turnoverNames = [...]string{TurnIndented: "indented", TurnRight: "set right"}

// String is the style in words.
func (t TurnoverStyle) String() string { return nameOf(turnoverNames[:], int(t)) }

// ParseTurnoverStyle reads a style by its words.
func ParseTurnoverStyle(s string) (TurnoverStyle, error) {
	n, err := indexOf(turnoverNames[:], "turnover style", s)
	return TurnoverStyle(n), err
}

// Design is how the book is to look. It is a plain value; a collection holds
// one.
type Design struct {
	Trim    Trim
	Margins Margins
	Binding Binding

	Face    string // the family's name
	Size    Length // of the verse
	Leading Length // from baseline to baseline

	TitleRow  int // the grid row, from 1 at the head, of a title's first baseline
	PoemRow   int // the grid row of a poem's first baseline on its first page: the sink
	StanzaGap int // whole lines of white between stanzas

	Turnovers  TurnoverStyle
	RunOut     Length // how far a line may run into the outer or inner margin before it turns
	HangQuotes bool   // opening quotes, brackets and dashes hang outside the left edge
	Tighten    int    // by how many per cent word spaces may be narrowed before a line turns, 0 to 40

	Edge         Edge
	Titles       TitleStyle
	TitleSize    Length // 0 is five quarters of the verse's size
	TitleCentred bool   // titles stand in the middle of the measure
	Folios       FolioPlace
	Running      RunningHeads
	Prose        ProseStyle
	Hidden       HiddenBreaks

	SectionOpen bool // a section's page is not backed by a blank: its first poem may stand on its verso
	Signature   int  // pages folded from one sheet: 8, 16 or 32; 0 is 16
	Paper       Paper
}

// SignaturePages is how many pages are folded from one sheet.
func (d Design) SignaturePages() int {
	if d.Signature == 0 {
		return 16
	}
	return d.Signature
}

// DefaultDesign is what a new collection begins with: B-format, perfect bound,
// sized for about 80 pages.
func DefaultDesign() Design {
	trim := trimMM(129, 198)
	return Design{
		Trim:    trim,
		Binding: PerfectBound,
		Margins: Margins{Inner: DefaultInner(PerfectBound, 80), Outer: MM(19), Head: MM(20), Foot: MM(23)},
		Face:    "EB Garamond", Size: Pt(11), Leading: Pt(14),
		TitleRow: 3, PoemRow: 6, StanzaGap: 1,
	}
}

// Measure is the width that a line has: what the trim leaves between the
// margins. It takes the remainder of any rounding.
func (d Design) Measure() Length { return d.Trim.Width - d.Margins.Inner - d.Margins.Outer }

// Depth is the height of the text, from the head margin to the foot margin.
func (d Design) Depth() Length { return d.Trim.Height - d.Margins.Head - d.Margins.Foot }

// Rows is how many lines of the baseline grid stand in the depth. The first
// baseline lies one type size below the head margin, the rest a leading apart.
func (d Design) Rows() int {
	if d.Leading <= 0 {
		return 0
	}
	return max(0, int((d.Depth()-d.Size)/d.Leading)+1)
}

// Baseline is the distance of a grid row (from 1) below the top of the trim.
func (d Design) Baseline(row int) Length {
	return d.Margins.Head + d.Size + Length(row-1)*d.Leading
}

// shown is a length as a person would say it, to a tenth of a point.
func shown(l Length) string {
	return strconv.FormatFloat(math.Round(10*l.Points())/10, 'f', -1, 64) + "pt"
}

// Check says in words what makes the design impossible to set, or nil.
func (d Design) Check() error {
	switch {
	case d.Size < Pt(4) || d.Size > Pt(72):
		return fmt.Errorf("type of %s can't be set: choose a size from 4pt to 72pt", shown(d.Size))
	case d.Leading < d.Size/2 || d.Leading > Pt(200):
		return fmt.Errorf("a leading of %s does not suit type of %s: choose one near %s", shown(d.Leading), shown(d.Size), shown(d.Size*5/4))
	case d.Trim.Width < MM(40) || d.Trim.Height < MM(40) || d.Trim.Width > MM(1000) || d.Trim.Height > MM(1000):
		return fmt.Errorf("a trim of %.0f by %.0f mm can't be set: choose from 40 to 1000 mm", d.Trim.Width.Millimetres(), d.Trim.Height.Millimetres())
	case d.Margins.Inner < 0 || d.Margins.Outer < 0 || d.Margins.Head < 0 || d.Margins.Foot < 0:
		return fmt.Errorf("a margin can't be less than nothing")
	case d.Measure() < 4*d.Size:
		return fmt.Errorf("the margins leave a measure of %s, under four ems: make them narrower", shown(d.Measure()))
	case d.StanzaGap < 1 || d.StanzaGap > 8:
		return fmt.Errorf("a stanza gap of %d lines can't be set: choose 1 to 8", d.StanzaGap)
	case d.RunOut < 0 || d.RunOut > min(d.Margins.Inner, d.Margins.Outer):
		return fmt.Errorf("lines can't run %s into a margin of %s: choose less", shown(d.RunOut), shown(min(d.Margins.Inner, d.Margins.Outer)))
	case d.Tighten < 0 || d.Tighten > 40:
		return fmt.Errorf("word spaces can't be narrowed by %d per cent: choose 0 to 40", d.Tighten)
	case d.TitleSize != 0 && (d.TitleSize < Pt(4) || d.TitleSize > Pt(72)):
		return fmt.Errorf("titles of %s can't be set: choose a size from 4pt to 72pt", shown(d.TitleSize))
	case d.Signature != 0 && d.Signature != 8 && d.Signature != 16 && d.Signature != 32:
		return fmt.Errorf("a signature of %d pages can't be folded: choose 8, 16 or 32", d.Signature)
	case d.Paper.GSM < 0 || d.Paper.Volume < 0 || d.Paper.GSM > 600 || d.Paper.Volume > 60:
		return fmt.Errorf("a paper of %d gsm and volume %d is none: choose up to 600 gsm and volume 60", d.Paper.GSM, d.Paper.Volume)
	case d.TitleRow < 1 || d.PoemRow <= d.TitleRow:
		return fmt.Errorf("a title on line %d does not stand above a poem that begins on line %d: move one of them", d.TitleRow, d.PoemRow)
	case d.Rows()-3 < d.PoemRow:
		return fmt.Errorf("a sink to line %d leaves too little of a page of %d lines: make it less", d.PoemRow, d.Rows())
	}
	return nil
}
