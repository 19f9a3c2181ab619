package ui

import (
	"strings"

	"headland/typeset"
)

// faultKind is how a kind of fault is shown: by a letter in the margin, and by
// words everywhere else.
type faultKind struct{ letter, words string }

// faultKinds are the letters and words of all kinds. No two letters are alike,
// nor like those of a line that turns (t, k, e). The letters are ours, but for #,
// the proof reader's old sign for white (from memory).
var faultKinds = map[typeset.FaultKind]faultKind{
	typeset.Widow:         {"w", "widow"},
	typeset.Orphan:        {"o", "orphan"},
	typeset.SplitCouplet:  {"c", "couplet parted"},
	typeset.SplitTercet:   {"r", "tercet parted"},
	typeset.SplitStanza:   {"s", "stanza parted at the gutter"},
	typeset.TurnedStanza:  {"v", "stanza parted at a turn"},
	typeset.PartedLine:    {"p", "line parted from its turnover"},
	typeset.UnfacedPoem:   {"f", "two pages that do not face"},
	typeset.StrandedTitle: {"h", "heading parted from its lines"},
	typeset.ShortLastPage: {"b", "short last page"},
	typeset.HiddenBreak:   {"#", "stanza break hidden"},
	typeset.OverFoot:      {"d", "too near the foot"},
	typeset.NearGutter:    {"i", "too near the gutter"},
	typeset.OverMeasure:   {"m", "wider than the measure"},
	typeset.MissingGlyph:  {"g", "sign missing from the face"},
	typeset.AbsentFace:    {"a", "face missing"},
}

// kindOf is how a fault is shown.
func kindOf(f typeset.Fault) faultKind { return faultKinds[f.Kind] }

// faultSigns finds the faults of a page, row by row.
func faultSigns(page *typeset.Page, faults []typeset.Fault) []faultSign {
	var found []faultSign
	for _, f := range faults {
		if f.Page != page.Number {
			continue
		}
		row, letter := faultRow(page, f), kindOf(f).letter
		if row < 0 {
			continue
		}
		if n := len(found); n > 0 && found[n-1].row == row {
			if !strings.Contains(found[n-1].letters, letter) {
				found[n-1].letters += " " + letter
			}
			continue
		}
		found = append(found, faultSign{row, letter})
	}
	return found
}

// faultRow is the row of the page that a fault is at: its own, or, where it is
// at none of the poet's lines, its poem's first; -1 on a page without rows.
func faultRow(page *typeset.Page, f typeset.Fault) int {
	for i := range page.Rows {
		if f.Row > 0 && page.Rows[i].Number == f.Row {
			return i
		}
	}
	if len(page.Rows) == 0 {
		return -1
	}
	return firstRowOf(page, f.Poem)
}
