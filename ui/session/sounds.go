package session

import "headland/typeset/prosody"

// Sounds are the ways in which a word is said, the usual first; none in a
// language of which nobody here knows.
func (s *Session) Sounds(word string) []prosody.Sound { return s.lexicon().Word(word) }
