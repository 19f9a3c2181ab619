package session

import (
	"headland/pagemodel"
	"headland/pagemodel/sqlite"
	"headland/typeset"
)

// PoemState is a poem as an edit left it.
type PoemState = sqlite.PoemState

// Decisions are the overlong lines of what is shown, and those that somebody has
// decided about.
func (s *Session) Decisions() []typeset.Decision { return s.Setting().Decisions() }

// PoemStates are all states of a poem since it came in, the oldest first, those
// that were undone among them.
func (s *Session) PoemStates(id pagemodel.PoemID) ([]PoemState, error) {
	return s.store.PoemStates(id)
}

// BringBack is the edit that gives a poem an earlier state again.
func (s *Session) BringBack(state PoemState) pagemodel.Edit {
	return pagemodel.BringBack{Poem: state.Poem, State: state.Edit}
}
