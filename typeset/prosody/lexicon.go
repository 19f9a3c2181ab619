package prosody

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"sort"
	"strings"
	"sync"

	"headland/assets"
)

// A Lexicon knows how the words of one language are said. It never changes, and
// any number of goroutines may ask it. The nil Lexicon stands for a language
// that there is none of: it counts nothing and knows no rhyme.
type Lexicon struct {
	text   string              // lines as assets.Pronunciations describes them
	starts []int32             // where in text each line begins
	said   map[string][]string // the ways in which the poet says words: see With
}

// English returns the lexicon of English, as it is said in North America. The
// first call unpacks it, some tens of milliseconds; it stays in memory, about
// 4 MB, until the program ends.
func English() *Lexicon { return english() }

var english = sync.OnceValue(func() *Lexicon { return load(assets.Pronunciations()) })

// load unpacks a dictionary. The program carries the only one there is, so a
// broken one is a broken program.
func load(packed []byte) *Lexicon {
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		panic(fmt.Sprintf("the pronunciations in this program can't be unpacked: %v", err))
	}
	var text strings.Builder
	if _, err := io.Copy(&text, unpacked); err != nil {
		panic(fmt.Sprintf("the pronunciations in this program can't be unpacked: %v", err))
	}
	l := &Lexicon{text: text.String()}
	for at := 0; at < len(l.text); {
		l.starts = append(l.starts, int32(at))
		at += strings.IndexByte(l.text[at:], '\n') + 1
	}
	return l
}

// look returns the ways in which the dictionary says a word in small letters,
// the usual first, or nil. A way is phonemes with a space between.
func (l *Lexicon) look(word string) []string {
	// A tab, which ends a line's word, sorts below all that words hold, so that as
	// many bytes as the word has tell the order.
	i := sort.Search(len(l.starts), func(i int) bool {
		at := int(l.starts[i])
		return l.text[at:min(at+len(word), len(l.text))] >= word
	})
	if i == len(l.starts) {
		return nil
	}
	if found, ways := l.line(i); found == word {
		return strings.Split(ways, "\t")
	}
	return nil
}

// line is the word of line i, and the ways in which it is said.
func (l *Lexicon) line(i int) (word, ways string) {
	line := l.text[l.starts[i]:]
	line = line[:strings.IndexByte(line, '\n')]
	word, ways, _ = strings.Cut(line, "\t")
	return word, ways
}
