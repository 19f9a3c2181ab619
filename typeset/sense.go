package typeset

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A title too long for one row is broken by sense (common practice, no source):
// on the fewest rows that hold it, as even as may be, best after a colon, a
// semicolon, a dash or the end of a sentence, then after a comma, then where a
// phrase begins with a preposition, a conjunction or an article. A row does not
// end on a word that opens a phrase, nor hold a short word alone, where there is
// any other way.

// What it costs to end a row, in the same coin as uneven rows: two rows of 67
// and 33 parts in a hundred, broken where a phrase begins, are as good as even
// ones broken where nothing does.
const (
	afterPause  = 0
	afterComma  = 20
	atPhrase    = 40
	atAnyWord   = 160
	afterOpener = 600
	shortAlone  = 2000
)

// shortWord is how many letters a word may have that is not to stand alone.
const shortWord = 5

// openers are the English words that open a phrase.
var openers = wordSet(`a an the my your his her its our their this these those
	about above across after against among around as at before behind below beneath beside between beyond by
	during for from in into of on onto over since through throughout till to toward towards under until upon
	with within without and but or nor if than when where while because though although unless whether`)

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(words) {
		set[w] = true
	}
	return set
}

// senseBreak is the best way to break what is left of a piece: how many rows it
// takes, what it costs, and the word that begins the second of them.
type senseBreak struct {
	rows, cost, next int
}

func (s senseBreak) better(than senseBreak) bool {
	return than.rows == 0 || s.rows < than.rows || s.rows == than.rows && s.cost <= than.cost
}

// senseBreaks are the byte offsets at which the rows of the turner's piece begin,
// but the first; none where a word of it is wider than the room.
func (t *turner) senseBreaks(room Length) []int {
	words := len(t.spaces.at) + 1
	even := t.whole.width / Length(max(1, t.fewestRows(room)))
	best := make([]senseBreak, words+1)
	for i := words - 1; i >= 0; i-- {
		for j := i + 1; j <= words && t.width(i, j) <= room; j++ {
			if j < words && best[j].rows == 0 {
				continue
			}
			way := senseBreak{best[j].rows + 1, best[j].cost + t.rowCost(i, j, even), j}
			if way.better(best[i]) {
				best[i] = way
			}
		}
	}
	var breaks []int
	for i := best[0].next; i > 0 && i < words; i = best[i].next {
		breaks = append(breaks, t.spaces.at[i-1])
	}
	return breaks
}

// fewestRows is how many rows the piece needs, each filled.
func (t *turner) fewestRows(room Length) int {
	words, rows := len(t.spaces.at)+1, 0
	for i := 0; i < words; rows++ {
		j := i + 1
		for j < words && t.width(i, j+1) <= room {
			j++
		}
		i = j
	}
	return rows
}

// width is the width of the words from i up to j, as measured along the whole.
func (t *turner) width(i, j int) Length {
	begin, end := Length(0), t.whole.width
	if i > 0 {
		begin = t.spaces.begins[i-1]
	}
	if j <= len(t.spaces.at) {
		end = t.spaces.ends[j-1]
	}
	return end - begin
}

// rowCost is what a row of the words from i up to j costs: for being longer or
// shorter than an even share, for a short word alone, and for where it ends.
func (t *turner) rowCost(i, j int, even Length) int {
	off := int(100 * (t.width(i, j) - even) / max(1, even))
	cost := off * off / 20
	text := t.line.Text()
	start, end := t.from, t.whole.end
	if i > 0 {
		start = t.spaces.at[i-1]
	}
	if j <= len(t.spaces.at) {
		end = t.spaces.at[j-1]
		cost += endCostOf(text[start:end], text[end:t.whole.end])
	}
	if j == i+1 && utf8.RuneCountInString(bareWord(text[start:end])) <= shortWord {
		cost += shortAlone
	}
	return cost
}

// endCostOf is what it costs to end a row between two texts.
func endCostOf(before, after string) int {
	before = strings.TrimRight(strings.TrimSpace(before), "”’»›\"')]")
	last, _ := utf8.DecodeLastRuneInString(before)
	switch {
	case strings.ContainsRune(":;.!?…—–", last):
		return afterPause
	case last == ',':
		return afterComma
	case openers[bareWord(before[lastSpace(before):])]:
		return afterOpener
	case openers[bareWord(firstWordOf(after))]:
		return atPhrase
	}
	return atAnyWord
}

func lastSpace(text string) int { return strings.LastIndexFunc(text, unicode.IsSpace) + 1 }

func firstWordOf(text string) string {
	text = strings.TrimSpace(text)
	if i := strings.IndexFunc(text, unicode.IsSpace); i >= 0 {
		return text[:i]
	}
	return text
}

// bareWord is a word in small letters without the signs about it.
func bareWord(word string) string {
	return strings.ToLower(strings.TrimFunc(word, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }))
}
