package ui

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/ui/session"
)

// pickSize is the size of the lists from which something is picked.
func (a *aloudView) pickSize() fyne.Size { return fyne.NewSize(a.w.panelWidth(620), 14*rowDepth) }

// askItem asks which poem is read; what was typed already is in the field.
func (a *aloudView) askItem(typed string) {
	c, set := a.w.session.Collection(), a.w.session.Setting()
	var poems []*pagemodel.Poem
	for _, p := range c.Poems() {
		poems = append(poems, p)
	}
	poems = append(poems, c.LeftOut()...)
	in := map[pagemodel.PoemID]bool{}
	for i := range a.reading.Items {
		in[a.reading.Items[i].Poem] = true
	}
	find(a.w, finding[*pagemodel.Poem]{
		heading: "Read a poem", hint: "a word of its title, or of its first line", size: a.pickSize(), all: poems,
		row: func(p *pagemodel.Poem) listRow {
			row := listRow{words: p.Name(), quiet: in[p.ID()]}
			plan := a.w.session.Plan(pagemodel.Reading{Items: []pagemodel.Item{{Poem: p.ID()}}})
			if row.aside = clock(plan.Whole); in[p.ID()] {
				row.under = "in it already"
			}
			if page, ok := set.PageOfPoem(p.ID()); ok {
				row.aside = dotted("page "+set.FolioOf(page), row.aside)
			}
			return row
		},
		take: func(p *pagemodel.Poem) { a.add(pagemodel.Item{Poem: p.ID()}) },
	})
	if f, ok := a.w.win.Canvas().Focused().(*field); ok && typed != "" {
		f.SetText(typed)
		f.CursorColumn = len([]rune(typed))
	}
}

// askWhich asks which running order is to be at hand.
func (a *aloudView) askWhich() {
	all := a.w.session.Collection().Readings()
	if len(all) == 0 {
		a.askNew()
		return
	}
	find(a.w, finding[pagemodel.Reading]{
		heading: "To a running order", hint: "a word of its name", size: a.pickSize(), all: all,
		help: "Ctrl N makes another, Ctrl Delete throws the one at hand away",
		row: func(r pagemodel.Reading) listRow {
			plan := a.w.session.Plan(r)
			return listRow{words: r.Name, aside: onDayWords(r.On), under: dotted(counted(len(r.Items), "item", "items"), againstSlot(&plan), r.Occasion)}
		},
		take: a.take,
	})
}

// askUnread lists the poems by when they were last read, longest unread first.
func (a *aloudView) askUnread() {
	all, err := a.w.session.Unread()
	if err != nil {
		a.w.desk.try(err)
		return
	}
	find(a.w, finding[session.LastRead]{
		heading: "What was read where, longest unread first", hint: "a word of a title", size: a.pickSize(), all: all,
		help: "Enter puts the poem into the running order",
		row: func(l session.LastRead) listRow {
			return listRow{words: l.Title, aside: numberWords(l.Number), under: lastReadWords(l)}
		},
		take: func(l session.LastRead) { a.add(pagemodel.Item{Poem: l.Poem}) },
	})
}

func numberWords(n int) string {
	if n == 0 {
		return "left out"
	}
	return fmt.Sprint(n)
}

// lastReadWords say when and where a poem was read last.
func lastReadWords(l session.LastRead) string {
	if l.At.IsZero() {
		return "never read"
	}
	return dotted("read on "+onDayWords(l.At.Format(time.DateOnly)), l.Reading)
}

// poemLine is a line of a poem, to be picked.
type poemLine struct {
	id   pagemodel.LineID
	n    int // from 1
	text string
	why  string // it is read from here, or to here
}

// poemLines are the lines of an item's poem.
func (a *aloudView) poemLines(item *pagemodel.Item) []poemLine {
	poem, ok := a.poemOf(item)
	if !ok {
		return nil
	}
	var all []poemLine
	for _, l := range poem.Lines() {
		line := poemLine{id: l.ID(), n: len(all) + 1, text: l.Text()}
		if l.ID() == item.From {
			line.why = "read from here now"
		}
		if l.ID() == item.To {
			line.why = dotted(line.why, "read to here now")
		}
		all = append(all, line)
	}
	return all
}

// askExtract asks for the first and the last line of what is read of the poem at
// hand; the first and last of the poem are the whole of it.
func (a *aloudView) askExtract() {
	item, ok := a.item()
	lines := a.poemLines(&item)
	if !ok || len(lines) == 0 {
		a.w.desk.tell("Lines are chosen of a poem of the book: put one at hand first")
		return
	}
	a.askPoemLine("Read from which line?", lines, func(from poemLine) {
		rest := lines[from.n-1:]
		a.askPoemLine("… and to which? The last line for the rest", rest, func(to poemLine) {
			a.set(func(i *pagemodel.Item) {
				if i.From, i.To = from.id, to.id; from.n == 1 && to.n == len(lines) {
					i.From, i.To = 0, 0
				}
			})
		})
	})
}

func (a *aloudView) askPoemLine(heading string, lines []poemLine, take func(poemLine)) {
	find(a.w, finding[poemLine]{
		heading: heading, hint: "a word of the line", size: a.pickSize(), all: lines,
		row:  func(l poemLine) listRow { return listRow{words: l.text, aside: fmt.Sprint(l.n), under: l.why} },
		take: take,
	})
}
