package prosody

import (
	"slices"
	"strings"
)

// A Sound is one way to say a word.
type Sound struct {
	// Syllables counts them. It is 0 only for a word that leans on the next
	// without a vowel of its own, such as th'.
	Syllables int

	// Stress has a digit a syllable: 1 primary, 2 secondary, 0 none, as in the
	// CMU Pronouncing Dictionary.
	Stress string

	// Rhyme is the sound from the last stressed vowel on, primary or
	// secondary: phonemes in ARPABET with a space between and without stress,
	// the weak vowels IH and AH after it as one. It is "" where the sound is
	// unknown, and where no vowel has stress: see Lexicon.Rhymes.
	Rhyme string

	// Guessed says that no dictionary and no rule knows the word, and that the
	// poet has not said how it goes.
	Guessed bool
}

// Besides phonemes, a way can have these: a mark that it is guessed, and the
// vowels of which nothing but the stress is guessed. Those that the poet says are
// in said.go.
const (
	guessed         = "?"
	unknownStressed = "?1"
	unknownWeak     = "?0"
)

// soundOf is the sound of a way: phonemes with a space between.
func soundOf(way string) Sound {
	phonemes := strings.Fields(way)
	s := Sound{Guessed: strings.Contains(way, guessed), Rhyme: rhymeOf(phonemes)}
	for _, p := range phonemes {
		if isVowel(p) {
			s.Syllables++
			s.Stress += p[len(p)-1:]
		}
	}
	return s
}

// isVowel says whether a phoneme is a vowel, which alone have a digit.
func isVowel(phoneme string) bool { return strings.IndexByte("012", phoneme[len(phoneme)-1]) >= 0 }

// isStressed says whether a phoneme is a vowel with stress.
func isStressed(phoneme string) bool { return strings.IndexByte("12", phoneme[len(phoneme)-1]) >= 0 }

// rhymeOf is what Sound.Rhyme promises.
func rhymeOf(phonemes []string) string {
	from := lastIndex(phonemes, isStressed)
	if from < 0 {
		return ""
	}
	rhyme := slices.Clone(phonemes[from:])
	for i, p := range rhyme {
		switch {
		case strings.HasPrefix(p, guessed), strings.HasPrefix(p, "*"):
			return ""
		case p == "IH0":
			rhyme[i] = "AH"
		default:
			rhyme[i] = strings.TrimRight(p, "012")
		}
	}
	return strings.Join(rhyme, " ")
}

// lastIndex is the place of the last phoneme that is as asked, or -1.
func lastIndex(phonemes []string, is func(string) bool) int {
	for i, p := range slices.Backward(phonemes) {
		if is(p) {
			return i
		}
	}
	return -1
}

// syllablesOf counts the syllables of a way.
func syllablesOf(way string) int { return soundOf(way).Syllables }

// fewest are those ways that have the fewest syllables.
func fewest(ways []string) []string {
	least := syllablesOf(slices.MinFunc(ways, func(a, b string) int { return syllablesOf(a) - syllablesOf(b) }))
	return slices.DeleteFunc(slices.Clone(ways), func(way string) bool { return syllablesOf(way) > least })
}

// maxWays is how many ways to say a compound are kept.
const maxWays = 8

// joined are the ways to say several things one after another, the usual first;
// nil where there is nothing to say.
func joined(parts ...[]string) []string {
	var ways []string
	for i, part := range parts {
		if i == 0 {
			ways = part
			continue
		}
		var longer []string
		for _, a := range ways {
			for _, b := range part {
				longer = append(longer, strings.TrimSpace(a+" "+b))
			}
		}
		ways = longer[:min(len(longer), maxWays)]
	}
	return ways
}
