package typeset

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"headland/assets"
	"headland/pagemodel"
)

// nightOven is a prose poem for these tests.
const nightOven = `The oven remembers every loaf it has ever held, and toward four in the morning, when the street has given up its last taxi and the lamps hum over nobody, it begins to tell them: the apprentice’s first burnt tray; the wedding plait that would not brown; the hundred and sixty identical rolls for the hospital—identical, that is, until you broke them. I listen with my forearms in the trough. Outside, a fox trots past the shutter with something extraordinary in its mouth, unhurried, like a well-dressed neighbour carrying home the newspaper. “Temperature,” says the thermometer. “Responsibility,” says the clock. The flour says nothing. It settles on the windowsill, on the telephone, on the photograph of my grandmother, who knew how long to wait, and whose particular silence I am still, after all these winters, kneading into everything.`

// proseOf sets paragraphs at that measure; edit changes the first of them.
func proseOf(style pagemodel.ProseStyle, language string, measure Length, edit func(pagemodel.Line) pagemodel.Line, paragraphs ...string) []Row {
	d := pagemodel.DefaultDesign()
	d.Margins.Outer, d.Prose = d.Trim.Width-d.Margins.Inner-measure, style
	b := pagemodel.NewBuilder(pagemodel.About{Language: language}, d)
	var lines []pagemodel.Line
	for _, text := range paragraphs {
		lines = append(lines, b.Line(text))
	}
	if edit != nil {
		lines[0] = edit(lines[0])
	}
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Prose, lines)})})
	return verse(setOf(b.Collection()))
}

// shown is a row as it is read: a hyphen for a soft one at its end, none for
// others.
func shown(r *Row) string {
	text := rowText(r)
	ends := strings.HasSuffix(text, "\u00ad")
	text = strings.ReplaceAll(text, "\u00ad", "")
	if ends {
		text += "-"
	}
	return text
}

func shownRows(rows []Row) []string {
	var all []string
	for i := range rows {
		all = append(all, shown(&rows[i]))
	}
	return all
}

// wholeText holds that the rows hold a text once and in order, with nothing but
// spaces between them; a hyphen that is not in the text stands at its row's end.
func wholeText(t *testing.T, text string, rows []Row) {
	t.Helper()
	end := 0
	for i := range rows {
		r := &rows[i]
		if r.Start < end || !onlySpaces(text[end:r.Start]) || r.Role != RoleProse || r.Last != (i == len(rows)-1) {
			t.Fatalf("row %d of %q begins at %d after %d, last: %v", i, text, r.Start, end, r.Last)
		}
		at := r.Start
		for k, run := range r.Runs {
			if k > 0 && k == len(r.Runs)-1 && at == r.End && run.Text == "\u00ad" && run.Start == at {
				continue
			}
			if run.Start != at || !strings.HasPrefix(text[at:], run.Text) {
				t.Fatalf("row %d of %q: run %q from byte %d, not %d", i, text, run.Text, run.Start, at)
			}
			at += len(run.Text)
		}
		if end = r.End; at != end {
			t.Fatalf("row %d of %q: its runs end at %d, itself at %d", i, text, at, end)
		}
	}
	if !onlySpaces(text[end:]) {
		t.Fatalf("%q is set up to byte %d", text, end)
	}
}

// filledRows are rows filled one after another, as full as each can be.
func filledRows(b *blocks, l *pagemodel.Line) []Row {
	var rows []Row
	whole := b.compose(l, 0, len(l.Text()))
	t := newTurner(b.compositor, l, 0, whole)
	for {
		head, next := t.head(b.measure)
		rows = append(rows, b.row(l, head, 0, t.start, LineStart))
		if next >= whole.end {
			rows[len(rows)-1].Last = true
			return rows
		}
		t.advance(next)
	}
}

// TestRaggedProse: no row is too wide, no word is divided, and the squares of
// what the rows leave of the measure, but for the last, are no more than when
// row after row is filled; for some measure they are less.
func TestRaggedProse(t *testing.T) {
	better := 0
	for measure := pagemodel.Pt(150); measure <= pagemodel.Pt(280); measure += pagemodel.Pt(5) {
		rows := proseOf(pagemodel.ProseRagged, "", measure, nil, nightOven)
		wholeText(t, nightOven, rows)
		line := pagemodel.NewLine(1, nightOven)
		b := testBlocks(measure)
		full := filledRows(b, &line)
		got, most := shortfall(t, rows, measure), shortfall(t, full, measure)
		if got > most {
			t.Errorf("at %v the rows leave %d, and %d when filled one by one", measure, got, most)
		}
		if got < most {
			better++
		}
		for i := range rows {
			if strings.HasSuffix(shown(&rows[i]), "-") && !strings.HasSuffix(shown(&rows[i]), " well-") {
				t.Errorf("at %v a word of ragged prose is divided: %q", measure, shown(&rows[i]))
			}
		}
	}
	if better < 10 {
		t.Errorf("at only %d measures total fit was better than filling rows one by one", better)
	}
}

func testBlocks(measure Length) *blocks {
	d, faces := pagemodel.DefaultDesign(), newTypeCase(Bundled(), pagemodel.DefaultDesign().Face)
	return &blocks{fitter: fitter{
		compositor: &compositor{shaper: newShaper(), faces: &faces, size: d.Size}, design: &d, measure: measure,
	}}
}

// shortfall is the sum of the squares of what rows leave, their last excepted.
func shortfall(t *testing.T, rows []Row, measure Length) (sum int64) {
	t.Helper()
	for i := range rows {
		short := int64(measure - rows[i].Width)
		if short < 0 {
			t.Errorf("%q is %v too wide", shown(&rows[i]), -Length(short))
		}
		if i < len(rows)-1 {
			sum += short * short
		}
	}
	return sum
}

// TestJustifiedProse: every row but the last is exactly as wide as the measure,
// to its last glyph, with word spaces alike to 1/64 pt and none narrowed by more
// than a third; the last is natural. At most two rows running end with a hyphen,
// two letters at least stay and three go over (Hart's Rules, appendix).
func TestJustifiedProse(t *testing.T) {
	divided, text := 0, strings.NewReplacer("last taxi", "last\u00a0taxi", "how long", "how\u00a0long").Replace(nightOven)
	for measure := pagemodel.Pt(110); measure <= pagemodel.Pt(280); measure += pagemodel.Pt(5) {
		rows := proseOf(pagemodel.ProseJustified, "", measure, nil, text)
		wholeText(t, text, rows)
		running := 0
		for i := range rows {
			r := &rows[i]
			if i < len(rows)-1 {
				justifiedExactly(t, r, measure)
			}
			running++
			if !strings.HasSuffix(shown(r), "-") {
				running = 0
			} else if strings.HasSuffix(rowText(r), "\u00ad") {
				divided++
				dividedWell(t, text, r.End)
			}
			if running > 2 {
				t.Errorf("at %v three rows running end with a hyphen, at %q", measure, shown(r))
			}
		}
		naturally(t, &rows[len(rows)-1])
	}
	if divided < 10 {
		t.Errorf("%d words were divided in all", divided)
	}
}

func justifiedExactly(t *testing.T, r *Row, measure Length) {
	t.Helper()
	last := &r.Runs[len(r.Runs)-1]
	g := last.Glyphs[len(last.Glyphs)-1]
	if r.Width != measure || last.X+last.Width != measure || abs(last.X+g.X+g.Advance-measure) > 1 {
		t.Errorf("%q is %v wide, its runs %v, its glyphs %v, not %v", shown(r), r.Width, last.X+last.Width, last.X+g.X+g.Advance, measure)
	}
	var spaces []Length
	x := Length(0)
	for _, run := range r.Runs {
		for _, g := range run.Glyphs {
			if abs(run.X+g.X-x) > 2 && g.Cluster > 0 {
				t.Errorf("%q: a glyph of %q stands at %v, but the one before ends at %v", shown(r), run.Text, run.X+g.X, x)
			}
			x = run.X + g.X + g.Advance
			if c, _ := utf8.DecodeRuneInString(run.Text[g.Cluster:]); c == ' ' || c == '\u00a0' {
				spaces = append(spaces, g.Advance)
			}
		}
	}
	natural := testBlocks(measure).shaper.shape(r.Runs[0].Face, plainCase, " ").width
	least := r.Runs[0].Face.at(r.Runs[0].Size, natural) * 2 / 3
	if len(spaces) > 0 && (slices.Max(spaces)-slices.Min(spaces) > 12 || slices.Min(spaces) < least-12) {
		t.Errorf("%q: word spaces from %v to %v; the narrowest may be %v", shown(r), slices.Min(spaces), slices.Max(spaces), least)
	}
}

func dividedWell(t *testing.T, text string, at int) {
	t.Helper()
	letters := func(r rune) bool { return strings.ContainsRune(" \u00a0—“”’,.;:", r) }
	before := text[strings.LastIndexFunc(text[:at], letters)+1 : at]
	before = before[max(0, strings.LastIndexAny(before, "”“’—")):]
	after, _, _ := strings.Cut(text[at:], " ")
	after = strings.FieldsFunc(after, letters)[0]
	if utf8.RuneCountInString(before) < 2 || utf8.RuneCountInString(after) < 3 {
		t.Errorf("a word is divided as %q-%q", before, after)
	}
}

// naturally holds that a row is as wide as its words are when set by themselves.
func naturally(t *testing.T, r *Row) {
	t.Helper()
	line := pagemodel.NewLine(0, shown(r))
	b := testBlocks(r.Room)
	if want := b.compose(&line, 0, len(line.Text())).width; abs(r.Width-want) > 1 {
		t.Errorf("%q is %v wide, by itself %v", shown(r), r.Width, want)
	}
}

// TestWidthsAreToldRightly: the width of each row that a paragraph might have,
// as it is told from the whole, is that of the row when it is set. Where it is
// divided its hyphen is kerned as if it stood in the text.
func TestWidthsAreToldRightly(t *testing.T) {
	text := nightOven + " “Of—fi—ce, difficult shuffling of affluent officers, cof\u00adfee, shelf\u00adful—Wave. V-shaped Ty\u00adre.”"
	line := pagemodel.NewLine(1, text)
	spans := []pagemodel.Span{{Start: 30, End: 95, Style: pagemodel.Italic}, {Start: 150, End: 170, Style: pagemodel.SmallCaps}, {Start: 203, End: 206, Style: pagemodel.Italic}}
	styled := line.WithSpans(spans).WithGap(strings.Index(text, "lamps"), pagemodel.OneEm)
	for _, family := range assets.Families() {
		faces := newTypeCase(Bundled(), family)
		for _, l := range []pagemodel.Line{line, styled} {
			b := testBlocks(pagemodel.Pt(240))
			b.faces = &faces
			toldRightly(t, b, &l)
		}
	}
}

func toldRightly(t *testing.T, b *blocks, l *pagemodel.Line) {
	t.Helper()
	text := l.Text()
	g := galley{compositor: b.compositor, line: l, whole: b.compose(l, 0, len(text)), measure: b.measure}
	g.stops = proseStops(l, len(text), hyphenatorFor(""))
	g.measureStops()
	for from := range g.stops {
		for to := from + 1; to < len(g.stops) && g.told(from, to) < 300*64; to++ {
			row := g.row(b.compositor, from, to)
			if d := row.width - g.told(from, to); abs(d) > doubt || g.rough[to] {
				t.Errorf("%q is told to be %v wide, but is %v", text[g.stops[from].next:g.stops[to].end], g.told(from, to), row.width)
			}
			if to == from+1 && len(l.Spans()) == 0 {
				shownAlone := pagemodel.NewLine(0, shown(&Row{Runs: row.runs}))
				if want := b.compose(&shownAlone, 0, len(shownAlone.Text())).width; abs(row.width-want) > 1 {
					t.Errorf("%q is %v wide, with its hyphen in the text %v", shownAlone.Text(), row.width, want)
				}
			}
		}
	}
}

// TestSoftHyphens: the poet's leave to divide a word is used in ragged prose
// too, shown only where it is used, and counts among the text's own bytes.
func TestSoftHyphens(t *testing.T) {
	text := "The street gave up its last taxi, and un\u00adi\u00adden\u00adti\u00adfi\u00adably something sang."
	line := pagemodel.NewLine(1, "The street gave up its last taxi, and uniden-")
	measure := testBlocks(0).compose(&line, 0, len(line.Text())).width
	rows := proseOf(pagemodel.ProseRagged, "fr", measure, nil, text)
	wholeText(t, text, rows)
	if got := shownRows(rows); len(got) != 2 || got[0] != line.Text() || got[1] != "tifiably something sang." {
		t.Errorf("rows %q", got)
	}
	if r := &rows[0]; text[r.Start:r.End] != "The street gave up its last taxi, and un\u00adi\u00adden\u00ad" || r.Width != measure {
		t.Errorf("the first row holds bytes %d to %d and is %v wide, not %v", r.Start, r.End, r.Width, measure)
	}
	if rows := proseOf(pagemodel.ProseJustified, "", pagemodel.Pt(90), nil, strings.Replace(nightOven, "extraordinary", "extraor\u00addinary", 1)); slices.ContainsFunc(shownRows(rows), func(s string) bool { return strings.HasSuffix(s, "extra-") || strings.HasSuffix(s, "ex-") }) {
		t.Errorf("a word with a soft hyphen is divided elsewhere: %q", shownRows(rows))
	}
}

// TestProseHolds: at every measure no row begins with a dash, or ends at a
// no-break space, before a gap or after the hyphen of -ish or 1914-18.
func TestProseHolds(t *testing.T) {
	text := "No row — none at all — begins with a dash—no matter how—and 10\u00a0p.m. holds; a gap after this word holds too, the -ish of tallish and the years 1914-18, he said—“always”—and so—”"
	gap, second := strings.Index(text, "word"), strings.Index(text, "always")-len("“")
	edit := func(l pagemodel.Line) pagemodel.Line {
		return l.WithGap(gap, pagemodel.OneEm).WithGap(second, pagemodel.OneEm)
	}
	for _, style := range []pagemodel.ProseStyle{pagemodel.ProseRagged, pagemodel.ProseJustified} {
		for measure := pagemodel.Pt(60); measure < pagemodel.Pt(280); measure += pagemodel.Pt(3) {
			rows := proseOf(style, "", measure, edit, text)
			wholeText(t, text, rows)
			for i := range rows {
				row := shown(&rows[i])
				first, _ := utf8.DecodeRuneInString(row)
				if strings.ContainsRune(dashes, first) && !strings.HasPrefix(row, "-ish") || strings.HasSuffix(row, "10") || rows[i].Start == gap || rows[i].Start == second ||
					strings.HasSuffix(row, " -") || strings.HasSuffix(row, "1914-") || strings.HasPrefix(row, "”") {
					t.Errorf("at %v a row is %q", measure, row)
				}
			}
		}
	}
}

// TestWordWiderThanTheMeasure stands alone, overruns and harms no other row.
func TestWordWiderThanTheMeasure(t *testing.T) {
	long := "incomprehensible\u00a0incomprehensible"
	text := "a small but—" + long + " xx and on we go"
	for _, style := range []pagemodel.ProseStyle{pagemodel.ProseRagged, pagemodel.ProseJustified} {
		measure := pagemodel.Pt(100)
		rows := proseOf(style, "fr", measure, nil, text)
		wholeText(t, text, rows)
		for i := range rows {
			if (rows[i].Width > measure) != (shown(&rows[i]) == long) {
				t.Errorf("%v: %q is %v wide", style, shown(&rows[i]), rows[i].Width)
			}
		}
	}
}

// TestProseOfOtherLanguages is not divided, nor is what has tab stops, which is
// not justified either.
func TestProseOfOtherLanguages(t *testing.T) {
	measure := pagemodel.Pt(110)
	for _, r := range proseOf(pagemodel.ProseJustified, "fr", measure, nil, nightOven) {
		if strings.Contains(rowText(&r), "\u00ad") || !r.Last && r.Width != measure && strings.Contains(rowText(&r), " ") {
			t.Errorf("%q is %v wide", shown(&r), r.Width)
		}
	}
	at := strings.Index(nightOven, "loaf")
	edit := func(l pagemodel.Line) pagemodel.Line { return l.WithTab(at, pagemodel.Ems(12)) }
	rows := proseOf(pagemodel.ProseJustified, "", measure*2, edit, nightOven)
	wholeText(t, nightOven, rows)
	if x := rows[0].XAt(at); abs(x-pagemodel.Ems(12).At(pagemodel.Pt(11))) > 2 {
		t.Errorf("what stands at a tab stop of 12 ems begins at %v", x)
	}
	if shortfall(t, rows, measure*2) == 0 {
		t.Error("prose with a tab stop is justified")
	}
}

// TestPoetsWordTurnsProse: where the poet said at which word an overlong line
// turns, the paragraph's row ends there, and is not spaced out.
func TestPoetsWordTurnsProse(t *testing.T) {
	at := strings.Index(nightOven, "every")
	b := pagemodel.NewBuilder(pagemodel.About{}, pagemodel.DefaultDesign())
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{b.Line(nightOven)})})})
	d := b.Collection().Design()
	d.Prose = pagemodel.ProseJustified
	c := mustApply(t, b.Collection(), pagemodel.SetDesign{Design: d})
	rows := verse(setOf(mustApply(t, c, pagemodel.Keep{LineRef: firstLine(c), Turns: []int{at}})))
	wholeText(t, nightOven, rows)
	if shown(&rows[0]) != "The oven remembers" {
		t.Errorf("the first row is %q", shown(&rows[0]))
	}
	naturally(t, &rows[0])
}

// TestRightToLeftProse: where the whole tells widths wrongly, rows are set to be
// measured, and still none is too wide.
func TestRightToLeftProse(t *testing.T) {
	text := strings.Repeat("שלום קטן, and then Latin words that came — ", 12)
	measure := pagemodel.Pt(160)
	for _, style := range []pagemodel.ProseStyle{pagemodel.ProseRagged, pagemodel.ProseJustified} {
		for _, r := range proseOf(style, "", measure, nil, text) {
			if r.Width > measure {
				t.Errorf("%q is %v wide", shown(&r), r.Width)
			}
		}
	}
}

// TestPointFindsDividedWord: a point on a divided word's end finds it, and the
// edge of its row lies before the hyphen that is not in the text.
func TestPointFindsDividedWord(t *testing.T) {
	found := 0
	for _, r := range proseOf(pagemodel.ProseJustified, "", pagemodel.Pt(150), nil, nightOven) {
		if !strings.HasSuffix(rowText(&r), "\u00ad") {
			continue
		}
		found++
		hyphen := &r.Runs[len(r.Runs)-1]
		if x := r.XAt(r.End); x != r.X+hyphen.X {
			t.Errorf("%q: byte %d is at %v, the hyphen at %v", shown(&r), r.End, x, r.X+hyphen.X)
		}
		for _, x := range []Length{r.X + hyphen.X, r.X + r.Width, r.X + r.Width + 640} {
			if at := r.OffsetAt(x); at != r.End {
				t.Errorf("%q: %v finds byte %d, want %d", shown(&r), x, at, r.End)
			}
		}
	}
	if found == 0 {
		t.Error("no word was divided")
	}
}

// FuzzProse: whatever a paragraph holds, it stands once and in order, and no row
// is too wide that could have ended sooner.
func FuzzProse(f *testing.F) {
	f.Add(nightOven, 150, true)
	f.Add("  un\u00ad\u00addi\u00advided —\u00a0—a-b-c-d-e-f  \t x", 20, false)
	f.Add("  Yn\u00ad\u00ad00\u00ad2127( — 1—0000000000000000", 0, true)
	f.Add("ﬁ\u0301\u200dשלום العربية\u00a0x \u00ad", 60, true)
	f.Fuzz(func(t *testing.T, text string, width int, justified bool) {
		text = strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == utf8.RuneError }), " ")
		if len(text) > 2000 || strings.TrimFunc(text, pagemodel.IsSpace) == "" {
			t.Skip()
		}
		style, measure := pagemodel.ProseRagged, pagemodel.Pt(float64(48+max(0, width)%200))
		if justified {
			style = pagemodel.ProseJustified
		}
		rows := proseOf(style, "", measure, nil, text)
		wholeText(t, text, rows)
		line := pagemodel.NewLine(1, text)
		for i := range rows {
			within := func(s proseStop) bool {
				return s.next > rows[i].Start && s.next < rows[i].End && s.end > rows[i].Start && !s.divided
			}
			if rows[i].Width > measure && slices.ContainsFunc(proseStops(&line, trimEnd(text, 0, len(text)), nil), within) {
				t.Errorf("%q is %v wide at %v", shown(&rows[i]), rows[i].Width, measure)
			}
		}
	})
}
