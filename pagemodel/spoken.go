package pagemodel

import (
	"fmt"
	"maps"
	"strings"
	"unicode"
)

// Spoken is how the poet says words, by the word in lower case: its syllables
// with hyphens between them, the stressed ones in capitals ("CAR-da-mom"). Not to
// be changed.
func (c *Collection) Spoken() map[string]string { return c.spoken }

// Say notes how the poet says a word; As "" takes the note back.
type Say struct {
	Word string `json:"word"`
	As   string `json:"as,omitempty"`
}

// Kind is "say".
func (Say) Kind() string { return "say" }

// Label names the word.
func (e Say) Label() string { return "say how “" + e.Word + "” goes" }

// Apply notes it.
func (e Say) Apply(c *Collection) (*Collection, error) {
	word := strings.ToLower(strings.TrimSpace(e.Word))
	if word == "" || strings.ContainsFunc(word, unicode.IsSpace) {
		return nil, fmt.Errorf("%q is not one word: say how one word goes at a time", e.Word)
	}
	as := strings.TrimSpace(e.As)
	if err := sayable(as); err != nil {
		return nil, err
	}
	if c.spoken[word] == as {
		return c, nil
	}
	return c.with(func(d *Collection) {
		d.spoken = maps.Clone(c.spoken)
		if d.spoken == nil {
			d.spoken = map[string]string{}
		}
		if d.spoken[word] = as; as == "" {
			delete(d.spoken, word)
		}
	}), nil
}

// sayable says why the syllables can't be read, or nil.
func sayable(as string) error {
	if as == "" {
		return nil
	}
	for _, syllable := range strings.Split(as, "-") {
		if syllable == "" || strings.ContainsFunc(syllable, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) && r != '’' && r != '\'' }) {
			return fmt.Errorf("%q can't be read as syllables: write them with a hyphen between, the stressed ones in capitals, as in CAR-da-mom", as)
		}
	}
	return nil
}
