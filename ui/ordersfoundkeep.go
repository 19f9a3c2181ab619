package ui

import (
	"strings"

	"headland/pagemodel"
	"headland/typeset/order"
)

// keep keeps an order that was found under a name. The book keeps its own.
func (f *foundOrders) keep(name string) {
	one, ok := f.at(f.list.chosen)
	if !ok {
		f.w.desk.tell("Choose an order that was found first: ↑ ↓ or the hand")
		return
	}
	if err := f.w.session.Do(pagemodel.KeepOrder{Name: name, Is: &one.Arrangement}); err != nil {
		f.w.fail("The order could not be kept", err)
		return
	}
	f.field.SetText("")
	f.try(f.list.chosen)
	f.w.desk.tell("Kept as " + quoted(name) + " · the book keeps its order · the kept orders are in the menu Order")
}

// tell says at the foot how the looking goes, and what can be done.
func (f *foundOrders) tell() {
	d := f.w.desk
	state := f.ended
	if f.looking {
		state = "Looking for better ones · Esc stops"
	}
	one, ok := f.at(f.list.chosen)
	switch {
	case f.field.Text != "":
		d.tell(joined(" · ", state, "Enter keeps the order chosen under this name"))
	case ok && !d.brief():
		d.tell(joined(" · ", sentence(one.Says[0]), "Enter takes it", state))
	case ok:
		d.tell(joined(" · ", "Enter takes it", state))
	default:
		d.tell(joined(" · ", state, "↑ ↓ or the hand shows one on the pages"))
	}
}

// row is an order that was found: what it costs beside the present, and what it
// moves.
func (f *foundOrders) row(i int) listRow {
	one := &f.found[i]
	toll := one.Toll
	toll.Faults = f.now.Faults // those of an order that is not set are not known
	r := listRow{words: sentence(toll.Beside(f.now)), under: f.movedWords(one)}
	if i == len(f.found)-1 {
		r.aside = "the best so far"
		if !f.looking && !f.stopped {
			r.aside = "the best"
		}
	}
	return r
}

// movedWords say how many poems an order moves, and which.
func (f *foundOrders) movedWords(one *order.Found) string {
	names := poemNames(f.w.session.Collection(), one.Moved)
	if len(names) == 0 {
		return "nothing is moved"
	}
	return counted(len(names), "poem", "poems") + " moved: " + strings.Join(names, ", ")
}
