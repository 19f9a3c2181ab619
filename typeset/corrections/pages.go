package corrections

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// The columns of a list on pages, from its left edge: the number stands at the
// edge, then the labels, then what they are labels of.
const (
	labelColumn = 3 * pagemodel.OneEm
	wordColumn  = 8 * pagemodel.OneEm
)

// Pages is the list set on A4 in a family of type, by a setter that nobody else
// uses in the meantime: a collection whose one poem is the list, each correction a
// stanza that keeps together as far as a page goes. The error says what makes the
// design impossible.
func (l *List) Pages(setter *typeset.Setter, family string) ([]*typeset.Page, error) {
	design := listDesign(family)
	if err := design.Check(); err != nil {
		return nil, fmt.Errorf("the list of corrections can't be set: %w", err)
	}
	set := setter.Set(nil, l.collection(design))
	pages := make([]*typeset.Page, set.Extent())
	for i := range pages {
		pages[i] = set.Page(i + 1)
	}
	return pages, nil
}

// listDesign is how the list looks: A4 (ISO 216), one left edge, folios at the foot.
func listDesign(family string) pagemodel.Design {
	d := pagemodel.DefaultDesign()
	d.Trim = pagemodel.Trim{Width: pagemodel.MM(210), Height: pagemodel.MM(297)}
	d.Margins = pagemodel.Margins{Inner: pagemodel.MM(28), Outer: pagemodel.MM(28), Head: pagemodel.MM(24), Foot: pagemodel.MM(28)}
	d.Face, d.Size, d.Leading = family, pagemodel.Pt(11), pagemodel.Pt(14)
	d.TitleRow, d.PoemRow = 1, 4
	return d
}

// collection is the list as a book.
func (l *List) collection(design pagemodel.Design) *pagemodel.Collection {
	about := pagemodel.About{Title: l.heading(), Poet: plain(l.About.Poet), Language: l.About.Language}
	b := pagemodel.NewBuilder(about, design)
	stanzas := []pagemodel.Stanza{
		pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{b.Line(l.span())}),
		pagemodel.NewStanza(pagemodel.Prose, []pagemodel.Line{b.Line(ruleHeading + plain(l.Rule))}),
	}
	for i := range l.All {
		lines := l.All[i].lines(b)
		if i == 0 {
			lines = append([]pagemodel.Line{hanging(b)}, lines...)
		}
		stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
	}
	b.Poem(pagemodel.PoemHead{Title: l.heading(), Subtitle: l.book()}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	return b.Collection()
}

// hanging is an empty line whose indent, the list's deepest, has what is turned
// over go on in the column of the words: turnovers stand an em beyond it.
func hanging(b *pagemodel.Builder) pagemodel.Line {
	return b.Line("").WithIndent(wordColumn - pagemodel.OneEm)
}

// lines are a correction's lines, kept together.
func (c *Correction) lines(b *pagemodel.Builder) []pagemodel.Line {
	number := fmt.Sprint(c.Number)
	place := strings.TrimSuffix(c.where()+"; "+c.onPage(), "; ")
	kind := string(c.Change.Kind)
	lines := []pagemodel.Line{
		b.Line(number+" "+place).WithTab(len(number)+1, labelColumn),
		b.Line(kind + ", " + c.whose()).WithIndent(labelColumn).WithSpans(italic(len(kind))),
	}
	for _, s := range c.says() {
		line := b.Line(s.label + " " + s.text).WithIndent(labelColumn)
		lines = append(lines, line.WithSpans(italic(len(s.label))).WithTab(len(s.label)+1, wordColumn))
	}
	for i := range lines[:len(lines)-1] {
		lines[i] = lines[i].WithTied(true)
	}
	return lines
}

// italic is a span from a line's start.
func italic(end int) []pagemodel.Span {
	return []pagemodel.Span{{Start: 0, End: end, Style: pagemodel.Italic}}
}
