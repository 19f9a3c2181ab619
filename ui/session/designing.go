package session

import (
	"headland/pagemodel"
	"headland/typeset"
)

// Designing is a design tried out on the book, value by value. What lies open
// answers at once: [Designing.Try] sets the poems that stand there and no
// others. The whole book is set beside the window and shown by
// [Designing.Take]; from then on it is the session's preview like any other.
// The line that lay open when it began stays in sight.
type Designing struct {
	*Aside
	tried   pagemodel.Design
	glimpse *Glimpse
	anchor  pagemodel.LineRef
	home    int // where the book lay open when it began
	page    int // where it has laid it open since
}

// Designing begins to try designs out. It is refused where the file can only be
// read.
func (s *Session) Designing() (*Designing, error) {
	if err := s.writable(); err != nil {
		return nil, err
	}
	aside, err := s.Aside()
	if err != nil {
		return nil, err
	}
	s.Drop()
	t := &Designing{Aside: aside, tried: s.Collection().Design(), home: s.Page()}
	t.dropAnchor()
	return t, nil
}

// Tried is the design that was tried out last.
func (t *Designing) Tried() pagemodel.Design { return t.tried }

// Glimpse is the open spread in the design tried, while the rest of the book is
// not yet set in it; else nil.
func (t *Designing) Glimpse() *Glimpse { return t.glimpse }

// Try tries a design. It gives the whole book to be set in it, nil where there
// is nothing to set. The error says what makes the design impossible; then the
// design before is still the one tried.
func (t *Designing) Try(d pagemodel.Design) (*Whole, error) {
	w, err := t.Whole(d)
	if err != nil {
		return nil, err
	}
	t.tried, t.glimpse = d, nil
	if d == t.s.Collection().Design() {
		t.s.Drop()
		t.stay()
		return nil, nil
	}
	if d == t.s.Setting().Collection().Design() {
		return nil, nil
	}
	t.Look()
	return w, nil
}

// Look sets the spread that lies open now in the design tried, while the rest
// of the book is not set in it.
func (t *Designing) Look() {
	t.glimpse = nil
	if t.s.Setting().Collection().Design() == t.tried {
		return
	}
	if t.s.Page() != t.page {
		t.dropAnchor()
	}
	t.glimpse = t.s.glimpse(t.tried, t.anchor)
}

// Take shows the whole book as it has been set; false where another design has
// been tried since.
func (t *Designing) Take(w *Whole) bool {
	if w.Design() != t.tried || w.set == nil {
		return false
	}
	if t.s.Page() != t.page {
		t.dropAnchor()
	}
	t.glimpse = nil
	t.s.preview = &preview{pagemodel.SetDesign{Design: t.tried}, t.Setting(w)}
	t.stay()
	t.s.show()
	return true
}

// Commit sets the book in the design tried, whose whole must have been taken,
// as [Session.Release] does it.
func (t *Designing) Commit() error {
	t.glimpse = nil
	return t.s.Release()
}

// Leave puts all back, and the book open where it was.
func (t *Designing) Leave() {
	t.glimpse = nil
	t.s.Drop()
	t.s.Show(t.home)
}

// Keep keeps the design tried under a name, and goes on trying it.
func (t *Designing) Keep(name string) error {
	shown := t.s.preview
	if err := t.s.Do(pagemodel.KeepDesign{Name: name, Design: t.tried}); err != nil {
		return err
	}
	if shown == nil {
		return nil
	}
	return t.s.Preview(shown.edit)
}

// dropAnchor chooses the line that is to stay in sight: the one at hand where
// it lies open, else the first that does.
func (t *Designing) dropAnchor() {
	t.page = t.s.Page()
	set, spread := t.s.Setting(), t.s.Spread()
	if ref, ok := t.s.Focus(); ok {
		if page, ok := set.PageOfLine(ref); ok && pagemodel.SpreadOf(page, set.Extent()) == spread {
			t.anchor = ref
			return
		}
	}
	t.anchor = firstLine(set, spread)
}

// firstLine is the first of the poet's lines on a spread, the zero one where it
// has none.
func firstLine(set *typeset.Setting, spread pagemodel.Spread) pagemodel.LineRef {
	for _, n := range [...]int{spread.Verso, spread.Recto} {
		if n == 0 {
			continue
		}
		for _, r := range set.Page(n).Rows {
			if r.Line != 0 {
				return r.Ref()
			}
		}
	}
	return pagemodel.LineRef{}
}

// stay lays the book open where the anchored line is now.
func (t *Designing) stay() {
	if page, ok := t.s.Setting().PageOfLine(t.anchor); ok {
		t.s.Show(page)
	}
	t.page = t.s.Page()
}
