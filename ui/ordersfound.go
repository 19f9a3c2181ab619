package ui

import (
	"context"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset/order"
)

// foundOrders are the orders that are found, the best first, on a scrap beside
// the page, while they are looked for and after. The one pointed at is shown on
// the pages; Enter takes it; a name and Enter keeps it under that name; Escape
// stops looking, and then leaves all as it was.
type foundOrders struct {
	w       *Window
	scrap   *scrap
	field   *field
	list    *listing
	found   []order.Found // the last is the best
	now     order.Toll
	looking bool
	stopped bool   // by the poet
	ended   string // how the looking ended
	was     int    // the page at which the book lay open
	over    bool
	told    told
}

// lookForOrder looks, beside the window, for an order that meets what is asked,
// and shows each better one as it comes.
func (w *Window) lookForOrder() {
	var conditions []order.Condition
	for i := range w.orders.asked {
		conditions = append(conditions, w.orders.asked[i].is())
	}
	newFoundOrders(w).begin(conditions)
}

// newFoundOrders has found none yet.
func newFoundOrders(w *Window) *foundOrders {
	return &foundOrders{w: w, looking: true, was: w.session.Page(), now: w.session.Toll()}
}

// begin begins to look, and lays the list of what is found.
func (f *foundOrders) begin(conditions []order.Condition) {
	d := f.w.desk
	search := f.w.session.OrderSearch()
	job := func(progress) error {
		return search.Run(untilHalted{context.Background(), &f.w.worker}, conditions, f.hear)
	}
	if !f.w.worker.begin(job, func(int, int) {}, f.end) {
		d.tell("Something is being written: look for an order when that is done")
		return
	}
	f.field = newField("", "a name to keep the order chosen under", f.key)
	f.field.OnChanged = func(string) { f.tell() }
	f.list = newListing(d.k, d.light.palette(), fyne.NewSize(300, trialDepth), f.take)
	f.scrap = f.w.layScrap(pagemodel.SideOf(f.was).Facing(), "Orders found", f.field, f.field, f.list)
	f.show(0)
	f.list.point = f.try
	f.tell()
}

// add shows what was found since.
func (f *foundOrders) add() {
	f.told.mutex.Lock()
	more := f.told.found
	f.told.found, f.told.posted = nil, false
	f.told.mutex.Unlock()
	if f.left() || len(more) == 0 {
		return
	}
	f.found = append(f.found, more...)
	chosen := f.list.chosen
	if chosen > 0 {
		chosen += len(more)
	}
	f.show(chosen)
	f.tell()
}

// left says that nothing more is to be shown: the poet has left, or the window is
// closing and has stopped its worker.
func (f *foundOrders) left() bool {
	return f.over || !f.stopped && f.w.worker.halt.Load()
}

// show lists the orders found, and chooses a row: the first is to leave all as it
// is.
func (f *foundOrders) show(chosen int) {
	rows := []listRow{{words: "Leave all as it is", under: tollWords(f.now), quiet: true}}
	for i := range f.found {
		rows = append(rows, f.row(len(f.found)-1-i))
	}
	f.list.set(rows, chosen)
	f.list.step(0)
	f.list.least.Height = trialDepth
	f.scrap.lieOver(f.scrap.side)
}

// at is the order that a row stands for; false for the first, and for none.
func (f *foundOrders) at(row int) (*order.Found, bool) {
	if row < 1 || row > len(f.found) {
		return nil, false
	}
	return &f.found[len(f.found)-row], true
}

// edit puts the book into an order that was found.
func (f *foundOrders) edit(one *order.Found) pagemodel.Rearrange {
	return pagemodel.Rearrange{Arrangement: one.Arrangement, What: "take an order that was looked for"}
}

// try shows an order on the pages, from the first that it changes.
func (f *foundOrders) try(row int) {
	s, d, page := f.w.session, f.w.desk, f.was
	s.Drop()
	if one, ok := f.at(row); ok {
		d.try(s.Preview(f.edit(one)))
		page = firstOtherPage(s.Committed(), s.Setting(), f.was)
	}
	d.showTried(f.scrap, page)
	f.tell()
}

func (f *foundOrders) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		f.stopOrLeave()
	case fyne.KeyReturn, fyne.KeyEnter:
		if name := strings.TrimSpace(f.field.Text); name != "" {
			f.keep(name)
		} else {
			f.take(f.list.chosen)
		}
	default:
		return f.list.walk(k)
	}
	return true
}

// stopOrLeave stops looking, or, where that is over, leaves all as it was.
func (f *foundOrders) stopOrLeave() {
	if !f.looking {
		f.leave()
		return
	}
	f.stopped = true
	f.w.worker.cancel()
}

// end hears that the looking is over.
func (f *foundOrders) end(err error) {
	f.add()
	f.looking = false
	if f.left() {
		return
	}
	switch {
	case len(f.found) == 0 && err != nil:
		f.ended = errorWords(err)
	case f.stopped:
		f.ended = "Stopped"
	default:
		f.ended = "Nothing better can be found"
	}
	f.show(f.list.chosen)
	f.tell()
}

// take puts the book into an order, one step of the history.
func (f *foundOrders) take(row int) {
	one, ok := f.at(row)
	if !ok {
		f.leave()
		return
	}
	d, edit, says := f.w.desk, f.edit(one), slices.Clone(one.Says)
	f.lift()
	d.do(edit)
	if d.said == "" {
		d.tell(joined(" · ", sentence(strings.Join(says, "; ")), "Ctrl Z undoes it"))
	}
}

// leave puts all back.
func (f *foundOrders) leave() {
	f.lift()
	f.w.desk.tell("")
	f.w.desk.showPage(f.was)
}

// lift takes the scrap away and stops looking.
func (f *foundOrders) lift() {
	if f.looking {
		f.w.worker.cancel()
	}
	f.over = true
	f.w.session.Drop()
	f.scrap.lift()
	f.w.desk.takeKeys()
}
