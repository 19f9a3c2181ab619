package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/order"
)

// keptOrders lists the orders kept by name beside the book's, on a scrap beside
// the page. The one pointed at is shown on the pages; Enter uses it; a name typed
// that none has keeps the book's order under it; Escape leaves all as it was.
type keptOrders struct {
	w     *Window
	scrap *scrap
	field *field
	list  *listing
	all   []keptOrder
	was   int // the page at which the book lay open
	over  bool
}

// askKeptOrders lays the list of the orders kept by name.
func (w *Window) askKeptOrders() {
	d := w.desk
	d.settleHand()
	if _, only := w.session.ReadOnly(); only {
		d.tell(readOnlyWords)
		return
	}
	k := &keptOrders{w: w, was: w.session.Page()}
	k.field = newField("", "a name to keep the book’s order under", k.key)
	k.field.OnChanged = k.typed
	k.list = newListing(d.k, d.light.palette(), fyne.NewSize(300, trialDepth), k.take)
	k.list.point = k.try
	k.scrap = w.layScrap(pagemodel.SideOf(k.was).Facing(), "Kept orders", k.field, k.field, k.list)
	k.read("")
}

// read lists what is kept now, the order of a name chosen, and begins to count
// what each costs.
func (k *keptOrders) read(name string) {
	s := k.w.session
	now := s.Collection().Arrangement()
	k.all = []keptOrder{{isBook: true}}
	at := 0
	for i, o := range s.Collection().Orders() {
		k.all = append(k.all, compared(s.Collection(), o, now))
		if o.Name == name {
			at = i + 1
		}
	}
	k.list.set(k.rows(), at)
	k.scrap.fit(k.list)
	k.try(at)
	k.count(0)
}

// count counts what the i-th order costs, and then the others, one at a time so
// that the list is never waited for.
func (k *keptOrders) count(i int) {
	if k.over || i >= len(k.all) {
		return
	}
	o := &k.all[i]
	if set, err := k.setting(o); err == nil {
		o.toll, o.tollSeen = order.TollOf(set), true
	}
	chosen, top := k.list.chosen, k.list.top
	k.list.set(k.rows(), chosen)
	k.scrap.fit(k.list)
	k.list.scrollTo(top)
	k.tell(chosen)
	all := k.all
	k.w.worker.post(func() {
		if len(all) == len(k.all) && &all[0] == &k.all[0] {
			k.count(i + 1)
		}
	})
}

// setting is the book set in an order.
func (k *keptOrders) setting(o *keptOrder) (*typeset.Setting, error) {
	if o.name == "" {
		return k.w.session.Committed(), nil
	}
	return k.w.session.Committed().Try(pagemodel.UseOrder{Name: o.name})
}

// typed goes to the order whose name begins as what is typed, or to none.
func (k *keptOrders) typed(text string) {
	at := -1
	for i := range k.all {
		if strings.HasPrefix(strings.ToLower(k.all[i].name), strings.ToLower(text)) && at < 0 {
			at = i
		}
	}
	if k.list.chosen != at {
		k.list.set(k.rows(), at)
		k.try(at)
	}
}

func (k *keptOrders) key(key fyne.KeyName) bool {
	return keptListKey(key, k.list, k.leave, func() { k.keep(k.field.Text) }, k.take, k.drop)
}

// try shows an order on the pages, from the first that it changes.
func (k *keptOrders) try(i int) {
	s, d, page := k.w.session, k.w.desk, k.was
	s.Drop()
	if i > 0 && !k.all[i].isBook {
		d.try(s.Preview(pagemodel.UseOrder{Name: k.all[i].name}))
		page = firstOtherPage(s.Committed(), s.Setting(), k.was)
	}
	d.showTried(k.scrap, page)
	k.tell(i)
}

// take uses an order, one step of the history.
func (k *keptOrders) take(i int) {
	if i < 0 || k.all[i].isBook {
		k.leave()
		return
	}
	o, d := k.all[i], k.w.desk
	k.end()
	d.do(pagemodel.UseOrder{Name: o.name})
	if d.said == "" {
		d.tell(joined(" · ", "The book is in the order "+quoted(o.name), o.leavesOut(), "Ctrl Z undoes it"))
	}
}

// keep keeps the book's order under a name.
func (k *keptOrders) keep(name string) {
	name = strings.TrimSpace(name)
	if name == "" {
		return
	}
	k.w.fail("The order could not be kept", k.w.session.Do(pagemodel.KeepOrder{Name: name}))
	k.field.SetText("")
	k.read(name)
}

// drop forgets an order that is kept.
func (k *keptOrders) drop(i int) {
	if i < 1 {
		return
	}
	k.w.fail("The order could not be dropped", k.w.session.Do(pagemodel.DropOrder{Name: k.all[i].name}))
	k.read("")
}

// leave puts all back.
func (k *keptOrders) leave() {
	k.w.session.Drop()
	k.end()
	k.w.desk.tell("")
	k.w.desk.showPage(k.was)
}

// end takes the list away.
func (k *keptOrders) end() {
	k.over = true
	k.scrap.lift()
	k.w.desk.takeKeys()
}
