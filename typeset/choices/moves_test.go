package choices

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// lane is a poem of couplets that takes two pages, original in its two lines.
func lane(t *testing.T) *table {
	return read(t, "## The lane\n\n"+strings.Repeat("the lane goes down\nthe loaves come up\n\n", 16))
}

// TestLinesThatChangePage: white above a line pushes lines over the page's end, and
// the choice names the first of them, counts them, and says how the rest go down.
func TestLinesThatChangePage(t *testing.T) {
	tb := lane(t)
	ref := tb.line(1, 1, 2)
	all := tb.of(ref)
	for _, n := range []int{1, 2} {
		c := find(t, all, Space, counted(n, "line")+" of white above")
		after := tb.edited(c.Edit)
		crossed := 0
		p, _, _ := tb.set.Collection().Poem(ref.Poem)
		for _, l := range p.Lines() {
			line := pagemodel.LineRef{Poem: ref.Poem, Line: l.ID()}
			was, _ := tb.set.PageOfLine(line)
			if now, _ := after.set.PageOfLine(line); now != was {
				crossed++
			}
		}
		if told := strings.Contains(c.Moves, counted(crossed, "line")+", the first of them stanza "); told != (crossed > 1) {
			t.Errorf("%s: %d lines change page, and it says %q", c.Title, crossed, c.Moves)
		}
		if want := fmt.Sprintf("the line and those below go down by %s", counted(n, "row")); !strings.Contains(c.Moves, want) {
			t.Errorf("%s: it says %q, not %q", c.Title, c.Moves, want)
		}
	}
	if c := find(t, all, Space, "2 lines of white above"); !strings.Contains(c.Moves, "over to page") || slices.Contains(c.Says, "nothing else moves") {
		t.Errorf("no line changes page: it says %q", c.Says)
	}
}

// TestLinesBelowMove: what is run on draws the lines below up by a row; a line
// that is only indented moves nothing.
func TestLinesBelowMove(t *testing.T) {
	tb := lane(t)
	all := tb.of(tb.line(1, 1, 1))
	if c := find(t, all, Space, "run on with the line below"); !strings.Contains(c.Moves, "the lines below go up by 1 row") {
		t.Errorf("run on, it says %q", c.Moves)
	}
	if c := find(t, all, InPoem, "before “goes”"); !strings.Contains(c.Moves, "the lines below go down by 1 row") {
		t.Errorf("broken, it says %q", c.Moves)
	}
	if c := find(t, all, Space, "indented by 1em"); c.Moves != "" {
		t.Errorf("indented, it says %q", c.Moves)
	}
}

// TestSharersMove: a poem that begins below another on its page is told to move on
// the page.
func TestSharersMove(t *testing.T) {
	tb := read(t, "## One\n\nbread in the window\nthe window in the bread\n\n## Two\n\nnobody at the door\n")
	p, _ := tb.set.Collection().PoemCalled("#2")
	tb = tb.edited(pagemodel.SetStart{Poem: p.ID(), Start: pagemodel.SharedPage})
	c := find(t, tb.of(tb.line(1, 1, 2)), Space, "2 lines of white above")
	if !strings.Contains(c.Moves, "“Two” moves on the page") {
		t.Errorf("it says %q", c.Moves)
	}
}

// TestDroppedAsSet: a line that has no room beyond the one above has no choice to
// be dropped, one that has some room is told how far it goes.
func TestDroppedAsSet(t *testing.T) {
	tb := read(t, "## Drop\n\n"+strings.Repeat("the long way round to the oven ", 2)+
		"\n"+strings.Repeat("the long way round to the oven ", 3)+"\nthe lane is\n\nnobody at the door but rain and nobody\nbread in the window and the window in the\n")
	if all := tb.of(tb.line(1, 1, 2)); slices.ContainsFunc(all, func(c Choice) bool { return strings.HasPrefix(c.Title, "dropped") }) {
		t.Error("an overlong line may be dropped")
	}
	const far = "dropped: it begins as far to the right as it has room"
	ref := tb.line(1, 2, 2)
	c := find(t, tb.of(ref), Space, far)
	was := lookAt(tb.set).rows(ref)[0]
	if c.Rows[0].X <= was.X || c.Rows[0].X+c.Rows[0].Width != tb.set.Collection().Design().Measure() {
		t.Errorf("%s: X %v, it was %v", far, c.Rows[0].X, was.X)
	}
}

// TestLongScansion: many signs stand in fours, few without a space.
func TestLongScansion(t *testing.T) {
	if got := scansion("0102"); got != `x/x\` {
		t.Errorf("four signs are %q", got)
	}
	got := scansion(strings.Repeat("01", 13))
	if got != strings.Repeat("x/x/ ", 6)+"x/" {
		t.Errorf("26 signs are %q", got)
	}
}
