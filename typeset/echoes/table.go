package echoes

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"

	"headland/assets"
)

// A table knows how often the words of a language stand in it. It never changes,
// and any number of goroutines may ask it.
type table struct {
	forms  map[string]form    // by the form
	shares map[string]float64 // of stems, among the words of content
}

// A form is how often a form of a word was found in running text and as a tagged
// sense, and its base word where it is irregular.
type form struct {
	running, tagged float64
	base            string
}

// found is how often a form was found, all in all.
func (t *table) found(word string) float64 { f := t.forms[word]; return f.running + f.tagged }

// unlisted is the share of a word that the table lacks: half of one occurrence in
// the larger of the two texts that were counted, which has about 0.8 million
// words of content.
const unlisted = 0.5 / 800_000

// english is the table of English. It is unpacked by the first call, some tens of
// milliseconds.
var english = sync.OnceValue(func() *table { return load(assets.Frequencies()) })

// load unpacks a table. The program carries the only one there is, so a broken
// one is a broken program.
func load(packed []byte) *table {
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		panic(fmt.Sprintf("the word frequencies in this program can't be unpacked: %v", err))
	}
	text, err := io.ReadAll(unpacked)
	if err != nil {
		panic(fmt.Sprintf("the word frequencies in this program can't be unpacked: %v", err))
	}
	t := &table{forms: make(map[string]form, 40_000), shares: make(map[string]float64, 30_000)}
	for line := range strings.Lines(string(text)) {
		word, rest, _ := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
		running, rest, _ := strings.Cut(rest, "\t")
		tagged, base, _ := strings.Cut(rest, "\t")
		t.forms[word] = form{number(running), number(tagged), base}
	}
	t.share()
	return t
}

func number(digits string) float64 {
	n, err := strconv.Atoi(digits)
	if err != nil {
		panic(fmt.Sprintf("the word frequencies in this program have %q for a count", digits))
	}
	return float64(n)
}

// share tells the share of every stem. Each text is partial, the one to the
// things that definitions name and the other to the base words of tales and news,
// so a stem has the larger of its shares in the two: rather too few echoes are
// put forward than too many.
func (t *table) share() {
	stems := make(map[string]form, 30_000)
	var all form
	for word, f := range t.forms {
		if grammar[word] {
			continue
		}
		folded := t.fold(word)
		sum := stems[folded]
		stems[folded] = form{running: sum.running + f.running, tagged: sum.tagged + f.tagged}
		all = form{running: all.running + f.running, tagged: all.tagged + f.tagged}
	}
	for folded, f := range stems {
		t.shares[folded] = max(f.running/all.running, f.tagged/all.tagged)
	}
}

// shareOf is how much of all words of content a stem is: the larger of its own
// share and that of its American spelling, which the table is written in.
func (t *table) shareOf(folded string) float64 {
	share := max(unlisted, t.shares[folded], t.shares[american[folded]])
	for _, s := range spellings {
		if strings.Contains(folded, s.british) {
			share = max(share, t.shares[strings.Replace(folded, s.british, s.american, 1)])
		}
	}
	return share
}

// spellings are the British spellings that go by rule, and american those that
// don't (from memory).
var spellings = []struct{ british, american string }{
	{"our", "or"}, {"oul", "ol"}, {"tre", "ter"}, {"ise", "ize"}, {"yse", "yze"}, {"ence", "ense"}, {"ogue", "og"}, {"ae", "e"},
}

var american = map[string]string{
	"axe": "ax", "cheque": "check", "cosy": "cozy", "draught": "draft", "gaol": "jail", "grey": "gray", "kerb": "curb",
	"plough": "plow", "pyjama": "pajama", "sceptic": "skeptic", "storey": "story", "tyre": "tire",
}
