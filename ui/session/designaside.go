package session

import (
	"headland/pagemodel"
	"headland/typeset"
)

// Aside sets the whole book in other designs beside the window: it has faces
// and a setter of its own, so that what it sets can be set on another goroutine
// while the book on the desk is looked at. Everything else of it belongs to the
// session's goroutine, and one [Whole] at a time may be set.
type Aside struct {
	s      *Session
	setter *typeset.Setter
}

// Aside makes one, with the faces that the session has now.
func (s *Session) Aside() (*Aside, error) {
	faces := typeset.Bundled()
	stored, err := s.store.Faces()
	if err != nil {
		return nil, err
	}
	for _, f := range stored {
		if err := faces.Add(f.Family, f.Bold, f.Italic, f.Bytes); err != nil {
			return nil, err
		}
	}
	return &Aside{s, typeset.NewSetter(faces)}, nil
}

// Whole is the committed book in another design, to be set.
type Whole struct {
	collection *pagemodel.Collection
	near       *typeset.Setting // saves work where the designs set alike
	setter     *typeset.Setter
	set        *typeset.Setting
}

// Whole is the committed book in a design. The error says in words what makes
// the design impossible.
func (a *Aside) Whole(d pagemodel.Design) (*Whole, error) {
	next, err := pagemodel.SetDesign{Design: d}.Apply(a.s.Collection())
	if err != nil {
		return nil, err
	}
	return &Whole{collection: next, near: a.s.Setting(), setter: a.setter}, nil
}

// Set sets the book, on any one goroutine. It reads nothing of the session.
func (w *Whole) Set() { w.set = w.setter.Set(w.near, w.collection) }

// Design is the design that the book is set in.
func (w *Whole) Design() pagemodel.Design { return w.collection.Design() }

// Setting is what [Whole.Set] has set, as the session's own setter would have
// set it: its pages may be looked at while another whole is being set.
func (a *Aside) Setting(w *Whole) *typeset.Setting { return a.s.setter.Set(w.set, w.collection) }

// Ready says that the book has been set.
func (w *Whole) Ready() bool { return w.set != nil }
