package prosody

import "strings"

// elisions are the short forms of verse and speech whose sound their spelling
// doesn't tell, in ARPABET, where an apostrophe may be the first or last sign
// or a consonant is left out. A way without a vowel leans on the word that
// follows: "th' expense" has as many syllables as "expense". The forms are
// those of English verse from Shakespeare to Clare (from memory); the sounds of
// those that the CMU Pronouncing Dictionary has are its own.
var elisions = map[string]string{
	"e'en": "IY1 N", "e'er": "EH1 R", "ne'er": "N EH1 R", "o'er": "AO1 R", "ta'en": "T EY1 N",
	"whate'er": "W AH0 T EH1 R", "where'er": "W EH0 R EH1 R", "whene'er": "W EH0 N EH1 R",
	"howe'er": "HH AW0 EH1 R", "whoe'er": "HH UW0 EH1 R", "howsoe'er": "HH AW2 S OW0 EH1 R",
	"'tis": "T IH1 Z", "'twas": "T W AH1 Z", "'twere": "T W ER1", "'twill": "T W IH1 L",
	"'twould": "T W UH1 D", "'twixt": "T W IH1 K S T", "'gainst": "G EH1 N S T", "'gan": "G AE1 N",
	"'neath": "N IY1 TH", "'mid": "M IH1 D", "'midst": "M IH1 D S T", "'mong": "M AH1 NG",
	"'mongst": "M AH1 NG S T", "'pon": "P AA1 N", "'fore": "F AO1 R", "'scape": "S K EY1 P",
	"'scaped": "S K EY1 P T", "'round": "R AW1 N D", "'bout": "B AW1 T", "'cause": "K AH0 Z",
	"'til": "T IH1 L", "'em": "AH0 M", "'n": "AH0 N", "'n'": "AH0 N",
	"th'": "DH", "t'": "T", "d'": "D", "o'": "AH0", "i'": "IH0", "a'": "AH0", "wi'": "W IH0", "an'": "AH0 N",
	"tho'": "DH OW1", "altho'": "AO2 L DH OW1", "thro'": "TH R UW1", "ol'": "OW1 L",
	"&": "AH0 N D",
}

// elided says a word of the closed list.
func (l *Lexicon) elided(word string) []string {
	if way, ok := elisions[word]; ok {
		return []string{way}
	}
	return nil
}

// leans are what is written together with the word that it leans on, and its
// sound there: th'eternal, t'other, d'Arc, l'amour, o'erhang.
var leans = []struct{ letters, sound string }{
	{"o'er", "AO2 R"}, {"th'", "DH"}, {"t'", "T"}, {"d'", "D"}, {"l'", "L"}, {"o'", "OW0"},
}

// leaning says a word behind one that leans on it.
func (l *Lexicon) leaning(word string) []string {
	for _, lean := range leans {
		if rest, ok := strings.CutPrefix(word, lean.letters); ok && rest != "" {
			return joined([]string{lean.sound}, l.ways(rest))
		}
	}
	return nil
}

// restored says a word in which an apostrophe stands for a vowel that is not
// said: it is looked up with the vowel and loses the syllable, as heav'n and
// wand'ring do. Where the dictionary has the word shorter as well, that is it.
func (l *Lexicon) restored(word string) []string {
	before, after, ok := strings.Cut(word, "'")
	if !ok || before == "" || after == "" {
		return nil
	}
	for _, vowel := range []string{"e", "o", "i", "a", "u"} {
		full := l.look(before + vowel + after)
		if len(full) == 0 {
			continue
		}
		if short := fewest(full); len(short) < len(full) {
			return short
		}
		for i, way := range full {
			full[i] = withoutSyllable(way, vowelGroups(before))
		}
		return full
	}
	return nil
}

// withoutSyllable takes the first unstressed vowel at or after syllable k,
// counted from 0, out of a way; the r of ER stays. Where there is none, the way
// stays as it is.
func withoutSyllable(way string, k int) string {
	phonemes := strings.Fields(way)
	syllable := 0
	for i, p := range phonemes {
		if !isVowel(p) {
			continue
		}
		if syllable >= k && !isStressed(p) {
			if p == "ER0" {
				phonemes[i] = "R"
				return strings.Join(phonemes, " ")
			}
			return strings.Join(append(phonemes[:i], phonemes[i+1:]...), " ")
		}
		syllable++
	}
	return way
}
