package ui

import (
	"fmt"
	"strings"
	"unicode"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// sayKey is a word as the book notes how it goes.
func sayKey(word string) string { return strings.ToLower(word) }

// soundWords say how a word goes: as the poet says it, or as the dictionary has
// it, or, where it does not know the word, as it is counted.
func (w *Window) soundWords(word, said string) string {
	sounds := w.session.Sounds(word)
	switch {
	case said != "":
		return "you say it " + said
	case len(sounds) == 0:
		return "no dictionary of the book’s language is here"
	}
	var ways []string
	for _, s := range sounds {
		if way := syllableWords(s); len(ways) == 0 || ways[len(ways)-1] != way {
			ways = append(ways, way)
		}
	}
	if sounds[0].Guessed {
		return "in no dictionary here · by its letters: " + ways[0]
	}
	return "the dictionary: " + strings.Join(ways, "; or ")
}

// typedWords say what the syllables typed come to, or why they can't be read.
func (a *sayAsk) typedWords() string {
	typed := strings.TrimSpace(a.field.Text)
	if _, err := (pagemodel.Say{Word: a.word, As: typed}).Apply(a.w.session.Collection()); err != nil {
		return sentence(err.Error())
	}
	if typed == "" {
		return "Nothing said: it goes as above"
	}
	var s prosody.Sound
	for syllable := range strings.SplitSeq(typed, "-") {
		stress := "0"
		if strings.IndexFunc(syllable, unicode.IsLower) < 0 {
			stress = "1"
		}
		s.Syllables, s.Stress = s.Syllables+1, s.Stress+stress
	}
	return sentence(syllableWords(s))
}

// ordinals are the first numbers of places.
var ordinals = [...]string{"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth"}

// syllableWords say how many syllables a sound has, and which are stressed.
func syllableWords(s prosody.Sound) string {
	count := fmt.Sprintf("%d syllables", s.Syllables)
	if s.Syllables == 1 {
		count = "1 syllable"
	}
	full, less := stressed(s.Stress, '1'), stressed(s.Stress, '2')
	switch {
	case s.Syllables == 1 && full != "":
		return count + ", stressed"
	case s.Syllables == 1:
		return count + ", unstressed"
	case full == "":
		return count + ", none stressed"
	case less == "":
		return count + ", the " + full + " stressed"
	}
	return count + ", the " + full + " stressed, the " + less + " less"
}

// stressed are the places of the syllables with that stress.
func stressed(stress string, how byte) string {
	var all []string
	for i := range len(stress) {
		if stress[i] != how {
			continue
		}
		place := fmt.Sprintf("%dth", i+1)
		if i < len(ordinals) {
			place = ordinals[i]
		}
		all = append(all, place)
	}
	return strings.Join(all, " and ")
}
