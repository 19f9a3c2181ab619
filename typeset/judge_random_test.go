package typeset_test

import (
	"pgregory.net/rapid"

	"headland/pagemodel"
)

// said is what a poet may say about the pages of a random book.
type said struct {
	poems, pieces int  // at most; pieces in each poem
	overrules     bool // lines tied, and page ends forced
	forms, starts bool
	shares        bool // poems may share pages
	heads, prose  bool
	parts, runs   bool
	white         bool // lines of white above lines
	spreads       bool // poems may lie across the spread, or face a translation; no line turns
}

// smallDesign is a page of few rows, a measure of some twenty-five characters.
func smallDesign(rows, titleRow, poemRow, gap int) pagemodel.Design {
	d := pagemodel.DefaultDesign()
	d.Size, d.Leading = pagemodel.Pt(10), pagemodel.Pt(12)
	d.Margins.Head, d.Margins.Foot = pagemodel.MM(15), pagemodel.MM(20)
	d.Margins.Outer = d.Trim.Width - d.Margins.Inner - pagemodel.Pt(120)
	d.Trim.Height = d.Margins.Head + d.Margins.Foot + d.Size + pagemodel.Length(rows-1)*d.Leading
	d.TitleRow, d.PoemRow, d.StanzaGap = titleRow, poemRow, gap
	return d
}

func drawDesign(t *rapid.T) pagemodel.Design {
	title := rapid.IntRange(1, 2).Draw(t, "title row")
	poem := title + rapid.IntRange(1, 3).Draw(t, "below it")
	rows := poem + rapid.IntRange(3, 8).Draw(t, "rows below")
	d := smallDesign(rows, title, poem, rapid.SampledFrom([]int{1, 1, 1, 2}).Draw(t, "gap"))
	d.SectionOpen = rapid.Bool().Draw(t, "section open")
	return d
}

// Lines of the street at night that take one, two and three rows.
var (
	oneRow    = []string{"the ovens hum", "flour on the sill", "a van goes by", "rye, then spelt", "dawn at the hatch"}
	twoRows   = []string{"the baker leans in the doorway and counts", "a loaf for the woman who sweeps the tram"}
	threeRows = []string{"nobody on the bridge but the boy with the trays and his one long shadow before him"}
)

func drawText(t *rapid.T) string {
	if n := rapid.IntRange(0, 11).Draw(t, "turns"); n == 0 {
		return threeRows[0]
	} else if n < 3 {
		return rapid.SampledFrom(twoRows).Draw(t, "text")
	}
	return rapid.SampledFrom(oneRow).Draw(t, "text")
}

// drawBook is a random book.
func drawBook(t *rapid.T, what said) *pagemodel.Collection {
	b := pagemodel.NewBuilder(pagemodel.About{}, drawDesign(t))
	for i := range rapid.IntRange(1, what.poems).Draw(t, "poems") {
		if what.starts && rapid.IntRange(0, 9).Draw(t, "section") == 0 {
			b.Section("Section", nil)
		}
		head, parts := drawHead(t, what, i), drawParts(t, b, what)
		b.Poem(head, parts)
		if what.spreads && head.Lie == pagemodel.Upright && rapid.Bool().Draw(t, "translated") {
			head.Start, head.Blank = pagemodel.FacingPage, false
			b.Poem(head, translated(b, parts))
		}
	}
	return b.Collection()
}

// translated is a poem in another tongue that needs as much room for each word.
func translated(b *pagemodel.Builder, parts []pagemodel.Part) []pagemodel.Part {
	var all []pagemodel.Part
	for _, part := range parts {
		var stanzas []pagemodel.Stanza
		for _, s := range part.Stanzas() {
			var lines []pagemodel.Line
			for _, l := range s.Lines() {
				lines = append(lines, b.Line(l.Text()).WithTied(l.Tied()).WithOpensPage(l.OpensPage()).WithAbove(l.Above()))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(s.Kind(), lines))
		}
		all = append(all, pagemodel.NewPart(part.Heading(), stanzas))
	}
	return all
}

func drawHead(t *rapid.T, what said, poem int) pagemodel.PoemHead {
	var h pagemodel.PoemHead
	if rapid.Bool().Draw(t, "titled") {
		h.Title = "Loaf"
	}
	if what.heads {
		h.Dedication = rapid.SampledFrom([]string{"", "", "for M."}).Draw(t, "dedication")
		h.Place = rapid.SampledFrom([]string{"", "", "Mill Lane"}).Draw(t, "place")
	}
	if what.forms {
		h.Form = rapid.SampledFrom(pagemodel.Forms).Draw(t, "form")
	}
	if what.starts {
		h.Start = rapid.SampledFrom([]pagemodel.Start{pagemodel.FreshPage, pagemodel.FreshPage, pagemodel.OnVerso, pagemodel.OnRecto}).Draw(t, "start")
		h.Blank = rapid.IntRange(0, 5).Draw(t, "blank") == 0
	}
	if what.shares && poem > 0 && rapid.IntRange(0, 2).Draw(t, "fresh") > 0 {
		h.Start, h.Blank = pagemodel.SharedPage, false
	}
	if what.spreads && rapid.IntRange(0, 2).Draw(t, "lie") == 0 {
		h.Lie = pagemodel.Across
	}
	if what.runs {
		h.Run = rapid.SampledFrom([]int{0, 0, 1, -1}).Draw(t, "run")
	}
	return h
}

// drawParts draws a poem's words: stanzas of the lengths that have a rule, more
// often than others, up to the number of pieces that the judge can bear.
func drawParts(t *rapid.T, b *pagemodel.Builder, what said) []pagemodel.Part {
	left := rapid.IntRange(1, what.pieces).Draw(t, "pieces")
	var parts []pagemodel.Part
	var stanzas []pagemodel.Stanza
	heading := ""
	first := true
	for left > 0 {
		n := min(left, rapid.SampledFrom([]int{1, 1, 2, 3, 3, 4, 4, 5, 6, 6, 8, 12}).Draw(t, "lines"))
		left -= n
		if what.prose && rapid.IntRange(0, 4).Draw(t, "prose") == 0 {
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{drawParagraph(t, b, what, n, first)}))
		} else {
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, drawLines(t, b, what, n, first)))
		}
		first = false
		if what.parts && left > 1 && rapid.IntRange(0, 3).Draw(t, "part") == 0 {
			parts = append(parts, pagemodel.NewPart(heading, stanzas))
			stanzas, heading = nil, rapid.SampledFrom([]string{"ii", "ii", ""}).Draw(t, "heading")
			left--
		}
	}
	return append(parts, pagemodel.NewPart(heading, stanzas))
}

func drawLines(t *rapid.T, b *pagemodel.Builder, what said, n int, first bool) []pagemodel.Line {
	lines := make([]pagemodel.Line, n)
	for i := range lines {
		text := oneRow[0]
		if !what.spreads {
			text = drawText(t)
		}
		lines[i] = overruled(t, b.Line(text), what, first && i == 0)
	}
	return lines
}

// drawParagraph draws prose of about so many rows.
func drawParagraph(t *rapid.T, b *pagemodel.Builder, what said, rows int, first bool) pagemodel.Line {
	text := ""
	for range rows {
		text += "the flour settles on a coat "
	}
	return overruled(t, b.Line(text[:len(text)-1]), what, first)
}

func overruled(t *rapid.T, l pagemodel.Line, what said, first bool) pagemodel.Line {
	if what.white && rapid.IntRange(0, 4).Draw(t, "white") == 0 {
		l = l.WithAbove(rapid.IntRange(1, 4).Draw(t, "lines of white"))
	}
	if !what.overrules {
		return l
	}
	switch rapid.IntRange(0, 11).Draw(t, "overrule") {
	case 0:
		return l.WithTied(true)
	case 1:
		return l.WithOpensPage(!first)
	}
	return l
}
