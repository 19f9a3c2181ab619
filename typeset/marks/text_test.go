package marks

import (
	"math"
	"testing"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
	"headland/typeset/corrections"
	"headland/typeset/marks/overlay"
)

// marked is the marks of one correction on its page: those in the text, and the
// row in which it begins. What stands in the margin lies outside the measure.
func marked(t *testing.T, p *proof, c *corrections.Correction) (strokes []overlay.Stroke, row *typeset.Row) {
	t.Helper()
	for n := 1; n <= p.set.Extent(); n++ {
		m := &marker{set: p.set, page: p.set.Page(n), setter: p.setter, design: p.set.Collection().Design(), entries: map[bool][]entry{}}
		m.mark(c)
		if len(m.over.Strokes) > 0 {
			return m.over.Strokes, m.find(&c.Change)[0].row
		}
	}
	t.Fatalf("%s is not marked", c.Change.Kind)
	return nil, nil
}

// box is what the paths of strokes enclose, control points included.
type box struct{ left, top, right, bottom typeset.Length }

func boxOf(strokes ...overlay.Stroke) box {
	b := box{math.MaxInt32, math.MaxInt32, math.MinInt32, math.MinInt32}
	for _, s := range strokes {
		for _, g := range s.Path {
			at := []typeset.Point{g.To}
			if g.Op == overlay.Cubic {
				at = append(at, g.Leave, g.Arrive)
			}
			for _, a := range at {
				b = box{min(b.left, a.X), min(b.top, a.Y), max(b.right, a.X), max(b.bottom, a.Y)}
			}
		}
	}
	return b
}

func near(a, b typeset.Length) bool { return a-b <= 1 && b-a <= 1 }

// xs are where some words of a row begin and end, by XAt.
func xs(r *typeset.Row, c *corrections.Correction) (from, to typeset.Length) {
	return r.XAt(c.Change.From), r.XAt(c.Change.To)
}

// The caret's point is in the gap between the two words, a little above the
// baseline, and its feet hang below.
func TestCaretPointsAtTheGap(t *testing.T) {
	p := newProof(pagemodel.Upright)
	c := p.point(t, difference.Insert, "is up,| and leaning", "“already”")
	strokes, row := marked(t, p, c)
	apex := strokes[0].Path[1].To
	before, after := row.XAt(c.Change.From), row.XAt(c.Change.From+1)
	if len(strokes) != 1 || apex.X <= before || apex.X >= after {
		t.Errorf("the caret points at %v, which is not between %v and %v", apex.X, before, after)
	}
	if b := boxOf(strokes...); b.top != apex.Y || apex.Y >= row.Baseline || b.bottom <= row.Baseline {
		t.Errorf("the caret reaches from %v to %v at a baseline of %v", b.top, b.bottom, row.Baseline)
	}
}

// Words are struck out from the first letter to the last and no farther, on the
// height of the small letters; one letter by a slash through it.
func TestStruckOutExactly(t *testing.T) {
	p := newProof(pagemodel.Upright)
	for _, words := range []string{"warmest", "leaning on its", "Before", "cloth,"} {
		c := p.at(t, difference.Delete, words, "nothing")
		strokes, row := marked(t, p, c)
		from, to := xs(row, c)
		b := boxOf(strokes...)
		if !near(b.left, from) || !near(b.right, to) {
			t.Errorf("%q is struck out from %v to %v, and stands from %v to %v", words, b.left, b.right, from, to)
		}
		if b.bottom >= row.Baseline || b.top <= row.Baseline-row.Runs[0].Size/2 {
			t.Errorf("%q is struck out at %v to %v, the baseline at %v", words, b.top, b.bottom, row.Baseline)
		}
	}
	c := p.at(t, difference.Substitute, "a", "“the”")
	strokes, row := marked(t, p, c)
	from, to := xs(row, c)
	if b := boxOf(strokes...); len(strokes) != 1 || !near(b.left+b.right, from+to) {
		t.Errorf("one letter from %v to %v has %d strokes from %v to %v", from, to, len(strokes), b.left, b.right)
	}
}

// The S of a transposition lies over the first words and under the second, and
// turns in the gap between them.
func TestTransposedWords(t *testing.T) {
	p := newProof(pagemodel.Upright)
	c := p.at(t, difference.Transpose, "floury thumb", "“thumb floury”")
	strokes, row := marked(t, p, c)
	from, to := xs(row, c)
	turn := strokes[0].Path[2].To
	if b := boxOf(strokes...); len(strokes) != 1 || b.left != from || !near(b.right, to) {
		t.Errorf("the S reaches from %v to %v, and the words from %v to %v", b.left, b.right, from, to)
	}
	before, after := row.XAt(c.Change.From+len("floury")), row.XAt(c.Change.From+len("floury "))
	if turn.X <= before || turn.X >= after {
		t.Errorf("the S turns at %v, not between %v and %v", turn.X, before, after)
	}
	if high, low := strokes[0].Path[2].To.Y, strokes[0].Path[4].To.Y; high >= row.Baseline-row.Runs[0].Size/2 || low <= row.Baseline {
		t.Errorf("the S lies at %v over the first and at %v under the second, the baseline at %v", high, low, row.Baseline)
	}
}

// Lines under words are as long as the words and below their baseline: one for
// italic, two for small capitals, a wavy one for bold. Words to be roman again are
// ringed.
func TestUnderlinesAndRings(t *testing.T) {
	p := newProof(pagemodel.Upright)
	for kind, strokes := range map[difference.Kind]int{difference.Italic: 1, difference.SmallCapitals: 2, difference.Bold: 1} {
		c := p.at(t, kind, "of the rooms", "“of the rooms” in "+string(kind))
		got, row := marked(t, p, c)
		from, to := xs(row, c)
		if b := boxOf(got...); len(got) != strokes || b.left != from || !near(b.right, to) || b.top <= row.Baseline {
			t.Errorf("%s: %d strokes from %v to %v at %v; the words from %v to %v over %v", kind, len(got), b.left, b.right, b.top, from, to, row.Baseline)
		}
	}
	c := p.at(t, difference.Roman, "of the rooms", "“of the rooms” in roman")
	got, row := marked(t, p, c)
	from, to := xs(row, c)
	if b := boxOf(got...); b.left >= from || b.right <= to || b.top >= row.Baseline-row.Runs[0].Size/2 || b.bottom <= row.Baseline {
		t.Errorf("the ring is %v round words from %v to %v over %v", b, from, to, row.Baseline)
	}
}

// What has to do with one gap stands in it: a new line, a space.
func TestMarksInGaps(t *testing.T) {
	p := newProof(pagemodel.Upright)
	for kind, is := range map[difference.Kind]string{difference.NewLine: "“goes over, / counting”", difference.Space: "“over, counting” with 2 em of white"} {
		c := p.point(t, kind, "goes over,| counting", is)
		strokes, row := marked(t, p, c)
		before, after := row.XAt(c.Change.From), row.XAt(c.Change.From+1)
		b := boxOf(strokes...)
		if middle := (b.left + b.right) / 2; middle <= before || middle >= after {
			t.Errorf("%s stands at %v, not between %v and %v", kind, middle, before, after)
		}
		if b.top > row.Baseline-row.Runs[0].Size/2 || b.bottom < row.Baseline {
			t.Errorf("%s reaches from %v to %v, the baseline at %v", kind, b.top, b.bottom, row.Baseline)
		}
	}
}

// Words that have turned over are marked on the row that they stand in; words to
// be taken over where they stand, the arm to the end of the row.
func TestTurnoversAreMarkedInTheirRows(t *testing.T) {
	p := newProof(pagemodel.Upright)
	_, row := marked(t, p, p.at(t, difference.Delete, "nobody", "nothing"))
	if row.Turn != typeset.Turnover {
		t.Fatal("the word did not turn over: the sample is not what it was")
	}
	strokes, row := marked(t, p, p.point(t, difference.TurnAt, "and then |the hour", "turned between “and then” and “the hour”"))
	if b := boxOf(strokes...); row.Turn != typeset.LineStart || b.right <= row.X+row.Width || b.top < row.Baseline-row.Runs[0].Size {
		t.Errorf("taken over in %v: %v", row.Turn, b)
	}
	strokes, row = marked(t, p, p.point(t, difference.TurnAt, "that nobody |has asked", "turned between “that nobody” and “has asked”"))
	if b := boxOf(strokes...); row.Turn != typeset.Turnover || b.left >= row.X || b.right > row.X+row.Width {
		t.Errorf("taken back in %v: %v, of a row from %v", row.Turn, b, row.X)
	}
	both := p.at(t, difference.Delete, "the hour that nobody", "nothing")
	strokes, row = marked(t, p, both)
	if b := boxOf(strokes...); b.top > row.Baseline || b.bottom < row.Baseline+p.set.Collection().Design().Leading/2 {
		t.Errorf("words on two rows are struck out from %v to %v only", b.top, b.bottom)
	}
}
