package aloud

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// drawPoem is a poem of some parts in a book of its own, the identities of its
// lines, and how many of these and of its headings have words.
func drawPoem(t *rapid.T) (c *pagemodel.Collection, ids []pagemodel.LineID, said int) {
	texts := rapid.SampledFrom([]string{"the oven is lit,", "bread", "and the", ". . .", "no more. Then", "", "salt; water—flour"})
	kinds := rapid.SampledFrom([]pagemodel.StanzaKind{pagemodel.Verse, pagemodel.Prose})
	headings := rapid.SampledFrom([]string{"", "*", "Two"})
	says := func(text string) string {
		if strings.Trim(text, ".* ") != "" {
			said++
		}
		return text
	}
	s := newShelf()
	stanza := rapid.Custom(func(t *rapid.T) pagemodel.Stanza {
		var lines []pagemodel.Line
		for _, text := range rapid.SliceOfN(texts, 1, 4).Draw(t, "lines") {
			l := s.Line(says(text)).WithDropped(rapid.Bool().Draw(t, "dropped")).WithAbove(rapid.IntRange(0, 1).Draw(t, "above"))
			lines, ids = append(lines, l), append(ids, l.ID())
		}
		return pagemodel.NewStanza(kinds.Draw(t, "kind"), lines)
	})
	var parts []pagemodel.Part
	for range rapid.IntRange(1, 3).Draw(t, "parts") {
		heading := says(headings.Draw(t, "heading"))
		var stanzas []pagemodel.Stanza
		for range rapid.IntRange(1, 3).Draw(t, "stanzas") {
			stanzas = append(stanzas, stanza.Draw(t, "stanza"))
		}
		parts = append(parts, pagemodel.NewPart(heading, stanzas))
	}
	s.Poem(pagemodel.PoemHead{}, parts)
	return s.Collection(), ids, said
}

// TestExtracts holds of any poem that every line that is said has one end, and that
// two extracts that make up the poem have its words, its syllables and its lines.
func TestExtracts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, ids, said := drawPoem(t)
		item := first(c)
		whole := CountsOf(c, item, prosody.English())
		if ends := whole.Ends + whole.RunOns + whole.Stanzas; ends != said {
			t.Fatalf("%d lines have %d ends: %+v", said, ends, whole)
		}
		if len(ids) < 2 {
			return
		}
		cut := rapid.IntRange(1, len(ids)-1).Draw(t, "cut")
		head, tail := item, item
		head.To, tail.From = ids[cut-1], ids[cut]
		a, b := CountsOf(c, head, prosody.English()), CountsOf(c, tail, prosody.English())
		if a.Words+b.Words != whole.Words || a.Syllables+b.Syllables != whole.Syllables || a.Lines+b.Lines != whole.Lines {
			t.Fatalf("%+v and %+v make %+v", a, b, whole)
		}
	})
}
