package aloud

import (
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset/prosody"
)

// Sonnets in the public domain, from memory.
const (
	sonnet18 = `Shall I compare thee to a summer’s day?
Thou art more lovely and more temperate:
Rough winds do shake the darling buds of May,
And summer’s lease hath all too short a date:
Sometime too hot the eye of heaven shines,
And often is his gold complexion dimm’d;
And every fair from fair sometime declines,
By chance or nature’s changing course untrimm’d;
But thy eternal summer shall not fade
Nor lose possession of that fair thou ow’st;
Nor shall Death brag thou wander’st in his shade,
When in eternal lines to time thou grow’st:
So long as men can breathe or eyes can see,
So long lives this, and this gives life to thee.`

	ozymandias = `I met a traveller from an antique land,
Who said—“Two vast and trunkless legs of stone
Stand in the desert. . . . Near them, on the sand,
Half sunk a shattered visage lies, whose frown,
And wrinkled lip, and sneer of cold command,
Tell that its sculptor well those passions read
Which yet survive, stamped on these lifeless things,
The hand that mocked them, and the heart that fed;
And on the pedestal, these words appear:
My name is Ozymandias, King of Kings;
Look on my Works, ye Mighty, and despair!
Nothing beside remains. Round the decay
Of that colossal Wreck, boundless and bare
The lone and level sands stretch far away.”`

	milton19 = `When I consider how my light is spent,
Ere half my days, in this dark world and wide,
And that one talent which is death to hide
Lodged with me useless, though my soul more bent
To serve therewith my Maker, and present
My true account, lest he returning chide;
“Doth God exact day-labour, light denied?”
I fondly ask. But Patience, to prevent
That murmur, soon replies: “God doth not need
Either man’s work or his own gifts; who best
Bear his mild yoke, they serve him best. His state
Is kingly. Thousands at his bidding speed
And post o’er land and ocean without rest:
They also serve who only stand and wait.”`
)

// shelf is a collection that a test fills, and the lines of it by their texts.
type shelf struct {
	*pagemodel.Builder
	ids map[string]pagemodel.LineID
}

func newShelf() *shelf {
	return &shelf{pagemodel.NewBuilder(pagemodel.About{Title: "Night Bread"}, pagemodel.DefaultDesign()), map[string]pagemodel.LineID{}}
}

// verse is stanzas of verse, a line each, parted by empty ones.
func (s *shelf) verse(text string) []pagemodel.Stanza {
	var all []pagemodel.Stanza
	for stanza := range strings.SplitSeq(text, "\n\n") {
		var lines []pagemodel.Line
		for line := range strings.SplitSeq(stanza, "\n") {
			l := s.Line(line)
			s.ids[line] = l.ID()
			lines = append(lines, l)
		}
		all = append(all, pagemodel.NewStanza(pagemodel.Verse, lines))
	}
	return all
}

// poem puts a poem of one part into the book.
func (s *shelf) poem(title, text string) {
	s.Poem(pagemodel.PoemHead{Title: title}, []pagemodel.Part{pagemodel.NewPart("", s.verse(text))})
}

// first is the item of the book's first poem.
func first(c *pagemodel.Collection) pagemodel.Item {
	return pagemodel.Item{Poem: Book(c).Items[0].Poem}
}

// mustDo applies edits.
func mustDo(t testing.TB, c *pagemodel.Collection, edits ...pagemodel.Edit) *pagemodel.Collection {
	t.Helper()
	for _, e := range edits {
		next, err := e.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		c = next
	}
	return c
}

// Of is the time of one item by itself, and CountsOf what is counted of it.
func Of(c *pagemodel.Collection, item pagemodel.Item, lex *prosody.Lexicon, v pagemodel.Voice) Estimate {
	return CountsOf(c, item, lex).In(v)
}

func CountsOf(c *pagemodel.Collection, item pagemodel.Item, lex *prosody.Lexicon) Counts {
	return newCounter(c, lex).item(item)
}
