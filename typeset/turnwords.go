package typeset

import (
	"slices"
	"strings"
	"unicode"

	"github.com/go-text/typesetting/unicodedata"

	"headland/pagemodel"
)

// turnWords are the words at which a line turns: see [Setting.TurnWords].
func turnWords(f *fitted) string {
	var words []string
	for i := range f.rows {
		if row := &f.rows[i]; row.Turn == Turnover {
			words = append(words, wordAt(f.line.Text(), row.Start))
		}
	}
	return strings.Join(words, " ")
}

// wordAt is the word that begins at a byte offset, without the signs around it;
// with them where there is nothing else.
func wordAt(text string, at int) string {
	words := pagemodel.Words(text[at:])
	if len(words) == 0 {
		return ""
	}
	word := text[at+words[0].Start : at+words[0].End]
	bare := strings.TrimFunc(word, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r)
	})
	if bare == "" {
		return word
	}
	return bare
}

// sameWords says that two texts are canonically equivalent (UAX 15), capitals and
// small letters alike.
func sameWords(a, b string) bool {
	return a == b || strings.EqualFold(decomposed(a), decomposed(b))
}

// decomposed is a text in canonical decomposition, its combining marks in
// canonical order (UAX 15, D68 and D109 of the Unicode Standard).
func decomposed(text string) string {
	var all []rune
	for _, r := range text {
		all = appendDecomposed(all, r)
	}
	for from := 0; from < len(all); from++ {
		to := from
		for to < len(all) && unicodedata.LookupCombiningClass(all[to]) != 0 {
			to++
		}
		slices.SortStableFunc(all[from:to], func(a, b rune) int {
			return int(unicodedata.LookupCombiningClass(a)) - int(unicodedata.LookupCombiningClass(b))
		})
		from = max(from, to-1)
	}
	return string(all)
}

func appendDecomposed(all []rune, r rune) []rune {
	a, b, ok := unicodedata.Decompose(r)
	if !ok {
		return append(all, r)
	}
	if all = appendDecomposed(all, a); b != 0 {
		all = appendDecomposed(all, b)
	}
	return all
}
