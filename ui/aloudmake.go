package ui

import (
	"fmt"
	"slices"

	"headland/pagemodel"
)

// make changes the running order at hand, in one step of the history; false, with
// words at the foot, where that can't be. What change is given is its own.
func (a *aloudView) make(change func(*pagemodel.Reading)) bool {
	r := a.changed(change)
	if r.Name == "" {
		r.Name = a.nextName()
	}
	if err := a.w.session.Do(pagemodel.SetReading{Reading: r}); err != nil {
		a.read()
		a.w.desk.try(err)
		return false
	}
	if all := a.w.session.Collection().Readings(); r.ID == 0 {
		a.reading.ID = all[len(all)-1].ID
	}
	a.read()
	a.tell()
	return true
}

// changed is the running order at hand with a change, not yet in the file.
func (a *aloudView) changed(change func(*pagemodel.Reading)) pagemodel.Reading {
	r := a.reading
	r.Items = slices.Clone(r.Items)
	change(&r)
	return r
}

// nextName is what a running order is called that has no name yet.
func (a *aloudView) nextName() string {
	name := "A reading"
	for n := 2; ; n++ {
		if _, err := a.w.session.Collection().ReadingCalled(name); err != nil {
			return name
		}
		name = fmt.Sprintf("A reading, %d", n)
	}
}

// add puts an item in behind the one at hand, and it at hand.
func (a *aloudView) add(item pagemodel.Item) {
	at := min(a.at+1, len(a.reading.Items))
	if a.make(func(r *pagemodel.Reading) { r.Items = slices.Insert(r.Items, at, item) }) {
		a.walk(at)
	}
}

// set gives the item at hand other values.
func (a *aloudView) set(change func(*pagemodel.Item)) {
	if _, ok := a.item(); ok {
		a.make(func(r *pagemodel.Reading) { change(&r.Items[a.at]) })
	}
}

// takeOut takes the item at hand out.
func (a *aloudView) takeOut() {
	if _, ok := a.item(); !ok {
		return
	}
	name := a.nameOf(a.at)
	if a.make(func(r *pagemodel.Reading) { r.Items = slices.Delete(r.Items, a.at, a.at+1) }) {
		a.scroll(0)
		a.w.desk.tell(name + " is taken out · Ctrl Z puts it back")
	}
}

// shift moves the item at hand so many places on.
func (a *aloudView) shift(by int) {
	to := a.at + by
	if _, ok := a.item(); !ok || to < 0 || to >= len(a.reading.Items) {
		return
	}
	if a.make(func(r *pagemodel.Reading) { shiftItem(r, a.at, to) }) {
		a.walk(to)
	}
}

// shiftItem moves an item to another place; the others close up.
func shiftItem(r *pagemodel.Reading, from, to int) {
	item := r.Items[from]
	r.Items = slices.Insert(slices.Delete(r.Items, from, from+1), to, item)
}

// flipDrop marks the item at hand as left out if time is short, or no longer.
func (a *aloudView) flipDrop() {
	a.set(func(i *pagemodel.Item) { i.Drop = !i.Drop })
}

// dropReading throws the running order at hand away.
func (a *aloudView) dropReading() {
	if a.reading.ID == 0 {
		return
	}
	name := a.reading.Name
	if err := a.w.session.Do(pagemodel.DropReading{ID: a.reading.ID}); err != nil {
		a.w.desk.try(err)
		return
	}
	a.read()
	a.w.desk.tell(quoted(name) + " is thrown away, what was timed of it stays · Ctrl Z brings it back")
}

// goBack undoes or does again.
func (a *aloudView) goBack(by func()) {
	by()
	said := a.w.desk.said
	a.read()
	if a.scroll(0); said == "" {
		a.tell()
	}
}
