package typeset

import (
	"fmt"
	"strings"

	"headland/pagemodel"
)

// PageEndKind says what a page end falls on.
type PageEndKind int

// The kinds of page end.
const (
	NoEnd          PageEndKind = iota // a blank, a section's page, prelims or end matter, or outside the book
	EndOfPoem                         // the last poem on the page ends there
	BetweenStanzas                    // it hides a stanza break
	WithinStanza
	BeforePart   // a part of the poem, with its heading, begins the next page
	ForcedByPoet // the poet has the next page begin with its line
)

// PageEnd is where a page ends and why.
type PageEnd struct {
	Kind PageEndKind
	Line pagemodel.LineRef // with which the next page begins; zero where it begins with none of the poem's
	// HidesBreak says that the page ends where a stanza does, in mid poem, and the
	// white between the two is not seen.
	HidesBreak bool
	// HidesWhite is how many lines of white, which the poet has put above the next
	// page's first line, are not seen.
	HidesWhite int
	Text       string // in words
}

// PageEnd says where page n ends and why.
func (s *Setting) PageEnd(n int) PageEnd {
	ref, ok := s.ref(n)
	if !ok || ref.chain < 0 {
		return PageEnd{}
	}
	c, p := s.seats.planOf(int(ref.chain))
	if c.kind == divider {
		return PageEnd{}
	}
	_, to := c.pageOf(p, int(ref.page))
	if to == len(c.steps) || c.opens(to) {
		return PageEnd{Kind: EndOfPoem, Text: "the poem ends"}
	}
	entry := int(s.seats.heads[ref.chain]) + c.poemAt(to)
	if c.kind == facing {
		entry += int(ref.page % 2)
	}
	b := faultFinder{Setting: s, entry: entry, at: s.placed(entry), own: s.entries.At(entry)}
	unit, ok := b.unitAt(to)
	if !ok {
		return PageEnd{Kind: EndOfPoem, Text: "the poem ends"}
	}
	return b.pageEnd(unit)
}

// pageEnd says why a page ends before a unit of the poem.
func (b *faultFinder) pageEnd(unit int) PageEnd {
	u := &b.own.units[unit]
	e := PageEnd{HidesBreak: u.at == 0 && u.group > 0 && !u.goesOn && b.own.units[unit-1].group > 0, HidesWhite: u.above}
	if line := u.rows[0].Line; line != 0 {
		e.Line = u.rows[0].Ref()
	}
	switch {
	case u.opens && !u.goesOn:
		e.Kind, e.Text = ForcedByPoet, "you begin a page here"
	case u.at > 0 || u.goesOn:
		e.Kind, e.Text = WithinStanza, "the page ends within a stanza"
	case u.group > 0:
		e.Kind, e.Text = BetweenStanzas, "the page ends at a stanza break"
	default:
		e.Kind, e.Text = BeforePart, "the page ends where a part of the poem does"
	}
	switch {
	case u.above == 1:
		e.Text += ", where a line of white is not seen"
	case u.above > 1:
		e.Text += fmt.Sprintf(", where %d lines of white are not seen", u.above)
	}
	if e.Kind != ForcedByPoet {
		if why := b.why(unit); why != "" {
			e.Text += ": " + why
		}
	}
	return e
}

// Why says in words why the page ends where a fault of its end is, "" for any
// other fault. The book is paged once more to know what would come of another
// end, so it is asked for one fault at a time.
func (s *Setting) Why(f Fault) string {
	switch f.Kind {
	case Widow, Orphan, SplitCouplet, SplitTercet, SplitStanza, TurnedStanza, StrandedTitle, PartedLine, HiddenBreak:
	default:
		return ""
	}
	page := f.Page - 1
	if f.Kind == Orphan || f.Kind == StrandedTitle {
		page = f.Page // it stands above the page's end
	}
	if i, ok := s.collection.IndexOf(f.Poem); ok && s.placed(i).spreads() {
		page--
	}
	_, why, _ := strings.Cut(s.PageEnd(page).Text, ": ")
	return why
}

// why says in words what would come of it if the page did not end before the
// unit.
func (b *faultFinder) why(unit int) string {
	u := &b.own.units[unit]
	if u.goesOn {
		return fmt.Sprintf("the line takes more rows than a page has, %d", b.own.rows)
	}
	if lines, rows := b.stanzaRows(unit); u.at > 0 && lines > rows {
		return fmt.Sprintf("the stanza takes %d lines, and a page has %d", lines, rows)
	}
	other, ok := b.without(unit)
	if !ok {
		return "the poem fits no other way"
	}
	if worse := other.worseThan(b.Cost()); worse != "" {
		return "else " + worse
	}
	return "no other page end is better"
}

// stanzaRows is how many rows the stanza of a unit takes, and how many a page
// has.
func (b *faultFinder) stanzaRows(unit int) (lines, rows int) {
	group := b.own.units[unit].group
	for i := range b.own.units {
		if b.own.units[i].group == group {
			lines += len(b.own.units[i].rows)
		}
	}
	return lines, b.own.rows
}

// without is what the book would cost if no page could end before the unit, or,
// where it parts a stanza, anywhere within that stanza.
func (b *faultFinder) without(unit int) (Cost, bool) {
	i := int(b.seats.chainOf[b.entry])
	c := *b.at.chain
	c.steps = append([]step(nil), c.steps...)
	c.plans = [2][2]plan{}
	u := &b.own.units[unit]
	for i := range b.own.units {
		if v := &b.own.units[i]; i == unit || u.at > 0 && v.group == u.group && v.at > 0 {
			c.steps[b.at.stepOf(i)].end = pageEnd{barred: true}
		}
	}
	c.solve()
	if c.plans[0][0].pages == 0 && c.plans[0][1].pages == 0 && c.plans[1][1].pages == 0 {
		return Cost{}, false
	}
	other := *b.Setting
	other.seats = b.seats.with(map[int]*chain{i: &c})
	return other.Cost(), true
}

// worseThan says in words what is gravest of what is worse here than in
// another.
func (a Cost) worseThan(b Cost) string {
	for _, f := range [...]struct {
		more      int
		one, many string
	}{
		{a.Forbidden - b.Forbidden, "lines that belong together would be parted", ""},
		{a.Turned - b.Turned, "a stanza would be parted at a turn of the leaf", "%d stanzas would be parted at a turn of the leaf"},
		{a.Split - b.Split, "a stanza would be parted at the gutter", "%d stanzas would be parted at the gutter"},
		{a.AgainstRule - b.AgainstRule, "a quatrain or sestet would be parted against its rule", ""},
		{a.Pages - b.Pages, "there would be a page more", "there would be %d pages more"},
		{a.Unfaced - b.Unfaced, "a poem of two pages would not face itself", "%d poems of two pages would not face themselves"},
		{a.Uneven - b.Uneven, "pages of stanza-less verse would be less even", ""},
		{a.Slack - b.Slack, "more white would be left at the foot", ""},
	} {
		switch {
		case f.more == 1 || f.more > 0 && f.many == "":
			return f.one
		case f.more > 0:
			return fmt.Sprintf(f.many, f.more)
		}
	}
	return ""
}

// differences says in words everything of note in which a differs from b.
func (a Cost) differences(b Cost) string {
	var said []string
	for _, f := range [...]struct {
		more      int
		one, many string // a noun and what is said of it
	}{
		{a.Forbidden - b.Forbidden, "page end/ that parts what belongs together", "page ends/ that part what belongs together"},
		{a.Turned - b.Turned, "stanza/ parted at a turn", "stanzas/ parted at a turn"},
		{a.Split - b.Split, "stanza/ parted at the gutter", "stanzas/ parted at the gutter"},
		{a.AgainstRule - b.AgainstRule, "stanza/ parted against its rule", "stanzas/ parted against their rule"},
		{a.Unfaced - b.Unfaced, "unfaced poem", "unfaced poems"},
	} {
		if f.more == 0 {
			continue
		}
		words, which := f.one, "more"
		if f.more < 0 {
			f.more, which = -f.more, "fewer"
		}
		if f.more > 1 {
			words = f.many
		}
		noun, rest, _ := strings.Cut(words, "/")
		said = append(said, fmt.Sprintf("%d %s %s%s", f.more, which, noun, rest))
	}
	return strings.Join(said, ", ")
}
