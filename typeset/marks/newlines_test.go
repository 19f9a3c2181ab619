package marks

import (
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
	"headland/typeset/marks/overlay"
)

// What is said of how a line begins that is new is marked at the words that are to
// begin it, not at the start of the line that is there, and in the margin behind
// the mark for a new line.
func TestNewLinesAreMarkedWhereTheyBegin(t *testing.T) {
	for is, kind := range map[string]difference.Kind{
		"“counting” indented 2 em": difference.IndentLine, "“counting” not indented": difference.CancelIndent,
		"“counting” ranged right": difference.Space, "“counting” begun where the line above ends": difference.Space,
		"“counting” with 2 lines of white above": difference.Space,
	} {
		p := newProof(pagemodel.Upright)
		c := p.point(t, kind, "goes over, |counting", is)
		strokes, row := marked(t, p, c)
		at := row.XAt(c.Change.From)
		if b := boxOf(strokes...); b.left < row.XAt(c.Change.From-2) || b.left > at+row.Runs[0].Size || b.top < row.Baseline-row.Runs[0].Size {
			t.Errorf("%s: marked from %v on, the new line begins at %v", is, b.left, at)
		}
		m := &marker{set: p.set, page: p.set.Page(1), setter: p.setter, design: p.set.Collection().Design(), entries: map[bool][]entry{}}
		m.mark(c)
		if e := m.entries[false][0]; e.before != &newLineShape && !strings.HasPrefix(e.note, "new line, ") {
			t.Errorf("%s: the margin does not say that it is of a new line: %+v", is, e)
		}
	}
}

// A tab has a mark of its own, and says up to where it goes.
func TestTabsAreNoGaps(t *testing.T) {
	p := newProof(pagemodel.Upright)
	p.point(t, difference.Space, "a clock| that", "“clock that” with a tab to 12 em")
	p.point(t, difference.Space, "no one| winds", "“one winds” with 12 em of white")
	m := &marker{set: p.set, page: p.set.Page(1), setter: p.setter, design: p.set.Collection().Design(), entries: map[bool][]entry{}}
	for i := range p.list.All {
		m.mark(&p.list.All[i])
	}
	tab, gap := m.entries[false][0], m.entries[false][1]
	if tab.shape != &tabShape || tab.matter != "to 12 em" || gap.shape != &spaceShape || gap.matter != "12 em" {
		t.Errorf("the tab has %q, the gap %q", tab.matter, gap.matter)
	}
}

// In a narrow margin an amount stays beside its mark; where it can't, the number
// alone says where to read it.
func TestAmountsStayWithTheirMarks(t *testing.T) {
	p := newProof(pagemodel.Upright)
	for _, words := range []string{"a clock| that", "no one| winds", "and no| one hears"} {
		p.point(t, difference.Space, words, "“a b” with 12 em of white")
	}
	o := On(p.set, 1, &p.list, p.setter)
	words := textsOf(&o)
	if got := strings.Count(words, "12 em") + strings.Count(words, "12|em"); got != 3 {
		t.Errorf("%d of 3 amounts stand in %q", got, words)
	}
	m := &marker{set: p.set, page: p.set.Page(1), setter: p.setter, design: p.set.Collection().Design()}
	c := &column{right: pagemodel.Pt(10), size: pagemodel.Pt(10), narrow: true}
	for _, b := range m.fitted(c, &entry{c: &p.list.All[0], matter: "12 em", amount: true, shape: &spaceShape}, c.width()) {
		if b.shape != nil {
			t.Error("without its amount the mark stands there all the same")
		}
	}
}

func textsOf(o *overlay.Overlay) string {
	var all []string
	for i := range o.Rows {
		all = append(all, o.Rows[i].Runs[0].Text)
	}
	return strings.Join(all, "|")
}

// Nothing in the margins is smaller than a screen that shows a whole page can show.
func TestMarginsAreNotTooSmall(t *testing.T) {
	each(t, func(t *testing.T, p *proof, page *typeset.Page, room typeset.Length, o overlay.Overlay) {
		for i := range o.Rows {
			if size := o.Rows[i].Runs[0].Size; size < pagemodel.Pt(8) {
				t.Errorf("%q is set in %v", o.Rows[i].Runs[0].Text, size)
			}
		}
	})
}

// What nobody can set is an instruction: an empty line, and what looks like the
// words that stand there. Words with quotation marks are set with them.
func TestWhatCannotBeSetIsAnInstruction(t *testing.T) {
	p := newProof(pagemodel.Upright)
	for is, want := range map[string]entry{
		"an empty line": {note: "substitute: an empty line"},
		"“sleeper\u00a0in”, with a no-break space after “sleeper”": {note: "with a no-break space after “sleeper”"},
		"«“hottest”» in italic":                                    {matter: "“hottest”", italic: true},
		"“salt /”, an empty line, “/ bread”":                       {matter: "salt /", listed: true},
	} {
		c := p.at(t, difference.Substitute, "sleeper in", is)
		got := newMatter(c)
		want.c = c
		if got != want {
			t.Errorf("%s: got %+v", is, got)
		}
	}
}
