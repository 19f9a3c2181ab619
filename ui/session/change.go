package session

import (
	"fmt"

	"headland/pagemodel"
)

// Preview tries an edit out on the committed collection and sets the result.
// Neither history nor file sees it. It replaces the preview before; if the edit
// can't be done, that one stays and the error says why.
func (s *Session) Preview(e pagemodel.Edit) error {
	if err := s.writable(); err != nil {
		return err
	}
	e = s.noted(e)
	next, err := e.Apply(s.Collection())
	if err != nil {
		return err
	}
	setting := s.committed
	if next != s.Collection() {
		setting = s.setter.Set(s.committed, next)
	}
	s.preview = &preview{e, setting}
	s.show()
	return nil
}

// Previewing says that an edit is being tried out.
func (s *Session) Previewing() bool { return s.preview != nil }

// Drop puts all back to the committed collection. Without a preview it does
// nothing.
func (s *Session) Drop() {
	if s.preview == nil {
		return
	}
	s.preview = nil
	s.show()
}

// Release does the edit that is being tried out, as [Session.Do] does it. Where
// it can't be written, the preview is dropped and the error says why. Without a
// preview it does nothing.
func (s *Session) Release() error {
	if s.preview == nil {
		return nil
	}
	return s.Do(s.preview.edit)
}

// Do does an edit: one transaction, over before Do returns, then one step of
// history. An edit that changes nothing is none. It is noted on which day it was
// done, and at which words a line turns that is let turn. Any preview is dropped,
// whether or not the edit can be done. The error says in words what is wrong,
// and then nothing has changed.
func (s *Session) Do(e pagemodel.Edit) error {
	e = s.noted(e)
	if round, ok := e.(pagemodel.MarkSent); ok {
		return s.commit(func() (*pagemodel.Collection, error) { return s.storeRound(round) })
	}
	return s.commit(func() (*pagemodel.Collection, error) { return s.store.Do(e) })
}

// Undo takes back the last edit; with nothing to take back it says so.
func (s *Session) Undo() error {
	return s.commit(func() (*pagemodel.Collection, error) {
		if _, ok := s.UndoLabel(); !ok {
			return nil, fmt.Errorf("there is nothing to undo in %s", s.Name())
		}
		return s.store.Undo()
	})
}

// Redo does again what was last undone; with nothing to redo it says so.
func (s *Session) Redo() error {
	return s.commit(func() (*pagemodel.Collection, error) {
		if _, ok := s.RedoLabel(); !ok {
			return nil, fmt.Errorf("there is nothing to redo in %s", s.Name())
		}
		return s.store.Redo()
	})
}

// UndoLabel says in words what Undo would take back, or false.
func (s *Session) UndoLabel() (string, bool) { return s.store.UndoLabel() }

// RedoLabel says in words what Redo would do again, or false.
func (s *Session) RedoLabel() (string, bool) { return s.store.RedoLabel() }

// commit has the store change the collection and sets what came of it, from
// the pages that are shown now: what a preview has already set is not set
// again.
func (s *Session) commit(change func() (*pagemodel.Collection, error)) error {
	if err := s.writable(); err != nil {
		s.Drop()
		return err
	}
	shown, before := s.Setting(), s.Collection()
	next, err := change()
	differs := err == nil && next != before
	if differs {
		s.committed = s.setter.Set(shown, next)
	}
	tried := s.preview != nil
	s.preview = nil
	if tried || differs {
		s.show()
	}
	return err
}

// show tells the listener, once the book lies open at a page that it has.
func (s *Session) show() {
	s.page = s.clamp(s.page)
	s.changed()
}
