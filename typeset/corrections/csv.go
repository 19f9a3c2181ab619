package corrections

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
)

// csvColumns is the header row: the names that the list has as JSON, then what else
// it says. The counting rule stands on every row, since rows are taken out singly.
var csvColumns = []string{
	"number", "kind", "poem", "stanza", "line", "page", "row", "was", "is", "reason", "whose", "state",
	"question", "answer", "moves", "field", "rule",
}

// WriteCSV writes the list as comma-separated values, UTF-8, with a header row: the
// format of RFC 4180, lines ending with CR LF. There is no byte order mark, which
// the format does not have. The error is the writer's.
//
// Where a spreadsheet would take a cell for a formula an apostrophe stands before
// it: see [guarded]. [Unguarded] takes it away.
func (l *List) WriteCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	rows := [][]string{csvColumns}
	for i := range l.All {
		rows = append(rows, l.All[i].csvRow(l.Rule))
	}
	return out.WriteAll(rows)
}

// csvRow is a correction's cells. A number that it does not have is an empty cell.
func (c *Correction) csvRow(rule string) []string {
	row := []string{
		strconv.Itoa(c.Number), string(c.Change.Kind), c.Title, count(c.Stanza), count(c.LineNumber), c.Page, count(c.Row),
		c.Change.Was, c.Change.Is, c.Reason, string(c.letters()), c.State.String(), c.Question, c.Answer, c.Moves, c.Change.Field, rule,
	}
	for i := range row {
		row[i] = guarded(oneEnd.Replace(row[i]))
	}
	return row
}

// oneEnd makes all ends of line one kind, of which the writer makes CR LF.
var oneEnd = strings.NewReplacer("\r\n", "\n", "\r", "\n")

func count(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// formulaSigns begin what spreadsheets take for a formula (OWASP's list; a tab and
// an end of line because some pass over them).
const formulaSigns = "=+-@\t\n"

// guarded puts an apostrophe before a cell that a spreadsheet would take for a
// formula, and before one that looks as if that had been done to it already. So
// nothing is lost: a cell is what [Unguarded] makes of it.
func guarded(cell string) string {
	if bare := strings.TrimLeft(cell, "'"); bare != "" && strings.Contains(formulaSigns, bare[:1]) {
		return "'" + cell
	}
	return cell
}

// Unguarded is a cell of the list as CSV without the apostrophe that keeps
// spreadsheets from taking it for a formula.
func Unguarded(cell string) string {
	if rest, found := strings.CutPrefix(cell, "'"); found && guarded(rest) == cell {
		return rest
	}
	return cell
}
