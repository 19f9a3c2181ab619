package prosody

import "strings"

// An apart is an ending behind an apostrophe, which says itself by what the
// word before it ends in.
type apart struct {
	letters string
	says    func(stem string) []string
}

// ending says a word with an ending behind an apostrophe.
func (l *Lexicon) ending(word string) []string {
	for _, e := range []apart{
		{"'s", l.withS}, {"'st", l.withSt}, {"'d", l.withD}, {"n't", l.withNot},
		{"'ll", l.weakly("L")}, {"'ve", l.weakly("V")}, {"'re", l.weakly("R")}, {"'m", l.weakly("M")},
	} {
		if stem, ok := strings.CutSuffix(word, e.letters); ok && strings.Trim(stem, "'") != "" {
			return e.says(stem)
		}
	}
	return nil
}

// Consonants by what an ending does behind them (Quirk et al., A Comprehensive
// Grammar of the English Language, 1985, on the genitive; from memory).
const (
	sibilants = " S Z SH ZH CH JH "
	voiceless = " P T K F TH "
)

// endsIn says whether the last phoneme of a way is one of a set.
func endsIn(way, set string) bool {
	return strings.Contains(set, " "+way[strings.LastIndexByte(way, ' ')+1:]+" ")
}

// withS says a possessive: a syllable of its own behind a sibilant.
func (l *Lexicon) withS(stem string) []string {
	return each(l.ways(stem), func(way string) string {
		switch {
		case endsIn(way, sibilants):
			return way + " IH0 Z"
		case endsIn(way, voiceless):
			return way + " S"
		}
		return way + " Z"
	})
}

// withSt says the second person of a verb, in one syllable less than -est, as
// in ow'st and think'st.
func (l *Lexicon) withSt(stem string) []string {
	for _, verb := range []string{stem, stem + "e"} {
		if ways := l.look(verb); len(ways) > 0 {
			return each(ways, func(way string) string { return way + " S T" })
		}
	}
	return each(l.ways(stem), func(way string) string { return way + " S T" })
}

// withD says a past that verse writes so where -ed is no syllable, as in lov'd
// and fix'd, and else "would" or "had", as in it'd.
func (l *Lexicon) withD(stem string) []string {
	if ways := l.look(stem + "ed"); len(ways) > 0 {
		return fewest(ways)
	}
	if ways := l.look(stem); len(ways) > 0 {
		return each(ways, func(way string) string {
			switch {
			case endsIn(way, " T D "):
				return way + " AH0 D"
			case endsIn(way, sibilants) || endsIn(way, voiceless):
				return way + " T"
			}
			return way + " D"
		})
	}
	return fewest(l.ways(stem + "ed"))
}

// withNot says "not" where it leans on a verb: a syllable of its own.
func (l *Lexicon) withNot(stem string) []string {
	return each(l.ways(stem), func(way string) string { return way + " AH0 N T" })
}

// weakly says will, have, are or am where they lean on a word: a syllable
// of its own behind a consonant alone.
func (l *Lexicon) weakly(consonant string) func(string) []string {
	return func(stem string) []string {
		return each(l.ways(stem), func(way string) string {
			if last := way[strings.LastIndexByte(way, ' ')+1:]; isVowel(last) {
				return way + " " + consonant
			}
			return way + " AH0 " + consonant
		})
	}
}

// each is a list with every way changed.
func each(ways []string, change func(string) string) []string {
	changed := make([]string, len(ways))
	for i, way := range ways {
		changed[i] = change(way)
	}
	return changed
}
