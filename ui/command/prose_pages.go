package command

import (
	"fmt"
	"slices"
	"strings"
)

// faultTable lists the faults, and below each what would mend it.
func (c *call) faultTable(faults []fault) {
	if len(faults) == 0 {
		c.out.printf("Nothing is faulty.\n\n")
		return
	}
	c.out.printf("Faulty: %s\n", counted(len(faults), "place"))
	rows := make([]string, len(faults))
	for i, f := range faults {
		rows[i] = fmt.Sprintf("%s\t%s\t%s\t%s", f.place(), strings.ReplaceAll(f.Kind, "-", " "), shortened(f.Poem, nameRoom), f.Text)
	}
	for i, row := range aligned(rows) {
		c.out.printf("  %s\n", row)
		for _, r := range faults[i].Remedies {
			c.out.printf("      %s\n", r.Text)
		}
	}
	c.out.printf("\n")
}

// place is where a fault is, in words.
func (f fault) place() string {
	switch {
	case f.Page == "":
		return "the book"
	case f.Row == 0:
		return "page " + f.Page
	}
	return fmt.Sprintf("page %s, line %d", f.Page, f.Row)
}

// hiddenBreaks lists the page ends that hide a stanza break.
func (c *call) hiddenBreaks(ends []pageEnd) {
	hidden := slices.DeleteFunc(slices.Clone(ends), func(e pageEnd) bool { return !e.Hides })
	if len(hidden) == 0 {
		return
	}
	c.out.printf("Hidden by a page end: %s\n", counted(len(hidden), "stanza break"))
	rows := make([]string, len(hidden))
	for i, e := range hidden {
		rows[i] = fmt.Sprintf("foot of page %s\t%s\tbefore “%s”", e.Page, shortened(e.Poem, nameRoom), shortened(e.Text, lineRoom))
	}
	for _, row := range aligned(rows) {
		c.out.printf("  %s\n", row)
	}
	c.out.printf("\n")
}

// proposedForms lists the forms that poems have by their shape.
func (c *call) proposedForms(forms []proposal) {
	if len(forms) == 0 {
		return
	}
	c.out.printf("Forms that could be declared\n")
	rows := make([]string, len(forms))
	for i, p := range forms {
		rows[i] = fmt.Sprintf("#%d %s\t%s", p.Number, shortened(p.Poem, nameRoom), p.Form)
	}
	for _, row := range aligned(rows) {
		c.out.printf("  %s\n", row)
	}
	c.out.printf("\n")
}

func (c *call) extentLines(r report) {
	e := r.Extent
	c.out.printf("Extent: %s", counted(e.Pages, "page"))
	if e.Blanks > 0 {
		c.out.printf(" and %s, so %s of %d\n", counted(e.Blanks, "blank"), counted(e.Signatures, "signature"), e.SignaturePages)
	} else {
		c.out.printf(", %s of %d\n", counted(e.Signatures, "signature"), e.SignaturePages)
	}
	eights, sixteens, thirtyTwos := e.EvenWorking[0], e.EvenWorking[1], e.EvenWorking[2]
	c.out.printf("Blanks to an even working: %d in eights, %d in sixteens, %d in thirty-twos\n", eights.Blanks, sixteens.Blanks, thirtyTwos.Blanks)
	c.out.printf("Spine: %s mm, %.2f in on %d gsm paper of volume %d, %d pages an inch", decimal(e.SpineMM), e.SpineIn, e.Paper.GSM, e.Paper.Volume, e.Paper.PagesPerInch)
	if e.SpineGluedMM > 0 {
		c.out.printf("; with its glue %s mm", decimal(e.SpineGluedMM))
	}
	if e.CreepMM != nil {
		c.out.printf("; creep %.2f mm where the spine is square, %.2f mm where it is round", e.CreepMM.Square, e.CreepMM.Round)
	}
	c.out.printf("\n")
}

func (c *call) designLine(d designReport) {
	c.out.printf("Design: %s by %s mm, %s; %s %s on %s pt to a measure of %s pt; turnovers %s\n\n",
		number(d.Trim[0]), number(d.Trim[1]), d.Binding, d.Face, number(d.Size), number(d.Leading), number(d.Measure), d.Turnovers)
}
