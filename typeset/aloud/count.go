package aloud

import (
	"maps"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// counter counts items as they are said.
type counter struct {
	c    *pagemodel.Collection
	lex  *prosody.Lexicon // of the language
	said *prosody.Lexicon // the same with what the poet says of words
	says string           // all of that, to know it by
}

func newCounter(c *pagemodel.Collection, lex *prosody.Lexicon) counter {
	var says strings.Builder
	for _, word := range slices.Sorted(maps.Keys(c.Spoken())) {
		says.WriteString(word + " " + c.Spoken()[word] + "\n")
	}
	return counter{c, lex, lex.With(c.Spoken()), says.String()}
}

// item counts an item.
func (c counter) item(item pagemodel.Item) Counts {
	p, _ := poemOf(c.c, item.Poem)
	counts := c.count(linesOf(p, item))
	counts.Titled = p != nil && p.Head().Title != "" || item.Poem == 0 && item.Title != ""
	if item.Talk > 0 {
		counts.TalkGiven = float64(item.Talk)
	} else {
		counts.TalkWords = wordsIn(item.Before)
	}
	return counts
}

// count adds up lines. The last ends a stanza, whatever stands below it.
func (c counter) count(lines []line) Counts {
	var n Counts
	all := make([]heard, len(lines))
	signs := false // a line of verse ends in a sign
	for i, l := range lines {
		next := ""
		if i+1 < len(lines) && !l.white {
			next = lines[i+1].text
		}
		all[i] = c.hear(l.text, next)
		n.Words, n.Syllables, n.Guessed = n.Words+all[i].words, n.Syllables+all[i].syllables, n.Guessed+all[i].guessed
		signs = signs || l.verse && all[i].signed
	}
	for i, l := range lines {
		if l.verse {
			n.Lines++
		}
		switch {
		case l.white || i == len(lines)-1:
			n.Stanzas++
		case l.steps || all[i].runsOn(c.lex.HasDictionary(), signs):
			n.RunOns++
		default:
			n.Ends++
		}
	}
	return n
}
