package session

import (
	"strings"

	"headland/pagemodel"
	"headland/typeset/choices"
	"headland/typeset/prosody"
)

// Choices are the ways of settling a line of the committed collection, overlong
// or not, and what each would do. Nothing is changed by asking: [Session.Preview]
// and [Session.Do] take a choice's edit. The error says in words why the line has
// none.
func (s *Session) Choices(ref pagemodel.LineRef) ([]choices.Choice, error) {
	return choices.Of(s.setter, s.committed, ref, s.lexicon())
}

// lexicon is how the words of the book's language are said, nil where nobody
// here knows.
func (s *Session) lexicon() *prosody.Lexicon {
	language, _, _ := strings.Cut(strings.ToLower(s.Collection().About().Language), "-")
	if language == "" || language == "en" {
		return prosody.English()
	}
	return nil
}
