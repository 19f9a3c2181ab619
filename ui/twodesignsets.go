package ui

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// designSets is the book in several designs, each set beside the window when it
// is first wanted.
type designSets struct {
	w       *Window
	aside   *session.Aside
	beside  settingBeside
	sets    map[design]*typeset.Setting
	waiting []design
	changed func() // another is set
	over    bool
}

// newDesignSets knows the book as it is.
func newDesignSets(w *Window, changed func()) (*designSets, error) {
	aside, err := w.session.Aside()
	if err != nil {
		return nil, err
	}
	now := w.session.Committed()
	s := &designSets{w: w, aside: aside, changed: changed, sets: map[design]*typeset.Setting{now.Collection().Design(): now}}
	s.beside = settingBeside{worker: worker{post: w.worker.post}, done: s.take}
	return s, nil
}

// want has the book set in designs, one after another.
func (s *designSets) want(all ...design) {
	for _, d := range all {
		if s.sets[d] == nil {
			s.waiting = append(s.waiting, d)
		}
	}
	s.next()
}

// next sets the next design that waits; one that can't be set is passed over.
func (s *designSets) next() {
	for len(s.waiting) > 0 {
		d := s.waiting[0]
		if s.sets[d] == nil {
			if whole, err := s.aside.Whole(d); err == nil {
				s.beside.set(whole)
				return
			}
		}
		s.waiting = s.waiting[1:]
	}
}

// take keeps what has been set, and goes on.
func (s *designSets) take(whole *session.Whole) {
	if s.over {
		return
	}
	s.sets[whole.Design()] = s.aside.Setting(whole)
	s.next()
	s.changed()
}

// choiceOfDesign is a design that the book can be set in, under its name.
type choiceOfDesign struct {
	name   string
	kept   bool // under that name; else it is the book's own
	design design
}

// designChoices are the book's own design and the kept ones.
func (w *Window) designChoices() []choiceOfDesign {
	c := w.session.Collection()
	all := []choiceOfDesign{{name: "the book as it is", design: c.Design()}}
	for _, kept := range c.Designs() {
		all = append(all, choiceOfDesign{kept.Name, true, kept.Design})
	}
	return all
}

// words say what a design gives; set is nil while that is not known.
func (c choiceOfDesign) words(set *typeset.Setting) string {
	measure := fmt.Sprintf("measure %.0f pt", c.design.Measure().Points())
	if set == nil {
		return measure + " · setting…"
	}
	f := figuresOf(set)
	return fmt.Sprintf("%s · %s · %s · %s", measure, counted(f.turnovers, "turnover", "turnovers"),
		counted(f.extent, "page", "pages"), counted(f.faults, "fault", "faults"))
}

// useDesign sets the book in a design, in one step of the history.
func (w *Window) useDesign(d design) {
	w.fail("The book could not be set so", w.session.Do(pagemodel.SetDesign{Design: d}))
	w.desk.forgetGlimpse()
}
