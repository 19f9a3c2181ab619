package prosody

import (
	"slices"
	"strings"
	"unicode"
)

// said are the vowels of a word as the poet says it, of which nothing but the
// stress is known.
const (
	saidStressed = "*1"
	saidWeak     = "*0"
)

// With is the lexicon with words said as the poet says them, over what it knows
// itself. A word is given its syllables with hyphens between, the stressed ones in
// capitals: "CAR-da-mom"; a syllable with no small letter in it is stressed, and
// where none is the word has no stress. Capitals make no difference to the word
// itself, nor do the stops around it. What the poet says is never guessed. It
// rhymes as the dictionary has its ending from the stressed syllable on, where
// that has the word; else its sound is unknown, and it rhymes with nothing.
//
// Of the nil Lexicon it is one that knows those words alone: of any other it says
// nothing, and it measures a line only if it knows all of its words. Where nothing
// is said it is the lexicon itself.
func (l *Lexicon) With(spoken map[string]string) *Lexicon {
	said := make(map[string][]string, len(spoken))
	for word, as := range spoken {
		word = LastWord(word)
		if syllables := syllablesSaid(as); word != "" && len(syllables) > 0 {
			said[sayKey(word)] = []string{strings.Join(l.wayOf(word, syllables), " ")}
		}
	}
	if len(said) == 0 {
		return l
	}
	with := &Lexicon{said: said}
	if l != nil {
		with.text, with.starts = l.text, l.starts
	}
	return with
}

// HasDictionary says that any word of the language can be told or guessed; where
// it is false, only those that the poet has said.
func (l *Lexicon) HasDictionary() bool { return l != nil && len(l.starts) > 0 }

// sayKey is what a word that is said is known by: its letters, and whether -ed is
// a syllable of it.
func sayKey(word string) string {
	if soundsEd(word) {
		return fold(word) + "`"
	}
	return fold(word)
}

// syllablesSaid are vowels for the syllables of a word as it is said.
func syllablesSaid(as string) []string {
	var all []string
	for syllable := range strings.SplitSeq(as, "-") {
		switch {
		case syllable == "":
		case strings.ContainsFunc(syllable, unicode.IsLower):
			all = append(all, saidWeak)
		default:
			all = append(all, saidStressed)
		}
	}
	return all
}

// wayOf is a way with those vowels; what it rhymes on has the phonemes of the
// dictionary, if that tells the word: of the way with the same stress, if there is
// one.
func (l *Lexicon) wayOf(word string, vowels []string) []string {
	rhyming := lastIndex(vowels, isStressed)
	if rhyming < 0 {
		rhyming = len(vowels) - 1
	}
	if !l.HasDictionary() {
		return vowels
	}
	told := l.withoutSaid().written(word)
	if len(told) == 0 || strings.Contains(told[0], guessed) {
		return vowels
	}
	stress := soundOf(strings.Join(vowels, " ")).Stress
	alike := max(0, slices.IndexFunc(told, func(way string) bool { return soundOf(way).Stress == stress }))
	ending := lastVowels(strings.Fields(told[alike]), len(vowels)-rhyming)
	for i, n := 0, rhyming; i < len(ending); i++ {
		if isVowel(ending[i]) {
			ending[i] = strings.TrimRight(ending[i], "012") + vowels[n][1:]
			n++
		}
	}
	if ending == nil {
		return vowels
	}
	return slices.Concat(vowels[:rhyming], ending)
}

func (l *Lexicon) withoutSaid() *Lexicon { return &Lexicon{text: l.text, starts: l.starts} }

// lastVowels are the phonemes of a way from its nth vowel from the end on, or
// nil where it has not so many.
func lastVowels(phonemes []string, n int) []string {
	for i, p := range slices.Backward(phonemes) {
		if isVowel(p) {
			if n--; n == 0 {
				return slices.Clone(phonemes[i:])
			}
		}
	}
	return nil
}
