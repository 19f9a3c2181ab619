package typeset

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
)

// FaultKind is what is wrong, as reports name it.
type FaultKind string

// The faults that the setting finds. What is unsettled is not among them: see
// [Setting.Turnovers].
const (
	MissingGlyph  FaultKind = "missing-glyph"       // the face has no such character
	AbsentFace    FaultKind = "absent-face"         // the design's face, or one of its styles, is not here
	OverMeasure   FaultKind = "over-measure"        // a word wider than the measure
	Widow         FaultKind = "widow"               // a stanza's last line alone at a head
	Orphan        FaultKind = "orphan"              // a stanza's first line alone at a foot
	SplitCouplet  FaultKind = "split-couplet"       // two lines that belong together parted
	SplitTercet   FaultKind = "split-tercet"        // three lines that belong together parted
	SplitStanza   FaultKind = "split-stanza"        // a stanza parted at the gutter
	TurnedStanza  FaultKind = "turned-stanza"       // a stanza parted at a turn of the leaf
	PartedLine    FaultKind = "parted-turnover"     // a line parted from its turnover
	UnfacedPoem   FaultKind = "unfaced-poem"        // a poem of two pages that do not face each other
	StrandedTitle FaultKind = "stranded-title"      // a title, or a part's heading, parted from its lines
	ShortLastPage FaultKind = "short-last-page"     // a poem's last page has under four lines
	HiddenBreak   FaultKind = "hidden-stanza-break" // a page end hides a stanza break, and the form does not show it
	OverFoot      FaultKind = "over-foot"           // a row stands too near the folio or the foot of the page
	NearGutter    FaultKind = "near-gutter"         // a row begins or ends in what the binding swallows
)

// FaultKinds are all kinds, in the order in which they are explained.
var FaultKinds = []FaultKind{
	Widow, Orphan, SplitCouplet, SplitTercet, SplitStanza, TurnedStanza, PartedLine, UnfacedPoem, StrandedTitle,
	ShortLastPage, HiddenBreak, OverFoot, NearGutter, OverMeasure, MissingGlyph, AbsentFace,
}

// Fault is one thing that somebody should look at.
type Fault struct {
	Kind FaultKind
	Poem pagemodel.PoemID  // 0 where it is of the whole book
	Line pagemodel.LineRef // the line that it is at; zero where it is at none
	Page int               // 0 where it is of the whole book
	Row  int               // among the page's rows of the poet's words, from 1; 0 for none
	Text string            // in words
}

// unitFault is a fault of a poem's own, wherever its page ends fall.
type unitFault struct {
	kind FaultKind
	unit int // the one that it is in
	text string
}

// poemFault is a fault noted while a poem was being set.
type poemFault struct {
	kind FaultKind
	line pagemodel.LineID // 0 where it is in no line of the poet's
	text string
}

// words says what the fault is.
func (f *unitFault) words() string {
	switch f.kind {
	case MissingGlyph:
		return "the face has no “" + f.text + "”"
	case AbsentFace:
		return "the family has no face for the style of “" + f.text + "”"
	}
	return "“" + f.text + "” is wider than the measure"
}

// findFaults gathers the poem's own faults, unit by unit.
func (s *poemSetting) findFaults(noted []poemFault) {
	for _, f := range noted {
		s.faults = append(s.faults, unitFault{f.kind, max(0, s.unitOf(f.line)), f.text})
	}
	for i := range s.units {
		for j := range s.units[i].rows {
			if r := &s.units[i].rows[j]; r.Line != 0 && r.Width > r.Room {
				s.faults = append(s.faults, unitFault{OverMeasure, i, rowText(r)})
			}
		}
	}
}

func rowText(r *Row) string {
	text := ""
	for i, run := range r.Runs {
		if i > 0 && run.X > r.Runs[i-1].X+r.Runs[i-1].Width {
			text += " "
		}
		text += run.Text
	}
	return text
}

// Faults are all faults: those of the whole book first, then poem by poem.
func (s *Setting) Faults() []Fault {
	var all []Fault
	if text := s.absentFace(); text != "" {
		all = append(all, Fault{Kind: AbsentFace, Text: text})
	}
	for i := range s.entries.Len() {
		all = append(all, s.faultsOf(i)...)
	}
	for n := 1; n <= s.Extent(); n++ {
		all = append(all, s.matterFaults(n)...)
	}
	return all
}

// matterFaults are the faults of a page of the prelims or the end matter.
func (s *Setting) matterFaults(n int) []Fault {
	m := s.matterAt(n)
	if m == nil {
		return nil
	}
	var all []Fault
	for _, f := range m.faults() {
		f := unitFault{kind: f.kind, text: f.text}
		all = append(all, Fault{Kind: f.kind, Page: n, Text: f.words()})
	}
	return all
}

// FaultsOn is how many faults the page has.
func (s *Setting) FaultsOn(page int) int {
	n := len(s.matterFaults(page))
	for i := range s.entriesOn(page) {
		for _, f := range s.faultsOf(i) {
			if f.Page == page {
				n++
			}
		}
	}
	return n
}

// faultsOf are the faults of one entry.
func (s *Setting) faultsOf(entry int) []Fault {
	b := faultFinder{Setting: s, entry: entry, at: s.placed(entry), own: s.entries.At(entry)}
	if p := s.source(int32(entry)).Poem; p != nil {
		b.poem = p.ID()
	}
	for i := range b.own.faults {
		f := &b.own.faults[i]
		b.find(f.kind, f.unit, f.words())
	}
	if b.at.kind == divider {
		return b.found
	}
	if p := s.source(int32(entry)).Poem; p != nil && p.LineCount() == 0 {
		b.find(StrandedTitle, 0, "the poem has no lines")
		return b.found
	}
	b.endFaults()
	b.shapeFaults()
	b.edgeFaults()
	slices.SortStableFunc(b.found, func(f, g Fault) int { return cmp.Or(cmp.Compare(f.Page, g.Page), cmp.Compare(f.Row, g.Row)) })
	return b.found
}

// faultFinder looks through the pages of one poem.
type faultFinder struct {
	*Setting
	entry int
	poem  pagemodel.PoemID
	at    placed
	own   *poemSetting
	found []Fault
}

// find notes a fault at a unit.
func (b *faultFinder) find(kind FaultKind, unit int, text string) {
	f := Fault{Kind: kind, Poem: b.poem, Text: text}
	if len(b.own.units) > unit {
		f.Page, f.Row = b.rowAt(b.entry, unit)
		if line := b.own.units[unit].rows[0].Line; line != 0 {
			f.Line = pagemodel.LineRef{Poem: b.poem, Line: line}
		}
	} else {
		f.Page = b.at.page
	}
	b.found = append(b.found, f)
}

// starts are the units with which the poem's pages begin, but for the first.
func (b *faultFinder) starts() []int {
	var units []int
	for _, cut := range b.at.plan.cuts {
		if unit, ok := b.unitAt(int(cut)); ok {
			units = append(units, unit)
		}
	}
	return units
}

// unitAt is the poem's unit that a step of the chain is, or false where it is
// another poem's or the poem's first.
func (b *faultFinder) unitAt(step int) (int, bool) {
	if b.at.kind == facing {
		for ; step < len(b.at.steps); step++ {
			if u := b.at.sides[b.at.poem][step]; u >= 0 {
				return int(u), u > 0
			}
		}
		return 0, false
	}
	unit := step - int(b.at.first[b.at.poem])
	return unit, unit > 0 && unit < len(b.own.units)
}

// endFaults finds what the poem's page ends part or hide.
func (b *faultFinder) endFaults() {
	for _, unit := range b.starts() {
		u, above := &b.own.units[unit], &b.own.units[unit-1]
		stranded := above.keep && above.rows[0].Line == 0
		if u.opens && !u.goesOn && !stranded {
			continue // the poet's own
		}
		before := ", before “" + rowText(&u.rows[0]) + "”"
		switch {
		case u.goesOn:
			b.find(PartedLine, unit, "a line deeper than the page is parted"+before)
		case stranded:
			b.find(StrandedTitle, unit-1, "the title or heading is parted from its lines"+before)
		case u.at > 0:
			b.stanzaFaults(u, unit, before)
		case u.group > 0 && above.group > 0 && !b.own.showsForm && b.design.Hidden == pagemodel.HiddenPlain:
			b.find(HiddenBreak, unit, "the page ends where a stanza does, and nothing shows it"+before)
		}
	}
}

// stanzaFaults finds what a page end within a stanza does to it.
func (b *faultFinder) stanzaFaults(u *unit, unit int, before string) {
	form := b.collection.Order()[b.entry].Poem.Head().Form
	switch {
	case u.of == 2 || !u.prose && form == pagemodel.Couplets && u.at%2 != 0:
		b.find(SplitCouplet, unit, "the page ends within a couplet"+before)
	case u.of == 3 || !u.prose && form == pagemodel.Tercets && u.at%3 != 0:
		b.find(SplitTercet, unit, "the page ends within a tercet"+before)
	case u.of-u.at == 1:
		b.find(Widow, unit, "a stanza's last line stands alone at the head of the page: “"+rowText(&u.rows[0])+"”")
	case u.at == 1:
		b.find(Orphan, unit-1, "a stanza's first line stands alone at the foot of the page"+before)
	}
	if u.prose || b.own.stanzaless {
		return // there is no stanza to keep whole
	}
	if page, _ := b.rowAt(b.entry, unit); pagemodel.SideOf(page) == pagemodel.Verso {
		b.find(TurnedStanza, unit, "the leaf turns within a stanza"+before)
		return
	}
	b.find(SplitStanza, unit, "the page ends within a stanza"+before)
}

// shortPage is the fewest lines that a poem's last page may have without being
// called short (common practice, no source).
const shortPage = 4

// shapeFaults finds what is wrong with how many pages the poem takes, and where.
func (b *faultFinder) shapeFaults() {
	if b.at.spreads() {
		return
	}
	first, last := b.at.pageOfUnit(0), b.at.pageOfUnit(len(b.own.units)-1)
	if last == first+1 && pagemodel.SideOf(first) == pagemodel.Recto {
		b.find(UnfacedPoem, 0, "the poem takes two pages, and the leaf turns between them")
	}
	if last == first {
		return
	}
	lines := 0
	unit := len(b.own.units) - 1
	for ; unit >= 0 && b.at.pageOfUnit(unit) == last; unit-- {
		if b.own.units[unit].group > 0 {
			lines += len(b.own.units[unit].rows)
		}
	}
	if opens := b.own.units[unit+1].opens; lines < shortPage && !opens {
		b.find(ShortLastPage, unit+1, fmt.Sprintf("the poem’s last page has %s", countOf(lines, "line")))
	}
}

func countOf(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// edgeFaults finds the rows that stand too low or too near the spine. Lines are
// looked at on the page, where their places are known.
func (b *faultFinder) edgeFaults() {
	first, last := b.at.pageOfUnit(0), b.at.pageOfUnit(len(b.own.units)-1)
	if !b.mayBeNearAnEdge() {
		return
	}
	if b.at.kind == across {
		last++
	}
	for n := first; n <= last; n++ {
		if b.at.kind == facing && (n-b.at.page)%2 != b.at.poem {
			continue
		}
		page, found := b.Page(n), len(b.found)
		for i := range page.Rows {
			if r := &page.Rows[i]; r.Poem == b.poem && !r.Turned {
				b.edgeFault(page, r)
			}
		}
		b.tellOnce(found)
	}
}

// tellOnce leaves one fault at the gutter of those of a page: what is too near
// for one row is so for all that begin or end there.
func (b *faultFinder) tellOnce(from int) {
	first, more := -1, 0
	kept := b.found[:from]
	for _, f := range b.found[from:] {
		if f.Kind == NearGutter && first >= 0 {
			more++
			continue
		}
		if f.Kind == NearGutter {
			first = len(kept)
		}
		kept = append(kept, f)
	}
	if b.found = kept; more > 0 {
		kept[first].Text += ", and " + countOf(more, "line") + " more of the page with it"
	}
}

// mayBeNearAnEdge spares a look at the pages of nearly all poems: nothing can
// come near an edge but where lines may leave the measure, pages run long, or
// the margin is less than what the binding swallows.
func (b *faultFinder) mayBeNearAnEdge() bool {
	d := &b.design
	return b.at.kind == across || d.RunOut > 0 || b.folioBelow() < 2*d.Leading || d.HangQuotes || b.own.rows > d.Rows() || d.Margins.Inner <= b.swallowed() ||
		len(b.own.faults) > 0
}

// swallowed is what the gutter takes of each page of this book.
func (s *Setting) swallowed() Length { return pagemodel.Swallowed(s.design.Binding, s.Extent()) }

func (b *faultFinder) edgeFault(p *Page, r *Row) {
	f := Fault{Poem: b.poem, Page: p.Number, Row: r.Number}
	if r.Line != 0 {
		f.Line = r.Ref()
	}
	lowest := p.Text.Y + p.Text.H + b.folioBelow() - b.design.Leading
	if b.design.Folios != pagemodel.FolioNone && r.Baseline > lowest && r.Line != 0 {
		f.Kind, f.Text = OverFoot, "“"+rowText(r)+"” stands too near the folio: less than a line above it"
		b.found = append(b.found, f)
	}
	lost := b.swallowed()
	var in Length
	switch {
	case b.at.kind == across:
		if words := b.inTheGutter(r, p.Trim.Width, lost); words != "" && p.Side == pagemodel.Verso {
			f.Kind, f.Text = NearGutter, "“"+words+"” falls into the gutter"
			b.found = append(b.found, f)
		}
		return
	case p.Side == pagemodel.Recto && r.X < lost && r.X+r.Width > 0:
		in = lost - r.X
		f.Text = fmt.Sprintf("“%s” begins %s inside what the binding swallows", rowText(r), millimetres(in))
	case p.Side == pagemodel.Verso && r.X+r.Width > p.Trim.Width-lost:
		in = r.X + r.Width - p.Trim.Width + lost
		f.Text = fmt.Sprintf("“%s” ends %s inside what the binding swallows", rowText(r), millimetres(in))
	}
	if in > 0 && r.Line != 0 {
		f.Kind = NearGutter
		b.found = append(b.found, f)
	}
}

// inTheGutter are the words of a row, on a verso, that reach into what the
// binding takes on either side of the spine, which is at x.
func (b *faultFinder) inTheGutter(r *Row, x, lost Length) string {
	poem, at, err := b.collection.Line(r.Ref())
	if err != nil {
		return ""
	}
	text := poem.Line(at).Text()
	var in []string
	for _, w := range pagemodel.Words(text) {
		if w.Start >= r.Start && w.End <= r.End && r.XAt(w.Start) < x+lost && r.XAt(w.End) > x-lost {
			in = append(in, text[w.Start:w.End])
		}
	}
	return strings.Join(in, " ")
}

func millimetres(l Length) string { return fmt.Sprintf("%.1f mm", l.Millimetres()) }

// showsForm says that all stanzas of the poem are alike in length, or that it is
// in stanzas of a declared form: then a reader who finds a page end between two
// of them takes it for one.
func showsForm(p *pagemodel.Poem) bool {
	length := p.Head().Form.Group()
	for _, part := range p.Parts() {
		for _, s := range part.Stanzas() {
			n := len(s.Lines())
			if s.Kind() == pagemodel.Prose {
				return false
			}
			if length == 0 {
				length = n
			}
			if n != length {
				return false
			}
		}
	}
	return true
}
