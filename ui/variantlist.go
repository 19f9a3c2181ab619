package ui

import (
	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// versionList is the list of the versions of a poem, on a scrap beside its page.
// The one pointed at is tried out there; Enter takes it; Escape leaves all as it
// was.
type versionList struct {
	*versions
	scrap *scrap
	list  *versionRows
}

// layList lays the list, the version that is B chosen.
func (v *versions) layList() {
	d := v.w.desk
	l := &versionList{versions: v}
	l.list = newVersionRows(d, l.take, l.ask)
	rows := make([]listRow, len(v.all))
	for i := range v.all {
		rows[i] = v.row(i)
	}
	taker := newTabTaker(l.key)
	l.scrap = v.w.layScrap(pagemodel.SideOf(v.pageNow(v.book)).Facing(), v.heading(), taker, taker, l.list)
	l.list.set(rows, v.shown[1])
	if float32(len(rows))*rowDepth < trialDepth {
		l.list.fit(trialDepth)
	}
	l.list.step(0)
	l.list.point = l.try
	l.try(v.shown[1])
}

// heading is what the list is of.
func (v *versions) heading() string {
	if v.states {
		return "Every state of " + nameOfPoem(v.poem)
	}
	return "Variants of " + nameOfPoem(v.poem)
}

// row is a version in the list.
func (v *versions) row(i int) listRow {
	is := &v.all[i]
	r := listRow{words: is.name, aside: is.when, quiet: i == v.book, under: v.differs(i)}
	switch {
	case i == v.book && is.name != inBookWords:
		r.under = inBookWords
	case i != v.book && r.under == "":
		r.under = "as in the book"
	}
	if v.states {
		r.words = sentence(is.name)
	}
	if v.states && i == len(v.all)-1 {
		r.under = joined(" · ", "as it came in", r.under)
	}
	if is.back {
		r.under = joined(" · ", "undone", r.under)
	}
	return r
}

// pageNow is the page that shows, as the book is set now, where a version first
// differs from the one in the book.
func (v *versions) pageNow(i int) int {
	var first *versionDiff
	if all := v.between(v.book, i); len(all) > 0 {
		first = &all[0]
	}
	return pageOfDiff(v.w.session.Setting(), first, 1, v.poem.ID())
}

// try shows a version on its pages, in the book.
func (l *versionList) try(i int) {
	l.choose(i)
	l.show(i)
	page := l.pageNow(i)
	l.w.desk.showPage(page)
	l.scrap.lieOver(pagemodel.SideOf(page).Facing())
	l.w.desk.tell(l.help())
}

// show has a version stand in the book, as long as it is looked at. Where the
// book can only be read, its pages stay as they are.
func (v *versions) show(i int) {
	s := v.w.session
	if _, only := s.ReadOnly(); only {
		return
	}
	s.Drop()
	if edit := v.all[i].edit; edit != nil {
		v.w.desk.try(s.Preview(edit))
	}
}

// help says at the foot of the desk what can be done with what is chosen.
func (l *versionList) help() string {
	i := l.shown[1]
	if l.w.desk.brief() && l.all[i].edit != nil {
		return "Enter puts it into the book · Tab compares it · Esc leaves all as it was"
	}
	words := "↑ ↓ or the hand shows one on the page"
	if l.all[i].edit != nil {
		words += " · Enter puts it into the book · Tab compares it line by line"
	}
	if l.all[i].kept {
		words += " · Delete drops it"
	}
	if !l.states {
		words += " · F2 names it"
	}
	return words + " · Esc leaves all as it was"
}

func (l *versionList) key(k fyne.KeyName) {
	switch k {
	case fyne.KeyEscape:
		l.leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		l.take(l.list.chosen)
	case fyne.KeyTab:
		l.compare((*versions).layLines)
	case fyne.KeyF2:
		l.rename()
	case fyne.KeyDelete:
		l.drop()
	default:
		l.list.walk(k)
	}
}

// compare lifts the list and lays what is chosen beside what is in the book.
func (l *versionList) compare(lay func(*versions)) {
	if l.all[l.shown[1]].edit == nil {
		l.w.desk.tell("That one is in the book: choose another, to compare the two")
		return
	}
	l.w.session.Drop()
	l.scrap.lift()
	lay(l.versions)
}

// take puts a version into the book.
func (l *versionList) take(i int) {
	if i < 0 {
		return
	}
	l.w.session.Drop()
	l.scrap.lift()
	l.use(i)
}

// use puts a version into the book, in one step of the history, and opens the
// book there.
func (v *versions) use(i int) {
	d := v.w.desk
	if v.all[i].edit == nil {
		v.end()
		return
	}
	d.do(v.all[i].edit)
	if d.said == "" {
		words := quoted(v.all[i].name) + " is in the book, what was there is kept"
		if v.states {
			words = "The poem is again as it was"
		}
		d.tell(words + " · Ctrl Z undoes it")
	}
	d.showPage(v.pageNow(i))
	d.takeKeys()
}

// end puts all back as it was before.
func (v *versions) end() {
	d := v.w.desk
	v.w.session.Drop()
	d.said = ""
	d.showPage(v.was)
	d.takeKeys()
}

// leave lifts the list.
func (l *versionList) leave() {
	l.scrap.lift()
	l.end()
}
