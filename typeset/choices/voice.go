package choices

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// nearStanzas is how many stanzas before and after the line are looked through
// for echoes.
const nearStanzas = 2

// voice tells how parts of a line sound, and what near them sounds alike. Each
// word, and each piece of text, is looked up once.
type voice struct {
	lex      *prosody.Lexicon
	measures map[string]prosody.Measure
	rhymes   map[string][]string // of a word, in all the ways that it is said
	near     []neighbour
	at       int // the place of the line among its neighbours
}

// neighbour is a line of the poem near the one that is chosen for.
type neighbour struct {
	id   pagemodel.LineID
	name string // "line 4", or "stanza 2, line 4"
	text string
	end  string // its last word
}

func newVoice(lex *prosody.Lexicon, p *pagemodel.Poem, here pagemodel.Place) voice {
	v := voice{lex: lex, measures: map[string]prosody.Measure{}, rhymes: map[string][]string{}}
	own := p.StanzaNumber(here)
	for at, l := range p.Lines() {
		stanza := p.StanzaNumber(at)
		if stanza < own-nearStanzas || stanza > own+nearStanzas || p.Stanza(at).Kind() == pagemodel.Prose {
			continue
		}
		if at == here {
			v.at = len(v.near)
		}
		v.near = append(v.near, neighbour{l.ID(), lineName(p, at, here), l.Text(), prosody.LastWord(l.Text())})
	}
	return v
}

// measure is what a text measures: the sum of its words, unless an apostrophe
// may be a quote, which only the whole text can tell.
func (v *voice) measure(text string) prosody.Measure {
	m, ok := v.measures[text]
	if ok {
		return m
	}
	words := pagemodel.Words(text)
	if len(words) < 2 || !v.lex.HasDictionary() || strings.ContainsAny(text, "'‘") || quotes(text) {
		m = v.lex.Line(text)
	} else {
		for _, w := range words {
			one := v.measure(text[w.Start:w.End])
			m.Syllables, m.Stress = m.Syllables+one.Syllables, m.Stress+one.Stress
			m.Guessed = append(m.Guessed, one.Guessed...)
		}
	}
	v.measures[text] = m
	return m
}

// quotes says that an apostrophe begins or ends a word of the text.
func quotes(text string) bool {
	for i := strings.Index(text, "’"); i >= 0 && i < len(text); {
		before, _ := utf8.DecodeLastRuneInString(text[:i])
		i += len("’")
		after, _ := utf8.DecodeRuneInString(text[i:])
		if !unicode.IsLetter(before) || !unicode.IsLetter(after) {
			return true
		}
		next := strings.Index(text[i:], "’")
		if next < 0 {
			return false
		}
		i += next
	}
	return false
}

// rhyme says whether two words rhyme. Most don't, and that is told without asking
// the lexicon of both again.
func (v *voice) rhyme(a, b string) bool {
	others := v.rhymesOf(b)
	for _, r := range v.rhymesOf(a) {
		if slices.Contains(others, r) {
			return v.lex.Rhymes(a, b)
		}
	}
	return false
}

func (v *voice) rhymesOf(word string) []string {
	all, ok := v.rhymes[word]
	if !ok {
		for _, s := range v.lex.Word(word) {
			if s.Rhyme != "" {
				all = append(all, s.Rhyme)
			}
		}
		v.rhymes[word] = all
	}
	return all
}

// hear fills in how the parts sound and end. after is the text that follows the
// last of them.
func (v *voice) hear(parts []Part, after string) {
	for i := range parts {
		p := &parts[i]
		m := v.measure(p.Text)
		p.Syllables, p.Stress, p.Guessed, p.Guesses = m.Syllables, m.Stress, len(m.Guessed) > 0, m.Guessed
		next := after
		if i+1 < len(parts) {
			next = parts[i+1].Text
		}
		if !v.lex.HasDictionary() {
			next = "" // the words that open a phrase are known of English only
		}
		p.LastWord, p.End = prosody.LastWord(p.Text), prosody.EndOf(p.Text, next)
		if !v.lex.HasDictionary() && p.End == prosody.AgainstSyntax {
			p.End = prosody.WithoutStop // so are those that lean on the next
		}
	}
}
