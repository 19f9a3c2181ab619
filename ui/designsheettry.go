package ui

import (
	"headland/pagemodel"
	"headland/ui/session"
)

// keep keeps the design that is tried under a name.
func (s *designSheet) keep(name string) {
	s.finish()
	s.typed = nil
	if err := s.tries.Keep(name); err != nil {
		s.refuse(err)
		return
	}
	s.leaf.said = ""
	s.settled()
}

// try has the open spread answer to a design, and the rest of the book follow;
// false where the design is refused.
func (s *designSheet) try(d design) bool {
	whole, err := s.tries.Try(followed(s.tries.Tried(), d, s.extent))
	if err != nil {
		s.refuse(err)
		return false
	}
	s.leaf.said, s.latest = "", whole
	if whole == nil {
		s.settled()
		return true
	}
	s.beside.set(whole)
	s.w.desk.showGlimpse(s.tries.Glimpse())
	s.show()
	return true
}

// take shows the whole book, now that it is set.
func (s *designSheet) take(whole *session.Whole) {
	if s.over || whole != s.latest || !s.tries.Take(whole) {
		return
	}
	s.latest = nil
	s.settled()
}

// settled shows the whole book after it has changed.
func (s *designSheet) settled() {
	d := s.w.desk
	s.now = figuresOf(s.w.session.Setting())
	if !s.leaf.byMouse {
		d.working = pagemodel.SideOf(s.w.session.Page())
	}
	d.forgetGlimpse()
	s.show()
}

// finish waits until the whole book is set in the design tried.
func (s *designSheet) finish() {
	whole := s.latest
	if whole == nil {
		return
	}
	s.beside.stop()
	if !whole.Ready() {
		whole.Set()
	}
	s.take(whole)
}

// turn turns the leaf; the pages that open are set first.
func (s *designSheet) turn(by int) {
	d := s.w.desk
	d.turnLeaf(by)
	s.tries.Look()
	if g := s.tries.Glimpse(); g != nil {
		d.showGlimpse(g)
	}
	s.show()
}

// refuse says why a value is none; the page stays at the last that was one.
func (s *designSheet) refuse(err error) {
	s.leaf.said = sentence(err.Error()) + "."
	s.show()
}

// commit sets the book in the design tried, and lifts the sheet.
func (s *designSheet) commit() {
	s.finish()
	s.close()
	s.w.desk.said = ""
	if s.w.session.Previewing() {
		s.w.desk.tell("The book is set so · Ctrl Z undoes it")
	}
	s.w.desk.try(s.tries.Commit())
	s.w.desk.forgetGlimpse()
}

// leave puts all back, and lifts the sheet.
func (s *designSheet) leave() {
	s.close()
	s.tries.Leave()
	s.w.desk.said = ""
	s.w.desk.working = pagemodel.SideOf(s.w.session.Page())
	s.w.desk.forgetGlimpse()
}

func (s *designSheet) close() {
	s.over, s.latest, s.beside.next = true, nil, nil
	s.leaf.lift()
}
