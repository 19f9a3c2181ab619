package echoes

import "strings"

// A stem stands for a word in all its forms: an index into a vocabulary.
type stem int32

// A vocabulary numbers the stems of the words that it has seen.
type vocabulary struct {
	language string
	english  *table          // nil for another language
	numbers  map[string]stem // of words in small letters
	stems    []string        // by number
	known    map[string]stem // numbers of stems
}

func newVocabulary(language string) *vocabulary {
	v := &vocabulary{language: language, numbers: map[string]stem{}, known: map[string]stem{}}
	if isEnglish(language) {
		v.english = english()
	}
	return v
}

// isEnglish says whether a tag of BCP 47 is one of English; "" is.
func isEnglish(language string) bool {
	first, _, _ := strings.Cut(language, "-")
	return first == "" || strings.EqualFold(first, "en")
}

// stemOf is the stem of a word as it is written.
func (v *vocabulary) stemOf(word string) stem {
	word = strings.ToLower(word)
	if n, ok := v.numbers[word]; ok {
		return n
	}
	folded := strings.ReplaceAll(word, "’", "'")
	if v.english != nil {
		folded = v.english.fold(folded)
	}
	n, ok := v.known[folded]
	if !ok {
		n = stem(len(v.stems))
		v.stems = append(v.stems, folded)
		v.known[folded] = n
	}
	v.numbers[strings.Clone(word)] = n
	return n
}

// stemsOf are the stems of the words in a text.
func (v *vocabulary) stemsOf(text string) []stem {
	var stems []stem
	for _, t := range v.tokens(nil, 0, text) {
		stems = append(stems, t.stem)
	}
	return stems
}
