package session

import "headland/pagemodel"

// Page is the page, from 1, at which the book lies open.
func (s *Session) Page() int { return s.clamp(s.page) }

// Show opens the book at a page; one that it does not have is taken for the
// nearest that it has.
func (s *Session) Show(page int) {
	page = s.clamp(page)
	if page == s.page {
		return
	}
	s.page = page
	s.changed()
}

// Spread is the pages that lie open.
func (s *Session) Spread() pagemodel.Spread {
	return pagemodel.SpreadOf(s.Page(), s.Setting().Extent())
}

func (s *Session) clamp(page int) int { return max(1, min(page, s.Setting().Extent())) }

// Focus is the line at hand. It is false where there is none, or where what is
// shown no longer has it: a line joined into another is at hand again once that
// is undone.
func (s *Session) Focus() (pagemodel.LineRef, bool) {
	if !s.focused {
		return pagemodel.LineRef{}, false
	}
	if _, _, err := s.Setting().Collection().Line(s.focus); err != nil {
		return pagemodel.LineRef{}, false
	}
	return s.focus, true
}

// SetFocus puts a line at hand.
func (s *Session) SetFocus(ref pagemodel.LineRef) {
	if s.focused && s.focus == ref {
		return
	}
	s.focus, s.focused = ref, true
	s.changed()
}

// ClearFocus puts no line at hand.
func (s *Session) ClearFocus() {
	if !s.focused {
		return
	}
	s.focus, s.focused = pagemodel.LineRef{}, false
	s.changed()
}

// showUnsettled opens the book where there is something to do: at the first
// line that nobody has settled, with that line at hand.
func (s *Session) showUnsettled() {
	for _, o := range s.committed.Turnovers() {
		if o.State == pagemodel.Unsettled {
			s.page, s.focus, s.focused = o.Page, o.Ref, true
			return
		}
	}
}
