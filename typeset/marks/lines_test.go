package marks

import (
	"testing"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
	"headland/typeset/corrections"
)

// after asks for something after a whole line.
func (p *proof) after(t testing.TB, kind difference.Kind, words, is string) *corrections.Correction {
	t.Helper()
	c := p.at(t, kind, words, is)
	c.Change.From = c.Change.To
	return c
}

// lines asks for two lines to change places.
func (p *proof) lines(t testing.TB, upper, lower string) *corrections.Correction {
	t.Helper()
	c := p.at(t, difference.Transpose, upper, "“"+lower+" / "+upper+"”")
	c.Change.Was = "“" + upper + " / " + lower + "”"
	for _, e := range p.set.Collection().Order() {
		for _, l := range e.Poem.Lines() {
			if l.Text() == lower {
				c.Change.Through = l.ID()
			}
		}
	}
	return c
}

// rowsOf are the rows in which two lines begin that stand one below the other.
func rowsOf(p *proof, upper *typeset.Row) (a, b *typeset.Row) {
	page := p.set.Page(1)
	for i := range page.Rows {
		if page.Rows[i].Line == upper.Line && page.Rows[i].Last {
			return &page.Rows[i], &page.Rows[i+1]
		}
	}
	return nil, nil
}

// The curve of run on leads from behind the last word of the line above to before
// the first of the line below.
func TestRunOnLeadsFromLineToLine(t *testing.T) {
	p := newProof(pagemodel.Upright)
	c := p.after(t, difference.RunOn, "a clock that no one winds and no one hears", "“hears except”")
	strokes, row := marked(t, p, c)
	upper, lower := rowsOf(p, row)
	from, to := strokes[0].Path[0].To, strokes[0].Path[len(strokes[0].Path)-1].To
	em := row.Runs[0].Size
	if x := from.X - upper.X - upper.Width; x <= 0 || x > em/2 || from.Y >= upper.Baseline || from.Y < upper.Baseline-em {
		t.Errorf("it begins at %v; the line ends at %v", from, upper.X+upper.Width)
	}
	if x := lower.X - to.X; x <= 0 || x > em/2 || to.Y >= lower.Baseline || to.Y < lower.Baseline-em {
		t.Errorf("it ends at %v; the next line begins at %v", to, lower.X)
	}
}

// A stanza is opened by a stroke between two lines that touches neither, as long
// as the longer; it is closed by bows at both ends of the white.
func TestStanzasOpenedAndClosed(t *testing.T) {
	p := newProof(pagemodel.Upright)
	strokes, row := marked(t, p, p.after(t, difference.OpenStanza, "the dough is up, and leaning on its cloth,", "“cloth, // a”"))
	upper, lower := rowsOf(p, row)
	level := boxOf(strokes[0])
	if level.top != level.bottom || level.top <= upper.Baseline || level.top >= lower.Baseline-lower.Runs[0].Size/2 {
		t.Errorf("the stroke lies at %v to %v, between baselines at %v and %v", level.top, level.bottom, upper.Baseline, lower.Baseline)
	}
	if level.left > upper.X || level.right < upper.X+upper.Width {
		t.Errorf("the stroke reaches from %v to %v, the line from %v to %v", level.left, level.right, upper.X, upper.X+upper.Width)
	}
	strokes, row = marked(t, p, p.after(t, difference.CloseStanza, "A cat goes over, counting every roof.", "“roof. / By”"))
	upper, lower = rowsOf(p, row)
	if len(strokes) != 2 {
		t.Fatalf("%d strokes, want a bow at both ends", len(strokes))
	}
	left, right := boxOf(strokes[0]), boxOf(strokes[1])
	if left.right >= min(upper.X, lower.X) || right.left <= max(upper.X+upper.Width, lower.X+lower.Width) {
		t.Errorf("the bows stand at %v and %v, among the words", left, right)
	}
	for _, b := range []box{left, right} {
		if b.top > upper.Baseline || b.bottom < lower.Baseline-lower.Runs[0].Size/2 {
			t.Errorf("a bow reaches from %v to %v, between %v and %v", b.top, b.bottom, upper.Baseline, lower.Baseline)
		}
	}
}

// Two lines are transposed by an S beside them, one in each of its bays.
func TestTransposedLines(t *testing.T) {
	p := newProof(pagemodel.Upright)
	c := p.lines(t, "a sleeper in the warmest of the rooms.", "The baker reads it with a floury thumb.")
	strokes, row := marked(t, p, c)
	upper, lower := rowsOf(p, row)
	b := boxOf(strokes...)
	if b.left >= row.X || b.right > row.X {
		t.Errorf("the S stands from %v to %v, the lines begin at %v", b.left, b.right, row.X)
	}
	if middle := strokes[0].Path[2].To.Y; middle <= upper.Baseline || middle >= lower.Baseline || b.top >= upper.Baseline || b.bottom <= lower.Baseline {
		t.Errorf("the S reaches from %v by %v to %v, the baselines are %v and %v", b.top, middle, b.bottom, upper.Baseline, lower.Baseline)
	}
}

// An indent is drawn as deep as it is to be, and taken back to the poem's edge.
func TestIndents(t *testing.T) {
	p := newProof(pagemodel.Upright)
	c := p.point(t, difference.IndentLine, "|By five", "“By five” indented 2 em")
	strokes, row := marked(t, p, c)
	if b := boxOf(strokes...); b.right != row.X+2*row.Runs[0].Size {
		t.Errorf("the box reaches to %v, want two ems from %v", b.right, row.X)
	}
	c = p.point(t, difference.CancelIndent, "|By five", "“By five” not indented")
	strokes, row = marked(t, p, c)
	if b := boxOf(strokes...); b.right > row.X || b.left >= row.X {
		t.Errorf("the mark reaches from %v to %v, the line begins at %v", b.left, b.right, row.X)
	}
}
