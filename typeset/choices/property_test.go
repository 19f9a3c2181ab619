package choices

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/prosody"
)

var stock = []string{
	"The ovens were lit before the street was, and the street came to look",
	"Bread,", "and nobody said a word about the well-known smell of it going round",
	"flour on the stair—on the rail—on the cat—and on the letters from the bank that he had not opened",
	"a tray", "—then the door", "Nine loaves. Ten. “Who’s there?” said the till, and rang itself up to the top",
	"and by the time it had cooled we had the shutters down, the floor swept, the radio off, and the whole of Tuesday still to come",
	"so we went home", "the same way", "", "yes",
}

// randomBook draws a book of few poems in which all that a line and a poem can be
// comes up.
func randomBook(t *rapid.T) *pagemodel.Collection {
	d := pagemodel.DefaultDesign()
	d.Edge = pagemodel.Edge(rapid.IntRange(0, 3).Draw(t, "edge"))
	d.Turnovers = pagemodel.TurnoverStyle(rapid.IntRange(0, 1).Draw(t, "turnovers"))
	d.Tighten = rapid.SampledFrom([]int{0, 0, 10}).Draw(t, "tighten")
	d.HangQuotes = rapid.Bool().Draw(t, "hang")
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Random"}, d)
	for i := range rapid.IntRange(1, 6).Draw(t, "poems") {
		if rapid.IntRange(0, 5).Draw(t, "section") == 0 {
			b.Section(rapid.SampledFrom(stock).Draw(t, "section's title"), nil)
		}
		h := pagemodel.PoemHead{Title: fmt.Sprint("Poem ", i)}
		h.Start = pagemodel.Start(rapid.IntRange(0, 4).Draw(t, "start"))
		h.Lie = rapid.SampledFrom([]pagemodel.Lie{0, 0, 0, pagemodel.Across, pagemodel.Turned}).Draw(t, "lie")
		h.Edge = pagemodel.Edge(rapid.IntRange(0, 3).Draw(t, "its edge"))
		h.Size = rapid.SampledFrom([]pagemodel.Length{0, 0, pagemodel.Pt(9.3)}).Draw(t, "size")
		b.Poem(h, []pagemodel.Part{pagemodel.NewPart("", randomStanzas(t, b))})
	}
	return b.Collection()
}

func randomStanzas(t *rapid.T, b *pagemodel.Builder) []pagemodel.Stanza {
	var stanzas []pagemodel.Stanza
	for range rapid.IntRange(1, 5).Draw(t, "stanzas") {
		kind, lines := pagemodel.Verse, []pagemodel.Line{}
		if rapid.IntRange(0, 6).Draw(t, "prose") == 0 {
			kind = pagemodel.Prose
		}
		for range rapid.IntRange(1, 14).Draw(t, "lines") {
			l := b.Line(rapid.SampledFrom(stock).Draw(t, "line"))
			if kind == pagemodel.Verse {
				l = l.WithIndent(pagemodel.Ems(float64(rapid.SampledFrom([]int{0, 0, 2, 9}).Draw(t, "indent")))).
					WithRange(pagemodel.Range(rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "range"))).
					WithDropped(rapid.IntRange(0, 5).Draw(t, "dropped") == 0).
					WithAbove(rapid.SampledFrom([]int{0, 0, 0, 1, 7}).Draw(t, "white"))
			}
			lines = append(lines, l)
		}
		stanzas = append(stanzas, pagemodel.NewStanza(kind, lines))
	}
	return stanzas
}

// decided is the book with something decided already about a line.
func decided(t *rapid.T, c *pagemodel.Collection, ref pagemodel.LineRef) *pagemodel.Collection {
	p, at, _ := c.Line(ref)
	words := pagemodel.Words(p.Line(at).Text())
	if len(words) < 2 {
		return c
	}
	word := words[rapid.IntRange(1, len(words)-1).Draw(t, "word")].Start
	all := []pagemodel.Edit{
		pagemodel.Unsettle{LineRef: ref}, pagemodel.Keep{LineRef: ref, Turns: []int{word}, Reason: "it must"}, pagemodel.Keep{LineRef: ref, Turned: "and"},
		pagemodel.Break{LineRef: ref, At: word, In: pagemodel.InEdition}, pagemodel.SetGap{LineRef: ref, At: word, Width: pagemodel.Ems(2)},
		pagemodel.SetTab{LineRef: ref, At: word, Stop: pagemodel.Ems(12)},
	}
	for range rapid.IntRange(0, 2).Draw(t, "decisions") {
		next, err := rapid.SampledFrom(all).Draw(t, "decision").Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		c = next
	}
	return c
}

// TestChoicesAreWhatComesOfThem: every choice's edit can be done; the rows that
// it shows, what it says of places, and how many other poems move are what the
// book set afresh has.
func TestChoicesAreWhatComesOfThem(t *testing.T) {
	faces := typeset.Bundled()
	rapid.Check(t, func(t *rapid.T) {
		c := randomBook(t)
		var refs []pagemodel.LineRef
		for _, p := range c.Poems() {
			for at, l := range p.Lines() {
				if p.Stanza(at).Kind() == pagemodel.Verse {
					refs = append(refs, pagemodel.LineRef{Poem: p.ID(), Line: l.ID()})
				}
			}
		}
		if len(refs) == 0 {
			return
		}
		ref := rapid.SampledFrom(refs).Draw(t, "the line")
		c = decided(t, c, ref)
		setter := typeset.NewSetter(faces)
		before := setter.Set(nil, c)
		all, err := Of(setter, before, ref, prosody.English())
		if err != nil {
			t.Fatal(err)
		}
		for i := range all {
			asSet(t, faces, before, ref, &all[i])
			asHeard(t, before, ref, &all[i])
		}
	})
}

// asSet compares one choice with the book set afresh after it.
func asSet(t *rapid.T, faces *typeset.Faces, before *typeset.Setting, ref pagemodel.LineRef, c *Choice) {
	next, err := c.Edit.Apply(before.Collection())
	if err != nil || next == before.Collection() {
		t.Fatalf("%v, %s: %v, or nothing changes", c.Head, c.Title, err)
	}
	cold := lookAt(typeset.NewSetter(faces).Set(nil, next))
	if len(c.Rows) == 0 {
		return // a line of no words in the middle of a spread: it has no ink on either page
	}
	var lines []pagemodel.LineID
	for i, row := range c.Rows {
		if i == 0 || row.Line != c.Rows[i-1].Line {
			lines = append(lines, row.Line)
		}
	}
	if got := cold.rowsOf(ref.Poem, lines); !reflect.DeepEqual(got, c.Rows) {
		t.Fatalf("%v, %s shows\n%v\nand set afresh it is\n%v", c.Head, c.Title, c.Rows, got)
	}
	overruns := slices.ContainsFunc(c.Rows, func(r typeset.Row) bool { return r.Turn == typeset.Turnover || r.Width > r.Room })
	if c.Head != LetTurn && fits(c.Parts) == overruns {
		t.Fatalf("%v, %s: the parts overrun by what %+v say, and of the rows some do: %v", c.Head, c.Title, c.Parts, overruns)
	}
	moved := 0
	for _, p := range next.Poems() {
		was, _ := before.PageOfPoem(p.ID())
		if now, _ := cold.PageOfPoem(p.ID()); now != was && p.ID() != ref.Poem {
			moved++
		}
	}
	if moved != c.moved {
		t.Fatalf("%v, %s: %d other poems move, and it says %d: %s", c.Head, c.Title, moved, c.moved, c.Moves)
	}
	p, at, _ := before.Collection().Line(ref)
	for _, l := range p.Lines() {
		line := pagemodel.LineRef{Poem: ref.Poem, Line: l.ID()}
		was, _ := before.PageOfLine(line)
		if now, there := cold.PageOfLine(line); there && now != was && !strings.Contains(c.Moves, "page") {
			t.Fatalf("%v, %s: %q goes to another page, and it says %q", c.Head, c.Title, l.Text(), c.Moves)
		}
	}
	if words, _ := newFinder(nil, before, p, at, nil).moves(cold); words != c.Moves {
		t.Fatalf("%v, %s says %q, and set afresh it is %q", c.Head, c.Title, c.Moves, words)
	}
}

// asHeard compares how the parts of a break of this edition sound, which is shared
// with breaks in the poem, with what is heard afresh.
func asHeard(t *rapid.T, before *typeset.Setting, ref pagemodel.LineRef, c *Choice) {
	if c.Head != InEdition {
		return
	}
	p, at, _ := before.Collection().Line(ref)
	v := newVoice(prosody.English(), p, at)
	parts := make([]Part, len(c.Parts))
	for i := range parts {
		parts[i] = Part{Text: c.Parts[i].Text, Overrun: c.Parts[i].Overrun}
	}
	v.hear(parts, lookAt(before).below(ref))
	if echoes := v.echoes(parts, []pagemodel.LineID{ref.Line}); !reflect.DeepEqual(parts, c.Parts) || !slices.Equal(echoes, c.Echoes) {
		t.Fatalf("%s: it sounds as %+v, %q; afresh as %+v, %q", c.Title, c.Parts, c.Echoes, parts, echoes)
	}
}
