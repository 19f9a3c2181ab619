package corrections

import (
	"bytes"
	"encoding/csv"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

func comma(t testing.TB, l *List) string {
	t.Helper()
	var b bytes.Buffer
	if err := l.WriteCSV(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestCSV(t *testing.T) {
	l := sample()
	l.Rule = "As sent."
	want := strings.Join([]string{
		"number,kind,poem,stanza,line,page,row,was,is,reason,whose,state,question,answer,moves,field,rule",
		`1,new line,Sign,2,4,14,7,"“her father’s, the stitching so far gone”","“her father’s, / the stitching so far gone”",the turned line hid the pause that the poem leans on,AA,queried,"Would a turn at “so” do, to keep seven lines?",No: the break is meant.,the poem still ends on page 14; nothing else moves,,As sent.`,
		`2,substitute,,,,4,,“2025”,“2026”,,PE,open,,,,imprint,As sent.`,
		`3,delete,“Behind him it comes out”,1,1,iv,21,“-ing”,,,EA,open,,,,,As sent.`, "",
	}, "\r\n")
	if got := comma(t, l); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// TestCSVComesBack: another reader gets every cell back, but for ends of line, which
// become one kind, and no cell is one that a spreadsheet takes for a formula.
func TestCSVComesBack(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for range 400 {
		l := randomList(r)
		written := comma(t, l)
		checkRFC4180(t, written)
		rows, err := csv.NewReader(strings.NewReader(written)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if len(rows) != len(l.All)+1 || !slices.Equal(rows[0], csvColumns) {
			t.Fatalf("%d rows under %q", len(rows), rows[0])
		}
		for i, row := range rows[1:] {
			c := &l.All[i]
			want := map[int]string{2: c.Title, 5: c.Page, 7: c.Change.Was, 8: c.Change.Is, 9: c.Reason, 12: c.Question, 13: c.Answer, 14: c.Moves, 15: c.Change.Field, 16: l.Rule}
			for column, cell := range row {
				if strings.IndexAny(cell, "=+-@\t\r\n") == 0 {
					t.Fatalf("a formula: %q", cell)
				}
				if was, ok := want[column]; ok && Unguarded(cell) != strings.ReplaceAll(strings.ReplaceAll(was, "\r\n", "\n"), "\r", "\n") {
					t.Fatalf("column %d: %q came back as %q", column, was, cell)
				}
			}
		}
	}
}

// checkRFC4180 holds that a file follows RFC 4180, section 2, read by hand: records
// end with CR LF (1, 2), all have as many fields (4), a field with a quote, a comma or
// an end of line stands in quotes (6), and a quote in it is doubled (5, 7).
func checkRFC4180(t *testing.T, file string) {
	t.Helper()
	fields, inside, at := 0, false, 0
	for i := 0; i < len(file); i++ {
		switch c := file[i]; {
		case inside && c == '"' && i+1 < len(file) && file[i+1] == '"':
			i++
		case inside && c == '"':
			inside = false
			if next := file[i+1]; next != ',' && next != '\r' {
				t.Fatalf("a quote ends before the field does: %q", file[at:i+2])
			}
		case inside:
		case c == '"' && i == at:
			inside = true
		case c == '"':
			t.Fatalf("a quote within a bare field: %q", file[at:i+1])
		case c == ',':
			fields, at = fields+1, i+1
		case c == '\r' && file[i+1] == '\n':
			if fields+1 != len(csvColumns) {
				t.Fatalf("a record of %d fields before byte %d", fields+1, i)
			}
			fields, at = 0, i+2
			i++
		case c == '\r' || c == '\n':
			t.Fatalf("an end of line that is none, at byte %d", i)
		}
	}
	if inside || at != len(file) {
		t.Fatalf("the file does not end with a record: %q", file[at:])
	}
}

func TestUnguarded(t *testing.T) {
	for _, cell := range []string{"", "'", "''", "'tis", "=1", "'=1", "''=1", "-", "a=1", "'-'", "@x"} {
		guard := guarded(cell)
		if got := Unguarded(guard); got != cell {
			t.Errorf("%q is written %q and read as %q", cell, guard, got)
		}
		if plain := strings.TrimLeft(cell, "'"); (plain == "" || !strings.Contains("=+-@", plain[:1])) && guard != cell {
			t.Errorf("%q is no formula and is written %q", cell, guard)
		}
	}
}
