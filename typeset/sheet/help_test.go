package sheet

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// book makes a book of poems by their texts: a title, then stanzas parted by empty
// lines.
func book(poems ...string) *pagemodel.Collection {
	d := pagemodel.DefaultDesign()
	d.Face = assets.EBGaramond
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery", Poet: "A. N. Other", Language: "en-GB"}, d)
	for _, text := range poems {
		title, verse, _ := strings.Cut(text, "\n")
		var stanzas []pagemodel.Stanza
		for _, stanza := range stanzasIn(verse) {
			var lines []pagemodel.Line
			for _, l := range stanza {
				lines = append(lines, b.Line(l.text))
			}
			stanzas = append(stanzas, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: title}, []pagemodel.Part{pagemodel.NewPart("", stanzas)})
	}
	return b.Collection()
}

// readingOf reads all the poems of a book in its order.
func readingOf(c *pagemodel.Collection) pagemodel.Reading {
	r := pagemodel.Reading{Name: "All", Slot: 600}
	for _, p := range c.Poems() {
		r.Items = append(r.Items, pagemodel.Item{Poem: p.ID()})
	}
	return r
}

// setter sets everything here, one test after another.
var setter = typeset.NewSetter(typeset.Bundled())

func set(c *pagemodel.Collection) *typeset.Setting { return setter.Set(nil, c) }

func copyOf(t *testing.T, c *pagemodel.Collection, r pagemodel.Reading, f Format) *Copy {
	t.Helper()
	return New(set(c), planOf(c, r), f, setter)
}

func paper(t *testing.T, name string) Format {
	t.Helper()
	f, err := OnPaper(name)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

var bakeryWords = strings.Fields("flour the oven and street, a lamp; loaf. salt of water under night — dough? rises slow window, crust bread baker! morning: stone")

// randomBook is a book of poems of random stanzas and lines.
func randomBook(rnd *rand.Rand) *pagemodel.Collection {
	var poems []string
	for range 3 + rnd.IntN(3) {
		text := "A Poem\n"
		length := 1 + rnd.IntN(12)
		for range 1 + rnd.IntN(8) {
			lines := 1 + rnd.IntN(length)
			if rnd.IntN(12) == 0 {
				lines += 40
			}
			for range lines {
				words := make([]string, 1+rnd.IntN(9))
				if rnd.IntN(25) == 0 {
					words = make([]string, 25)
				}
				for i := range words {
					words[i] = bakeryWords[rnd.IntN(len(bakeryWords))]
				}
				text += strings.Join(words, " ") + "\n"
			}
			text += "\n"
		}
		poems = append(poems, text)
	}
	return book(poems...)
}

// words are a leaf's words of a kind, one row each.
func (l *Leaf) words(kind Kind) []string {
	var found []string
	for i := range l.Words {
		if l.Words[i].Kind == kind {
			found = append(found, textOf(&l.Words[i].Row))
		}
	}
	return found
}

// numbered are n short lines.
func numbered(n int) string {
	text := ""
	for i := range n {
		text += fmt.Sprintf("line number %d\n", i+1)
	}
	return text
}
