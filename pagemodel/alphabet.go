package pagemodel

import (
	"strings"
	"unicode"
)

// IndexedAs says as what a line of an index stands there.
type IndexedAs int

// A title stands without its article, a first line as it begins.
const (
	AsFirstLine IndexedAs = iota
	AsTitle
)

// Key is what a title or a first line stands under in an index: of two, the
// one with the lesser key comes first. It is the text without capitals,
// accents and punctuation, its words parted where the order is word by word and
// run together where it is letter by letter. Equal keys may come of texts that
// differ.
//
// An article at the beginning of a title does not count, that of a first line
// does (The Chicago Manual of Style, 17th edition, 16.144; from memory). The
// language, BCP 47, says which words are articles; "" is English.
func (a Alphabet) Key(text string, as IndexedAs, language string) string {
	words := foldedWords(text)
	if as == AsTitle {
		words = withoutArticle(words, language)
	}
	parting := " " // before all letters and figures
	if a == LetterByLetter {
		parting = ""
	}
	return strings.Join(words, parting)
}

// foldedWords are the words of a text in lower case without accents. A hyphen
// or a dash parts words as a space does, an apostrophe does not.
func foldedWords(text string) []string {
	return strings.FieldsFunc(folded(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
}

// apostrophes stand within words, or close or open quoted ones.
const apostrophes = "'’‘ʼ"

func folded(text string) string {
	var b strings.Builder
	for _, r := range text {
		r = unicode.ToLower(r)
		switch base, ok := baseLetters[r]; {
		case ok:
			b.WriteString(base)
		case unicode.Is(unicode.Mn, r), strings.ContainsRune(apostrophes, r):
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// articles are the words that do not count at the beginning of a title, by
// language. Elided ones (l’, d’) are part of the word after them here.
var articles = map[string]string{
	"en": "a an the",
	"fr": "le la les un une",
	"de": "der die das ein eine",
	"es": "el la los las un una",
	"it": "il lo la i gli le un uno una",
}

// withoutArticle is a title's words less the article before them. A title that
// is nothing else keeps it.
func withoutArticle(words []string, language string) []string {
	tag, _, _ := strings.Cut(strings.ToLower(language), "-")
	if tag == "" {
		tag = "en"
	}
	if len(words) < 2 {
		return words
	}
	for article := range strings.FieldsSeq(articles[tag]) {
		if words[0] == article {
			return words[1:]
		}
	}
	return words
}

// baseLetters are the letters that stand for accented ones: those of Unicode's
// Latin blocks whose canonical decomposition begins with the letter, and the
// few that have none and are put under it by custom.
var baseLetters = lettersByBase(map[string]string{
	"a": "àáâãäåāăąǎǟǡǻȁȃȧḁạảấầẩẫậắằẳẵặ", "ae": "æǣǽ", "b": "ḃḅḇ", "c": "çćĉċčḉ", "d": "ďḋḍḏḑḓđð",
	"e": "èéêëēĕėęěȅȇȩḕḗḙḛḝẹẻẽếềểễệ", "f": "ḟƒ", "g": "ĝğġģǧǵḡ", "h": "ĥȟḣḥḧḩḫẖħ",
	"i": "ìíîïĩīĭįǐȉȋḭḯỉịı", "j": "ĵǰ", "k": "ķǩḱḳḵ", "l": "ĺļľḷḹḻḽł", "m": "ḿṁṃ", "n": "ñńņňǹṅṇṉṋŋ",
	"o": "òóôõöōŏőơǒǫǭȍȏȫȭȯȱṍṏṑṓọỏốồổỗộớờởỡợøǿ", "oe": "œ", "p": "ṕṗ", "r": "ŕŗřȑȓṙṛṝṟ", "s": "śŝşšșṡṣṥṧṩſ",
	"ss": "ß", "t": "ţťțṫṭṯṱẗŧ", "th": "þ", "u": "ùúûüũūŭůűųưǔǖǘǚǜȕȗṳṵṷṹṻụủứừửữự", "v": "ṽṿ",
	"w": "ŵẁẃẅẇẉẘ", "x": "ẋẍ", "y": "ýÿŷȳẏẙỳỵỷỹ", "z": "źżžẑẓẕ",
})

func lettersByBase(groups map[string]string) map[rune]string {
	bases := map[rune]string{}
	for base, letters := range groups {
		for _, r := range letters {
			bases[r] = base
		}
	}
	return bases
}
