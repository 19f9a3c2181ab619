package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"headland/pagemodel"
)

// itemAsk asks what is said before an item and, for one from elsewhere, for its
// title and text.
type itemAsk struct {
	a       *aloudView
	item    pagemodel.Item // as it was
	added   bool           // it is not in the running order yet
	panel   *panel
	title   *field
	text    *field // several lines
	before  *field
	seconds *field
	drop    *wordRow
	note    *widget.Label
}

var dropWords = [...]string{"read it in any case", "drop it if time is short"}

// askSaid asks what is said before the item at hand.
func (a *aloudView) askSaid() {
	if item, ok := a.item(); ok {
		a.layItem(item, false)
		return
	}
	a.askItem("")
}

// askElsewhere asks for a poem from elsewhere, or for words that are only said.
func (a *aloudView) askElsewhere() { a.layItem(pagemodel.Item{}, true) }

func (a *aloudView) layItem(item pagemodel.Item, added bool) {
	k := &itemAsk{a: a, item: item, added: added, note: wordsOf("")}
	k.makeFields()
	heading, first := "What is said before "+a.headingOf(item), k.before
	var body []fyne.CanvasObject
	if item.Poem == 0 {
		heading, first = "From elsewhere", k.title
		body = append(body, k.title, container.New(&deep{deepText}, k.text))
	}
	help := "Nothing for the seconds: they are reckoned from the words · ↑ ↓ drop it or not · Tab goes on · Enter keeps it · Esc leaves"
	if item.Poem == 0 {
		help = "A line of the poem on each line, an empty one between stanzas · with neither title nor text it is talk alone · " + help
	}
	body = append(body, k.before, k.seconds, k.drop, container.New(&wide{a.w.panelWidth(askWidth)}, k.note), a.w.paragraph(help),
		container.NewHBox(newButton("Keep It", k.keep, k.leave), newButton("Leave It", k.leave, k.leave)))
	k.panel = a.w.layPanel(heading, first, body...)
	k.tell()
}

// makeFields makes what is typed in, with the item's words in it.
func (k *itemAsk) makeFields() {
	seconds := ""
	if k.item.Talk > 0 {
		seconds = clock(float64(k.item.Talk))
	}
	k.title = newField(k.item.Title, "its title, if it has one", k.key)
	k.text = newField(k.item.Text, "its text, typed or pasted", k.textKey)
	k.text.MultiLine, k.text.Wrapping = true, fyne.TextWrapWord
	k.before = newField(k.item.Before, "what is said, in your own words", k.key)
	k.seconds = newField(seconds, "seconds for that: 40, or 1:10", k.key)
	k.drop = newWordRow(k.a.w.desk.k, k.a.w.desk.light.palette(), dropWords[:], 0, k.dropAs)
	if k.item.Drop {
		k.drop.choose(1)
	}
	for _, f := range [...]*field{k.title, k.text, k.before, k.seconds} {
		f.OnChanged = func(string) { k.tell() }
	}
}

// headingOf is an item's name in a heading.
func (a *aloudView) headingOf(item pagemodel.Item) string {
	if poem, ok := a.poemOf(&item); ok {
		return nameOfPoem(poem)
	}
	return quoted(item.Title)
}

// deepText is how deep the field for a poem's text is, in the toolkit's units.
const deepText = 150

// deep gives one object a depth of its own.
type deep struct{ depth float32 }

// MinSize is as wide as the object, and that deep.
func (l *deep) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[0].MinSize().Width, l.depth)
}

// Layout gives it all the room.
func (l *deep) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

func (k *itemAsk) key(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyUp:
		k.dropAs(0)
	case fyne.KeyDown:
		k.dropAs(1)
	default:
		return enterOrLeave(key, k.keep, k.leave)
	}
	return true
}

// textKey is a key in the field of several lines: Enter is a line's end there.
func (k *itemAsk) textKey(key fyne.KeyName) bool {
	if key == fyne.KeyEscape {
		k.leave()
		return true
	}
	return false
}

// dropAs has the item be left out if time is short, or not.
func (k *itemAsk) dropAs(i int) {
	k.drop.choose(i)
	k.tell()
}

// typed is the item as the fields have it.
func (k *itemAsk) typed() (pagemodel.Item, error) {
	item := k.item
	item.Before, item.Drop = strings.TrimSpace(k.before.Text), k.drop.chosen == 1
	if item.Poem == 0 {
		item.Title, item.Text = strings.TrimSpace(k.title.Text), strings.Trim(strings.ReplaceAll(k.text.Text, "\r\n", "\n"), "\n")
	}
	var err error
	item.Talk, err = secondsOf(k.seconds.Text)
	return item, err
}

// whole is the running order with the item as the fields have it.
func (k *itemAsk) whole() (r pagemodel.Reading, at int, err error) {
	item, err := k.typed()
	at = k.a.at
	r = k.a.changed(func(r *pagemodel.Reading) {
		if !k.added {
			r.Items[at] = item
			return
		}
		at = min(at+1, len(r.Items))
		r.Items = append(r.Items[:at:at], append([]pagemodel.Item{item}, r.Items[at:]...)...)
	})
	return r, at, err
}

// tell says what it takes, and the whole against the slot, as it is typed.
func (k *itemAsk) tell() {
	r, at, err := k.whole()
	if err != nil {
		k.note.SetText(errorWords(err))
		return
	}
	plan := k.a.w.session.Plan(r)
	t := &plan.Items[at]
	k.note.SetText("This takes " + clock(t.Seconds) + ", the talk of it " + clock(t.Talk) + " · all: " + againstSlot(&plan))
}

// keep makes it so. Where that can't be the panel stays and says why.
func (k *itemAsk) keep() {
	r, at, err := k.whole()
	if err == nil && r.Name == "" {
		r.Name = k.a.nextName()
	}
	if err == nil {
		_, err = pagemodel.SetReading{Reading: r}.Apply(k.a.w.session.Collection())
	}
	if err != nil {
		k.note.SetText(errorWords(err))
		return
	}
	k.leave()
	if k.a.make(func(to *pagemodel.Reading) { *to = r }) {
		k.a.walk(at)
	}
}

func (k *itemAsk) leave() { k.a.w.liftTo(k.panel, k.a) }
