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

// lexicon is how the words of the book's language are said, and those of which
// the poet has said it; nothing else where nobody here knows the language.
func (s *Session) lexicon() *prosody.Lexicon {
	return languageLexicon(s.Collection().About().Language).With(s.Collection().Spoken())
}

// languageLexicon is nil for a language that is not English. It takes a language
// by its BCP 47 tag, "" for English.
func languageLexicon(tag string) *prosody.Lexicon {
	language, _, _ := strings.Cut(strings.ToLower(tag), "-")
	if language == "" || language == "en" {
		return prosody.English()
	}
	return nil
}
