package difference

import (
	"strings"
)

// quotationMarks are the pairs that words are quoted with: the first of which
// neither mark, nor one that is easily taken for it, is among the words.
var quotationMarks = []struct{ open, shut, alike string }{
	{"“", "”", "“”„‟\"″"},
	{"«", "»", "«»"},
	{"‹", "›", "‹›"},
	{"[", "]", ""},
}

// quoted is words in quotation marks that can't be taken for theirs.
func quoted(words string) string {
	for _, q := range quotationMarks {
		if !strings.ContainsAny(words, q.alike) {
			return q.open + words + q.shut
		}
	}
	return words
}

// Unquote parts what a change says into the words that it quotes first and what
// is said after them. It is false where nothing is quoted; all is said then.
func Unquote(says string) (words, said string, ok bool) {
	first, pair := len(says), 0
	for i, q := range quotationMarks {
		if at := strings.Index(says, q.open); at >= 0 && at < first {
			first, pair = at, i
		}
	}
	if first == len(says) {
		return "", says, false
	}
	q := quotationMarks[pair]
	words, said, ok = strings.Cut(says[first+len(q.open):], q.shut)
	return words, strings.TrimSpace(said), ok
}

// voidWords name what holds no words. They stand outside quotation marks: nobody
// is to set them.
var voidWords = [...]string{hasWords: "", emptyLine: "an empty line", emptyStanza: "an empty stanza", emptyPart: "an empty part"}

// A quotation is the words of tokens as they are quoted, in more than one piece
// where there is a line without words between them.
type quotation struct {
	pieces []string
	words  string
	holds  bool // the piece at hand has words, not only signs of line ends
}

// tokens adds tokens, without the boundary before the first.
func (q *quotation) tokens(tokens []token) {
	for i := range tokens {
		if i > 0 {
			q.words += tokens[i].sign()
		}
		if void := tokens[i].void; void != hasWords {
			q.end()
			q.pieces = append(q.pieces, voidWords[void])
			continue
		}
		q.words += tokens[i].text
		q.holds = true
	}
}

// end ends a piece.
func (q *quotation) end() {
	if q.holds {
		q.pieces = append(q.pieces, quoted(strings.TrimSpace(q.words)))
	}
	q.words, q.holds = "", false
}

func (q *quotation) String() string {
	q.end()
	return strings.Join(q.pieces, ", ")
}

// quotedTokens quotes the words of tokens between what stands before and behind
// them.
func quotedTokens(before string, tokens []token, behind string) string {
	q := quotation{words: before}
	q.tokens(tokens)
	q.words += behind
	return q.String()
}
