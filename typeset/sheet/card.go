package sheet

import (
	"fmt"
	"math"
	"time"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/aloud"
)

// cardTrim is A6 (ISO 216): it goes into most books of verse.
var cardTrim = pagemodel.Trim{Width: pagemodel.MM(105), Height: pagemodel.MM(148)}

// The card's margins, and the largest and the smallest of its type. It is set in the
// largest that lets all stand on one side; where none does it goes on, in the
// usual size, on its back.
var (
	cardMargin              = pagemodel.MM(8)
	usualOnCard             = pagemodel.Pt(9)
	mostOnCard, leastOnCard = pagemodel.Pt(12), pagemodel.Pt(7)
)

// CardTrim is the size of a card to lie in a book of that trim: A6, or the trim
// where that is less.
func CardTrim(book pagemodel.Trim) pagemodel.Trim {
	if book.Width < cardTrim.Width || book.Height < cardTrim.Height {
		return book
	}
	return cardTrim
}

// Card is a running order on a card to be tucked into the book: for each item the
// printed page, its title and first words, how long it takes and when it ends, and
// what is said before it. Its sides are pages of the book's [CardTrim]. The setter is
// nobody else's in the meantime.
func Card(book *typeset.Setting, p aloud.Plan, setter *typeset.Setter) []*typeset.Page {
	c := book.Collection()
	trim := CardTrim(c.Design().Trim)
	b := &binder{
		book: book, f: Format{Trim: trim, Side: cardMargin},
		comp: compositor{setter: setter, about: pagemodel.About{Language: c.About().Language}, family: c.Design().Face, side: cardMargin},
	}
	for size := mostOnCard; size >= leastOnCard; size -= sizeStep {
		if sides := b.card(p, size); len(sides) == 1 {
			return sides
		}
	}
	return b.card(p, usualOnCard)
}

// card sets the card in type of a size.
func (b *binder) card(p aloud.Plan, size typeset.Length) []*typeset.Page {
	b.f.Title, b.f.Label = size*6/5, size*9/10
	blocks := [][]typeset.Row{b.cardHead(p)}
	for i := range p.Items {
		blocks = append(blocks, b.cardItem(&p.Items[i], size))
	}
	s := side{trim: b.f.Trim, lead: size * 5 / 4}
	for _, block := range blocks {
		s.add(block)
	}
	return s.sides
}

// cardHead is the running order's name, when and where, and how long it takes.
func (b *binder) cardHead(p aloud.Plan) []typeset.Row {
	name := sourceOfText("", p.Reading.Name)
	rows := b.stacked(&name, b.f.Title, b.f.measure())
	about := ""
	for _, words := range []string{p.Reading.Occasion, dayOf(p.Reading.On), lasts(p)} {
		about = joined(about, words)
	}
	return b.under(rows, b.talk(about, b.f.Label, b.f.measure()))
}

// dayOf is a day as people write it; what is no day of ISO 8601 stays as it is.
func dayOf(on string) string {
	if day, err := time.Parse(time.DateOnly, on); err == nil {
		return day.Format("2 January 2006")
	}
	return on
}

// lasts says how long a plan takes, and of what.
func lasts(p aloud.Plan) string {
	words := clock(p.Total)
	if p.Slot > 0 {
		words += " of " + clock(p.Slot)
	}
	return words
}

// under puts rows below others, the first a row below the last.
func (b *binder) under(rows, more []typeset.Row) []typeset.Row {
	base := typeset.Length(0)
	if len(rows) > 0 && len(more) > 0 {
		base = depthOf(rows) + more[0].Runs[0].Size*5/4
	}
	for _, row := range more {
		row.Baseline += base
		rows = append(rows, row)
	}
	return rows
}

// Columns of a card, in ems of its type: the page from the left edge, the time from
// the right one.
const pageColumn, timeColumn = 3, 4

// cardItem is one item's rows: what is said before it; its page, title and time; its
// first words and when it ends.
func (b *binder) cardItem(item *aloud.Timed, size typeset.Length) []typeset.Row {
	s := sourceOf(b.book.Collection(), item.Item)
	left, measure := pageColumn*size, b.f.measure()-(pageColumn+timeColumn)*size
	title, words := s.title, ""
	if len(s.lines) > 0 {
		words = "“" + catchword(s.lines[0].Text()) + "”"
	}
	if title == "" {
		title, words = words, ""
	}
	if item.Item.Drop {
		words = joined(words, ifTime)
	}
	rows := b.talk(item.Item.Before, b.f.Label, measure)
	base := typeset.Length(0)
	if title != "" {
		t, under := sourceOfText("", title), sourceOfTalk(words, 0)
		named := b.under(b.stacked(&t, size, measure), b.stacked(&under, b.f.Label, measure))
		rows = b.under(rows, named)
		base = rows[len(rows)-len(named)].Baseline
	}
	for i := range rows {
		rows[i].X += left
	}
	return append(rows, b.cardSides(&s, item, size, base)...)
}

// joined are two things said of an item.
func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " · " + b
}

// cardSides are what stands left and right of an item's title, on that baseline and
// the one below.
func (b *binder) cardSides(s *source, item *aloud.Timed, size, base typeset.Length) []typeset.Row {
	takes, ends := clock(item.Seconds), "to "+clock(item.Starts+item.Seconds)
	if item.Dropped {
		takes, ends = "("+takes+")", ""
	}
	more := []typeset.Row{b.toRight(b.row(takes, size, false))}
	if len(s.lines) > 0 {
		if folio := s.printedPage(b.book, s.lines[0].ID()); folio != "" {
			more = append(more, b.row(folio, size, false))
		}
	}
	for i := range more {
		more[i].Baseline = base
	}
	if ends != "" {
		row := b.toRight(b.row(ends, b.f.Label, true))
		row.Baseline = base + b.f.Label*5/4
		more = append(more, row)
	}
	return more
}

// clock is a time in minutes and seconds.
func clock(seconds float64) string {
	n := int(math.Round(seconds))
	return fmt.Sprintf("%d:%02d", n/60, n%60)
}
