package prosody

import (
	"slices"
	"strings"
	"unicode"
)

// Word returns the ways in which a word is said, the usual first, each once.
// Capitals and accents make no difference, but that a grave or acute in -èd
// gives the ending a syllable. A word that the lexicon can't tell has one way,
// which is guessed, or none without a dictionary; what holds neither a letter nor a digit has none. Of several
// words it says the last.
func (l *Lexicon) Word(word string) []Sound {
	word = LastWord(word)
	if l == nil || word == "" {
		return nil
	}
	var sounds []Sound
	for _, way := range l.written(word) {
		if s := soundOf(way); !slices.Contains(sounds, s) {
			sounds = append(sounds, s)
		}
	}
	return sounds
}

// longestWord is how many letters a word that the rules are tried on has at
// most; a longer one is counted by its letters, lest a file that is no text
// takes long.
const longestWord = 100

// written are the ways to say a word as it is written; none where there is no
// dictionary and the poet has not said it.
func (l *Lexicon) written(word string) []string {
	plain := fold(word)
	if ways := l.said[sayKey(word)]; ways != nil || !l.HasDictionary() {
		return ways
	}
	if len(plain) > longestWord {
		return byLetters(plain)
	}
	if soundsEd(word) {
		return withEd(l.ways(plain))
	}
	if len(l.look(plain)) == 0 && isInitials(word) {
		return l.spelt(plain)
	}
	return l.ways(plain)
}

// ways are the ways to say a folded word: as the poet does, or what the first rule
// that knows it says of it.
func (l *Lexicon) ways(word string) []string {
	if ways := l.said[word]; ways != nil {
		return ways
	}
	for _, rule := range []func(*Lexicon, string) []string{
		(*Lexicon).elided, (*Lexicon).told, (*Lexicon).bare, (*Lexicon).compound,
		(*Lexicon).number, (*Lexicon).ending, (*Lexicon).leaning, (*Lexicon).restored, (*Lexicon).respelt, (*Lexicon).negated,
	} {
		if ways := rule(l, word); len(ways) > 0 {
			return ways
		}
	}
	return l.guess(strings.ReplaceAll(word, "'", ""))
}

// bare says a word without the apostrophes around it. One behind -in stands
// for a g: "runnin'" ends as the n of "running" would.
func (l *Lexicon) bare(word string) []string {
	plain := strings.Trim(word, "'")
	if plain == word || plain == "" {
		return nil
	}
	if ways := l.look(plain); len(ways) > 0 || !strings.HasSuffix(word, "in'") {
		return l.ways(plain)
	}
	var ways []string
	for _, way := range l.ways(plain + "g") {
		if way, ok := strings.CutSuffix(way, " NG"); ok {
			ways = append(ways, way+" N")
		}
	}
	return ways
}

// compound says the parts of a word with hyphens one after another, each with
// its own stress.
func (l *Lexicon) compound(word string) []string {
	if !strings.Contains(word, "-") {
		return nil
	}
	var parts [][]string
	for part := range strings.SplitSeq(word, "-") {
		if part != "" {
			parts = append(parts, l.ways(part))
		}
	}
	return joined(parts...)
}

// isInitials says whether a word is two to five capitals without a vowel among
// them, such as BBC: said by their names, while hmm and pst are said as they
// stand.
func isInitials(word string) bool {
	return len(word) >= 2 && len(word) <= 5 && strings.IndexFunc(word, func(r rune) bool {
		return r > unicode.MaxASCII || !unicode.IsUpper(r) || strings.ContainsRune("AEIOUY", r)
	}) < 0
}

// spelt says the names of letters.
func (l *Lexicon) spelt(letters string) []string {
	var parts [][]string
	for i := range len(letters) {
		parts = append(parts, l.look(letters[i : i+1])[:1])
	}
	return joined(parts...)
}
