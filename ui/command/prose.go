package command

import (
	"fmt"
	"strconv"
	"strings"
	"text/tabwriter"
	"unicode/utf8"
)

// prose prints a report to be read in a terminal: what has to be dealt with
// first.
func (c *call) prose(r report) {
	c.heading(r)
	c.turnoverTable(r.Turnovers)
	c.decided(r.Decisions)
	c.unsettledAgain(r.Decisions)
	c.faultTable(r.Faults)
	c.hiddenBreaks(r.PageEnds)
	c.proposedForms(r.Forms)
	c.sentAndKept(r)
	c.ordersAndReadings(r)
	c.extentLines(r)
	c.designLine(r.Design)
	c.contentsTable(r.Contents)
}

func (c *call) heading(r report) {
	title := r.Title
	if title == "" {
		title = "An untitled collection"
	}
	if r.poet != "" {
		title += ", " + r.poet
	}
	c.out.printf("%s\n%s, %s, %s\n\n", title, counted(r.Poems, "poem"), counted(r.Lines, "line"), counted(r.Pages, "page"))
}

func (c *call) turnoverTable(turnovers []turnover) {
	if len(turnovers) == 0 {
		c.out.printf("Every line fits the measure.\n\n")
		return
	}
	unsettled := 0
	for _, t := range turnovers {
		if t.State == "unsettled" {
			unsettled++
		}
	}
	c.out.printf("Too long for the measure: %s, %s\n", counted(len(turnovers), "line"), howMany(unsettled, len(turnovers)))
	rows := make([]string, len(turnovers))
	for i, t := range turnovers {
		rows[i] = fmt.Sprintf("page %s, line %d\t%s\t%s pt over\t#%d %s\tstanza %d, line %d",
			t.Page, t.Row, t.State, decimal(t.Overrun), t.Number, shortened(t.Poem, nameRoom), t.Stanza, t.Line)
	}
	for i, row := range aligned(rows) {
		c.out.printf("  %s\n      %s\n", row, shortened(turnovers[i].Text, lineRoom))
	}
	c.out.printf("\n")
}

// aligned is rows of cells parted by tabs, the cells below one another.
func aligned(rows []string) []string {
	var b strings.Builder
	table := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	fmt.Fprint(table, strings.Join(rows, "\n"))
	_ = table.Flush() // a strings.Builder takes everything
	return strings.Split(b.String(), "\n")
}

func howMany(unsettled, all int) string {
	switch unsettled {
	case 0:
		return "all of them settled"
	case all:
		return "none of them settled"
	}
	return strconv.Itoa(unsettled) + " of them unsettled"
}

func decimal(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

// The most characters of a poem's name and of a line that a table has room for.
const (
	nameRoom = 32
	lineRoom = 120
)

// shortened is words cut to so many characters, where they would spoil a table.
func shortened(words string, most int) string {
	if utf8.RuneCountInString(words) <= most {
		return words
	}
	return strings.TrimRight(string([]rune(words)[:most-1]), " ,.;:—–-") + "…"
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func (c *call) contentsTable(contents []contentsEntry) {
	c.out.printf("Contents\n")
	inSection, widest := false, 0
	for i := range contents {
		inSection = inSection || contents[i].section
		if inSection && !contents[i].section {
			contents[i].Title = "  " + contents[i].Title
		}
		widest = max(widest, utf8.RuneCountInString(contents[i].Title))
	}
	for _, e := range contents {
		space := widest - utf8.RuneCountInString(e.Title)
		c.out.printf("  %s%s  %3s\n", e.Title, strings.Repeat(" ", space), e.Page)
	}
}
