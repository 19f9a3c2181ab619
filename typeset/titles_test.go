package typeset

import (
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
)

// headOf is the rows of a poem's head, and its first line, on its first page.
func headOf(t *testing.T, d pagemodel.Design, h pagemodel.PoemHead) (head []Row, first Row) {
	t.Helper()
	c := poemOf(d, "", "a line\nanother")
	s := setOf(mustApply(t, c, pagemodel.SetHead{Poem: firstLine(c).Poem, Head: h}))
	p := s.Page(1)
	for _, r := range p.Rows {
		if r.X -= p.Text.X; r.Line != 0 {
			return head, r
		}
		head = append(head, r)
	}
	t.Fatalf("no line on the first page, below %d rows", len(head))
	return nil, Row{}
}

func rowTexts(rows []Row) []string {
	var texts []string
	for i := range rows {
		texts = append(texts, strings.TrimSpace(rowText(&rows[i])))
	}
	return texts
}

// TestTitleStyle: a title is set in the design's style, size and place; without
// a size it is five quarters of the verse's.
func TestTitleStyle(t *testing.T) {
	faces := Bundled()
	italic, _ := faces.Face("EB Garamond", false, true)
	roman, _ := faces.Face("EB Garamond", false, false)
	d := testDesign()
	for style, face := range map[pagemodel.TitleStyle]*Face{
		pagemodel.TitleRoman: roman, pagemodel.TitleItalic: italic, pagemodel.TitleSmallCaps: roman,
	} {
		d.Titles = style
		head, _ := headOf(t, d, pagemodel.PoemHead{Title: "Ovens"})
		run := &head[0].Runs[0]
		if run.Face.ID() != face.ID() || run.Size != d.Size*5/4 {
			t.Errorf("%v: %v, face %x", style, run.Size, run.Face.ID())
		}
		want := newShaper().shape(face, map[bool]caseKind{true: smallCaps}[style == pagemodel.TitleSmallCaps], "Ovens")
		if run.Glyphs[1].ID != want.glyphs[1].id {
			t.Errorf("%v: glyph %d, want %d", style, run.Glyphs[1].ID, want.glyphs[1].id)
		}
	}
	d.TitleSize = pagemodel.Pt(17)
	if head, _ := headOf(t, d, pagemodel.PoemHead{Title: "Ovens"}); head[0].Runs[0].Size != pagemodel.Pt(17) {
		t.Errorf("a title of %v, want 17pt", head[0].Runs[0].Size)
	}
}

// TestTitleCentred: each row of a title, and what stands with it, is in the
// middle of the measure; the epigraph and the verse are not.
func TestTitleCentred(t *testing.T) {
	d := testDesign()
	d.TitleCentred = true
	head, first := headOf(t, d, pagemodel.PoemHead{
		Title: "The Bakery in Winter, with the Lamps Lit and the Door Ajar", Subtitle: "a nocturne", Dedication: "for the night shift",
		Epigraph: []string{"bread", "— a saying"},
	})
	for i := range head {
		r := &head[i]
		want := (d.Measure() - r.Width) / 2
		if r.Role == RoleEpigraph {
			want = 2 * d.Size
		}
		if r.X != want || r.X+r.Room != d.Measure() {
			t.Errorf("%v %q begins at %v with room to %v, want %v and %v", r.Role, rowText(r), r.X, r.X+r.Room, want, d.Measure())
		}
	}
	if len(head) != 6 || first.X != 0 {
		t.Errorf("%d rows of head, the poem begins at %v; want 6 and 0", len(head), first.X)
	}
}

// TestTitlesBySense: where titles break (common practice, no source).
func TestTitlesBySense(t *testing.T) {
	for _, tc := range []struct {
		name string
		want []string
	}{
		{"after a colon", []string{"Twelve Loaves for Water Street:", "An Inventory of One Night"}},
		{"after a dash", []string{"Letter from the Second Oven —", "to whoever has the day shift"}},
		{"after a comma", []string{"Walking Home with Flour Still There,", "I Meet the Milkman Coming"}},
		{"before a preposition", []string{"The Baker’s Daughter Counts Lamps", "beneath the Railway Bridge"}},
		{"before a conjunction", []string{"Everybody Sleeping Dreams Bread", "and Everybody Waking Wants It"}},
		{"not behind an article", []string{"Lines Written on the Back", "of a Delivery Note, in Pencil"}},
		{"three rows where two will not do", []string{"Notes toward a History", "of Everyone Who Stood Here before Dawn:", "with Names, Weather, and the Price of a Roll"}},
		{"as the poet broke it", []string{"Night", "Shift"}},
		{"as the poet broke it, and by sense", []string{"Proof", "Twelve Loaves for Water Street:", "An Inventory of One Night"}},
	} {
		sep := " "
		if strings.HasPrefix(tc.name, "as the poet") {
			sep = "\n"
		}
		title := strings.Join(tc.want, sep)
		if len(tc.want) == 3 && sep == "\n" {
			title = tc.want[0] + "\n" + tc.want[1] + " " + tc.want[2]
		}
		head, _ := headOf(t, testDesign(), pagemodel.PoemHead{Title: title})
		if got := rowTexts(head); !slices.Equal(got, tc.want) {
			t.Errorf("%s:\ngot  %q\nwant %q", tc.name, got, tc.want)
		}
	}
}

// TestNoShortWordAlone: whatever word a title ends on, none of at most five
// letters stands alone on a row.
func TestNoShortWordAlone(t *testing.T) {
	for _, last := range []string{"rye", "Bread", "O!", "Oats."} {
		for n := 4; n < 12; n++ {
			head, _ := headOf(t, testDesign(), pagemodel.PoemHead{Title: strings.Repeat("morning ", n) + last})
			if row := rowText(&head[len(head)-1]); len(head) > 1 && row == last {
				t.Errorf("%d words before it: %q stands alone", n, row)
			}
		}
	}
}

// everyBreak goes over each way to break the words from i on into rows that fit.
func everyBreak(t *turner, room Length, i int, begun []int, yield func(breaks []int)) {
	words := len(t.spaces.at) + 1
	for j := i + 1; j <= words && t.width(i, j) <= room; j++ {
		if j == words {
			yield(begun)
			continue
		}
		everyBreak(t, room, j, append(slices.Clone(begun), j), yield)
	}
}

// TestSenseAgainstExhaustiveSearch: of all ways to break a title, that on the
// fewest rows with the least cost is taken.
func TestSenseAgainstExhaustiveSearch(t *testing.T) {
	b, broken := testBlocks(pagemodel.Pt(150)), 0
	for _, text := range lineList(200) {
		l := pagemodel.NewLine(0, text+", and a loaf of bread")
		whole := b.compose(&l, 0, len(l.Text()))
		turn := newTurner(b.compositor, &l, 0, whole)
		rows, cost := turn.fewestRows(b.measure), func(breaks []int) int {
			sum, from := 0, 0
			for _, to := range append(slices.Clone(breaks), len(turn.spaces.at)+1) {
				sum += turn.rowCost(from, to, whole.width/Length(turn.fewestRows(b.measure)))
				from = to
			}
			return sum
		}
		least := -1
		everyBreak(turn, b.measure, 0, nil, func(breaks []int) {
			if len(breaks)+1 < rows {
				t.Errorf("%q fits %d rows, not %d", l.Text(), len(breaks)+1, rows)
			}
			if c := cost(breaks); len(breaks)+1 == rows && (least < 0 || c < least) {
				least = c
			}
		})
		var got []int
		for _, at := range turn.senseBreaks(b.measure) {
			got = append(got, slices.Index(turn.spaces.at, at)+1)
		}
		if c := cost(got); len(got)+1 != rows || c != least {
			t.Errorf("%q: %d rows at a cost of %d, want %d at %d", l.Text(), len(got)+1, c, rows, least)
		}
		broken += len(got)
	}
	if broken < 150 {
		t.Errorf("only %d breaks in 200 titles", broken)
	}
}

// TestHeadPushesByWholeLines: the title stands on its row and the poem on its
// own while the head leaves a blank line above it; what is longer pushes the
// poem by whole lines of the grid, type too large for the leading by more.
func TestHeadPushesByWholeLines(t *testing.T) {
	d := testDesign() // the title on row 3, the poem on row 6
	two := "Twelve Loaves for Water Street: An Inventory of One Night"
	pushed := map[int]bool{}
	for _, h := range []pagemodel.PoemHead{
		{Title: "Ovens"}, {Title: two}, {Title: "Ovens", Subtitle: "a nocturne"}, {Title: two, Subtitle: "a nocturne"},
		{Title: "a\nb\nc"}, {Title: two, Dedication: "for you"}, {Title: "Ovens", Epigraph: []string{"bread", "salt", "— a saying"}},
		{Title: two, Subtitle: "a nocturne", Dedication: "for you", Epigraph: []string{"bread", "salt", "— a saying"}},
	} {
		head, first := headOf(t, d, h)
		last := &head[len(head)-1]
		if head[0].Grid != d.TitleRow || first.Grid != max(d.PoemRow, last.Grid+2) {
			t.Errorf("%+v: the title on row %d, its head ends on row %d and the poem begins on row %d", h, head[0].Grid, last.Grid, first.Grid)
		}
		if first.Baseline != d.Baseline(first.Grid) {
			t.Errorf("%+v: the poem is off the grid", h)
		}
		pushed[first.Grid-d.PoemRow] = true
	}
	if len(pushed) < 4 {
		t.Errorf("the poem is pushed by %v lines only", pushed)
	}
	d.TitleSize = 2 * d.Leading
	head, _ := headOf(t, d, pagemodel.PoemHead{Title: "a\nb", Subtitle: "c"})
	if a, b, c := head[0].Grid, head[1].Grid, head[2].Grid; b-a != 2 || c-b != 1 {
		t.Errorf("a title of twice the leading stands on rows %d and %d, the subtitle on %d", a, b, c)
	}
}

// TestWordlessTitle: a title of nothing but white neither fails nor hides the
// poem; a word wider than the measure overruns in a row of its own.
func TestWordlessTitle(t *testing.T) {
	headOf(t, testDesign(), pagemodel.PoemHead{Title: " \n\n "})
	head, _ := headOf(t, testDesign(), pagemodel.PoemHead{Title: "of " + strings.Repeat("bread", 30) + " and salt"})
	if got := len(head); got != 3 {
		t.Errorf("%d rows %q, want 3", got, rowTexts(head))
	}
}
