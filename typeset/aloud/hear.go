package aloud

import (
	"strings"
	"sync"

	"headland/typeset/prosody"
)

// measure is what a text measures to the ear.
type measure struct{ words, syllables, guessed int }

// heard is a line as it is heard before the next.
type heard struct {
	measure
	end    prosody.End
	signed bool // a sign stands at its end
}

// runsOn says whether a line runs on into the next. signs says that lines of the
// text end in signs, so that one without is no accident.
func (h heard) runsOn(english, signs bool) bool {
	switch {
	case h.end == prosody.EndStopped:
		return false
	case h.end == prosody.AgainstSyntax && english: // words that lean on the next are known of English only
		return true
	}
	return signs && !h.signed
}

// memory keeps what was heard, as a running order is counted again at each edit.
var memory struct {
	sync.Mutex
	of map[sound]heard
}

// sound is all that heard depends on.
type sound struct {
	lex              *prosody.Lexicon
	says, text, next string
}

// remembered is how many lines are kept at most: more than a book of four hundred
// poems has. A fuller memory begins anew.
const remembered = 1 << 15

// hear is a line as it is heard, from memory where it is there.
func (c counter) hear(text, next string) heard {
	s := sound{c.lex, c.says, text, next}
	memory.Lock()
	h, ok := memory.of[s]
	memory.Unlock()
	if ok {
		return h
	}
	h = heard{measureOf(c.said, text), prosody.EndOf(text, next), signed(text)}
	memory.Lock()
	defer memory.Unlock()
	if memory.of == nil || len(memory.of) >= remembered {
		memory.of = map[sound]heard{}
	}
	memory.of[s] = h
	return h
}

// measureOf measures a text. Without a dictionary, what the poet does not say of
// its words is guessed by their letters.
func measureOf(lex *prosody.Lexicon, text string) measure {
	words := tokens(text)
	if lex.HasDictionary() {
		m := lex.Line(text)
		return measure{len(words), m.Syllables, len(m.Guessed)}
	}
	m := measure{words: len(words)}
	for _, word := range words {
		if ways := lex.Word(word); len(ways) > 0 {
			m.syllables += ways[0].Syllables
			continue
		}
		m.syllables += byLetters(word)
		m.guessed++
	}
	return m
}

// signed says whether anything stands behind the last word of a line.
func signed(text string) bool {
	return !strings.HasSuffix(strings.TrimSpace(text), prosody.LastWord(text))
}
