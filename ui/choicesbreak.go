package ui

import (
	"slices"

	"headland/pagemodel"
	"headland/typeset/choices"
)

// breakHead is the head from which the poet last took a break.
func (s *settings) breakHead() choices.Head {
	if s.Break == string(pagemodel.InEdition) {
		return choices.InEdition
	}
	return choices.InPoem
}

// keepBreak notes the head from which a break is taken; false where that is
// noted already, or it is the head of no breaks.
func (s *settings) keepBreak(h choices.Head) bool {
	if h != choices.InPoem && h != choices.InEdition || h == s.breakHead() {
		return false
	}
	s.Break = string(pagemodel.InPoem)
	if h == choices.InEdition {
		s.Break = string(pagemodel.InEdition)
	}
	return true
}

// counterpart is the break at the same places under the other of the two heads.
func (l *choiceLeaf) counterpart(i int) (int, bool) {
	other := choices.InPoem
	switch l.all[i].Head {
	case choices.InPoem:
		other = choices.InEdition
	case choices.InEdition:
	default:
		return 0, false
	}
	for j, c := range l.all {
		if c.Head == other && len(c.At) > 0 && slices.Equal(c.At, l.all[i].At) {
			return j, true
		}
	}
	return 0, false
}
