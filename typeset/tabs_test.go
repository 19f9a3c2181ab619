package typeset

import (
	"strings"
	"testing"

	"headland/pagemodel"
)

// tabbed sets lines with a tab stop, ems from the left edge, before each word
// that a bar stands before in the text.
func tabbed(d pagemodel.Design, stops []pagemodel.Em, lines ...string) []Row {
	b := pagemodel.NewBuilder(pagemodel.About{}, d)
	var set []pagemodel.Line
	for _, text := range lines {
		set = append(set, tabbedLine(b.Line(strings.ReplaceAll(text, "|", "")), stops, text))
	}
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, set)})})
	return verse(setOf(b.Collection()))
}

func tabbedLine(l pagemodel.Line, stops []pagemodel.Em, text string) pagemodel.Line {
	at := 0
	for i, piece := range strings.Split(text, "|") {
		if i > 0 {
			l = l.WithTab(at, stops[i-1])
		}
		at += len(piece)
	}
	return l
}

// TestTableAligns: what stands at a tab stop begins exactly there in every line,
// whatever the words before it, the line's indent, its styles, and a hanging
// quotation mark; and the pointer finds it there.
func TestTableAligns(t *testing.T) {
	d := testDesign()
	d.HangQuotes = true
	stops := []pagemodel.Em{pagemodel.Ems(8.3), pagemodel.Ems(15)}
	lines := []string{"rye |four |3.50", "“wholemeal” |twelve |4.20", "bun|one|0.90", "spelt and oats, |AV |10.10"}
	rows := tabbed(d, stops, lines...)
	if len(rows) != len(lines) {
		t.Fatalf("%d rows, want %d", len(rows), len(lines))
	}
	for i, text := range lines {
		at := 0
		for k, piece := range strings.Split(text, "|") {
			if k > 0 {
				want := stops[k-1].At(d.Size)
				if got := rows[i].XAt(at); got != want {
					t.Errorf("%q: column %d begins at %v, want %v", text, k, got, want)
				}
				if got := rows[i].OffsetAt(want); got != at {
					t.Errorf("%q: at the stop of column %d stands byte %d, want %d", text, k, got, at)
				}
			}
			at += len(piece)
		}
	}
	if rows[1].X >= 0 {
		t.Errorf("the quotation mark does not hang: it begins at %v", rows[1].X)
	}
}

// TestPastTheStop: where the words have gone past the stop already, what follows
// stands an ordinary word space on, whether or not one is typed there.
func TestPastTheStop(t *testing.T) {
	stop := []pagemodel.Em{pagemodel.Ems(2)}
	rows := tabbed(testDesign(), stop, "a whole tray |cooling", "a whole tray|cooling", "a whole tray cooling")
	space := strings.Index("a whole tray cooling", "cooling")
	want := rows[2].XAt(space) - rows[2].XAt(space-1)
	if got := rows[0].XAt(space) - rows[0].XAt(space-1); abs(got-want) > 2 {
		t.Errorf("with a space typed: %v, want %v", got, want)
	}
	tray := &rows[1].Runs[0]
	if got := rows[1].Runs[1].X - tray.X - tray.Width; abs(got-want) > 2 {
		t.Errorf("without one: %v, want %v", got, want)
	}
}

// TestStopsInATurnover: on a turned row and on what this edition breaks off the
// stop counts from the poem's left edge all the same; no turn swallows it.
func TestStopsInATurnover(t *testing.T) {
	d := testDesign()
	stop := []pagemodel.Em{pagemodel.Ems(12)}
	text := "a line of words that goes on a little too long for the measure it |has"
	at := strings.Index(text, "|")
	rows := tabbed(d, stop, text)
	last := &rows[len(rows)-1]
	if len(rows) != 2 || last.Turn != Turnover || last.XAt(at) != stop[0].At(d.Size) {
		t.Errorf("%d rows, what stands at the stop begins at %v, want %v", len(rows), last.XAt(at), stop[0].At(d.Size))
	}
	line := tabbedLine(pagemodel.NewLine(1, strings.Replace(text, "|", "", 1)), stop, text).WithIndent(pagemodel.OneEm)
	b := testBlocks(d.Measure())
	tail, x := b.begin(&line, strings.Index(text, "for"), len(line.Text()))
	if got := x + tail.xAt(at); x != d.Size || got != stop[0].At(d.Size) {
		t.Errorf("broken off, it begins at %v, what stands at the stop at %v", x, got)
	}
}

// TestStopsBeyondReach: stops beyond the measure, in any number, neither hang
// the setting nor lose a word.
func TestStopsBeyondReach(t *testing.T) {
	var stops []pagemodel.Em
	text := "loaf"
	for range 300 {
		stops = append(stops, pagemodel.Ems(60000))
		text += " |loaf and loaf"
	}
	end := 0
	for _, r := range tabbed(testDesign(), stops, text) {
		if r.Start < end {
			t.Fatalf("a row begins at %d, the one above ends at %d", r.Start, end)
		}
		end = r.End
	}
	if want := len(strings.ReplaceAll(text, "|", "")); end != want {
		t.Errorf("the rows end at %d of %d", end, want)
	}
}
