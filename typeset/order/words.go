package order

import "fmt"

// Instructions say how the dummy is printed and folded, as a sentence without
// its stop: "24 sheets of A4 in 6 sections of 4 sheets; print at actual size on
// both sides, flip on the short edge; pages at 92 per cent".
func (d *Dummy) Instructions() string {
	return fmt.Sprintf("%s of %s %s; print at actual size on both sides, flip on the short edge; pages at %d per cent%s",
		counted(len(d.Sheets), "sheet"), d.Paper.Name, d.folds(), d.Percent, d.blanks())
}

// folds says how many sheets are folded together.
func (d *Dummy) folds() string {
	last := d.Sheets[len(d.Sheets)-1]
	full := d.sheetsIn(1)
	switch {
	case last.Section == 1 && full == 1:
		return "folded once"
	case last.Section == 1:
		return "folded together and stapled"
	case d.sheetsIn(last.Section) == full:
		return fmt.Sprintf("in %d sections of %s", last.Section, counted(full, "sheet"))
	}
	return fmt.Sprintf("in %s of %s and one of %d", counted(last.Section-1, "section"), counted(full, "sheet"), d.sheetsIn(last.Section))
}

// blanks says how many pages at the back are blank because sheets have four.
func (d *Dummy) blanks() string {
	switch n := len(d.Sheets)*sheetPages - d.Pages; n {
	case 0:
		return ""
	case 1:
		return "; the last page is left blank"
	default:
		return fmt.Sprintf("; the last %d pages are left blank", n)
	}
}

// LabelOf is the label of one side of sheet i, for gathering: "section 2, sheet
// 3 of 4, front".
func (d *Dummy) LabelOf(i int, front bool) string {
	s, side := d.Sheets[i], "back"
	if front {
		side = "front"
	}
	label := fmt.Sprintf("sheet %d of %d, %s", s.Number, d.sheetsIn(s.Section), side)
	if d.Sheets[len(d.Sheets)-1].Section > 1 {
		label = fmt.Sprintf("section %d, %s", s.Section, label)
	}
	return label
}

// sheetsIn is how many sheets a section has.
func (d *Dummy) sheetsIn(section int) (n int) {
	for _, s := range d.Sheets {
		if s.Section == section {
			n++
		}
	}
	return n
}

// counted is a number with its noun: "1 sheet", "4 sheets".
func counted(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprint(n, " ", noun)
}
