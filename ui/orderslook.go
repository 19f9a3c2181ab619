package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"headland/pagemodel"
	"headland/typeset/order"
	"headland/ui/session"
)

// orderLook is the sheet on which the poet says what an order is to meet before
// one is looked for.
type orderLook struct {
	w     *Window
	panel *panel
	list  *listing
	asked *[]wish
	acts  []func() // of the rows
}

// ordersAsked is what the poet wants of an order of the book that is open.
type ordersAsked struct {
	of    *session.Session
	asked []wish
}

// begin forgets what was wanted of another book.
func (o *ordersAsked) begin(s *session.Session) {
	if o.of != s {
		*o = ordersAsked{of: s}
	}
}

// wish is something that an order is to meet: of which kind, and of which poems.
type wish struct {
	kind  *wishKind
	poems []pagemodel.PoemID
}

// wishKind is a kind of condition, in the poet's words.
type wishKind struct {
	words       string
	ask         string // for the first poem
	least, most int    // poems that it is about
	condition   func(poems []pagemodel.PoemID) order.Condition
}

// wishKinds are what can be wished of an order.
var wishKinds = [...]wishKind{
	{"these together…", "Together", 2, 1000, func(p []pagemodel.PoemID) order.Condition { return order.Together(p...) }},
	{"these one after another, in this order…", "One after another", 2, 1000, func(p []pagemodel.PoemID) order.Condition { return order.InOrder(p...) }},
	{"this one first…", "First", 1, 1, func(p []pagemodel.PoemID) order.Condition { return order.First(p[0]) }},
	{"this one last…", "Last", 1, 1, func(p []pagemodel.PoemID) order.Condition { return order.Last(p[0]) }},
	{"these two never side by side…", "Never side by side", 2, 2, func(p []pagemodel.PoemID) order.Condition { return order.Apart(p[0], p[1]) }},
	{"sections as they are", "", 0, 0, func([]pagemodel.PoemID) order.Condition { return order.SectionsStay() }},
}

// is says that the wish is that condition.
func (a *wish) is() order.Condition { return a.kind.condition(a.poems) }

// lookHelp says how the sheet is used.
const lookHelp = "↑ ↓ and Enter, or the hand · Enter or Delete on what is asked takes it back · nothing is changed until you take an order"

// askLook lays the sheet for looking for an order. What was asked before, while
// this book lay open, still is.
func (w *Window) askLook() {
	w.desk.settleHand()
	if w.session.Collection().Entries().Len() < 2 {
		w.desk.tell("The book has no two poems to put into another order")
		return
	}
	w.orders.begin(w.session)
	l := &orderLook{w: w, asked: &w.orders.asked}
	room := w.panelWidth(lookWidth)
	l.list = newListing(w.desk.k, w.desk.light.palette(), fyne.NewSize(room, lookDepth), l.act)
	l.list.Resize(fyne.NewSize(room, lookDepth))
	taker := newKeyTaker(l.key)
	l.panel = w.layPanel("Look for an order", taker, taker, l.list, container.New(&wide{room}, wordsOf(lookHelp)))
	l.read(0)
}

// Sizes of the sheet's list, in the toolkit's units.
const (
	lookWidth = 620
	lookDepth = 15 * rowDepth
)

// read lists what can be asked and what is.
func (l *orderLook) read(chosen int) {
	c := l.w.session.Collection()
	rows := []listRow{{words: "Look for it now", under: "The fewest poems unfaced and blank pages, moving as few poems as can be: each better order is shown as it is found"}}
	l.acts = []func(){l.begin}
	for i := range wishKinds {
		kind := &wishKinds[i]
		if kind.most == 0 && l.stays() >= 0 {
			continue
		}
		rows = append(rows, listRow{words: "Ask: " + kind.words})
		l.acts = append(l.acts, func() { l.pick(wish{kind: kind}) })
	}
	for i := range *l.asked {
		rows = append(rows, listRow{words: sentence((*l.asked)[i].is().Words(c)), aside: "asked", quiet: true})
		l.acts = append(l.acts, func() { l.takeBack(i) })
	}
	l.list.set(rows, chosen)
	l.list.step(0)
}

// stays is which of what is asked leaves the sections as they are; -1 for none.
func (l *orderLook) stays() int {
	return slices.IndexFunc(*l.asked, func(a wish) bool { return a.kind.most == 0 })
}

func (l *orderLook) key(k fyne.KeyName) {
	switch k {
	case fyne.KeyEscape:
		l.panel.lift()
	case fyne.KeyReturn, fyne.KeyEnter:
		l.act(l.list.chosen)
	case fyne.KeyDelete:
		if i := l.list.chosen - (len(l.acts) - len(*l.asked)); i >= 0 {
			l.takeBack(i)
		}
	default:
		l.list.walk(k)
	}
}

// act does what a row says.
func (l *orderLook) act(i int) {
	if i >= 0 && i < len(l.acts) {
		l.acts[i]()
	}
}

// takeBack no longer asks for something.
func (l *orderLook) takeBack(i int) {
	*l.asked = slices.Delete(*l.asked, i, i+1)
	l.read(min(l.list.chosen, len(l.acts)-1))
}

// begin looks for an order that meets what is asked.
func (l *orderLook) begin() {
	l.panel.lift()
	l.w.lookForOrder()
}

// pickable is a poem that can be picked, or, where it is nil, that all are.
type pickable struct{ poem *pagemodel.Poem }

// pick asks for the poems that a wish is about, one after another, and then asks
// it of the order.
func (l *orderLook) pick(a wish) {
	if len(a.poems) == a.kind.most {
		*l.asked = append(*l.asked, a)
		l.read(0)
		return
	}
	find(l.w, finding[pickable]{
		heading: l.pickWords(&a), hint: "a word of its title, or of its first line",
		size: fyne.NewSize(lookWidth-60, 12*rowDepth), all: l.pickables(&a), row: l.pickRow,
		take: func(p pickable) {
			if p.poem == nil {
				a.kind = enough(a.kind, len(a.poems))
			} else {
				a.poems = append(slices.Clone(a.poems), p.poem.ID())
			}
			l.pick(a)
		},
	})
}

// enough is a kind of wish that is about so many poems.
func enough(k *wishKind, n int) *wishKind {
	only := *k
	only.most = n
	return &only
}

// pickWords say what is picked and for what.
func (l *orderLook) pickWords(a *wish) string {
	c := l.w.session.Collection()
	switch n := len(a.poems); {
	case n == 0:
		return a.kind.ask + ": which poem?"
	case n == 1:
		return a.kind.ask + ": " + poemNames(c, a.poems)[0] + ", and which other?"
	default:
		names := poemNames(c, a.poems)
		return fmt.Sprintf("%s: %s and %s, and which other?", a.kind.ask, names[n-1], others(n-1))
	}
}

// pickables are the poems that are not picked yet, after the word that they are
// all, once they may be.
func (l *orderLook) pickables(a *wish) []pickable {
	var all []pickable
	if len(a.poems) >= a.kind.least {
		all = append(all, pickable{})
	}
	for _, p := range l.w.session.Collection().Poems() {
		if !slices.Contains(a.poems, p.ID()) {
			all = append(all, pickable{p})
		}
	}
	return all
}

func (l *orderLook) pickRow(p pickable) listRow {
	if p.poem == nil {
		return listRow{words: "These are all", quiet: true}
	}
	set := l.w.session.Setting()
	page, _ := set.PageOfPoem(p.poem.ID())
	return listRow{words: p.poem.Name(), aside: set.FolioOf(page)}
}
