package marks

import (
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
	"headland/typeset/corrections"
)

// bakery is original verse, written for these tests: a poem to a string, stanzas
// parted by empty lines, the first line its title.
var bakery = []string{
	`The Proving Drawer

Before the street has any name but dark
the dough is up, and leaning on its cloth,
a sleeper in the warmest of the rooms.
The baker reads it with a floury thumb.

What rises does so only being left alone:
the salt, the slack, the long arithmetic of heat, and then the hour that nobody has asked to be an hour.
A cat goes over, counting every roof.

By five the crusts are ticking as they cool,
a clock that no one winds and no one hears
except the van, which idles, and is gone.`,
	`Delivery

One loaf for the house with the blue gate,
two for the school, and the heel for the gulls.
The driver knows the road by its lights
and the lights by how they go out.

Nothing is owed at the end of the round
but bread and morning, morning and bread.`,
}

// bookOf is a book of those poems.
func bookOf(d pagemodel.Design, lie pagemodel.Lie, poems ...string) *typeset.Setting {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "Night Bakery"}, d)
	for _, poem := range poems {
		stanzas := strings.Split(poem, "\n\n")
		var set []pagemodel.Stanza
		for _, s := range stanzas[1:] {
			var lines []pagemodel.Line
			for _, l := range strings.Split(s, "\n") {
				lines = append(lines, b.Line(l))
			}
			set = append(set, pagemodel.NewStanza(pagemodel.Verse, lines))
		}
		b.Poem(pagemodel.PoemHead{Title: stanzas[0], Lie: lie}, []pagemodel.Part{pagemodel.NewPart("", set)})
	}
	return typeset.NewSetter(typeset.Bundled()).Set(nil, b.Collection())
}

// A proof is a book and the corrections of it.
type proof struct {
	set    *typeset.Setting
	list   corrections.List
	setter *typeset.Setter
}

func newProof(lie pagemodel.Lie) *proof {
	return &proof{set: bookOf(pagemodel.DefaultDesign(), lie, bakery...), setter: typeset.NewSetter(typeset.Bundled())}
}

// at asks for something at the words of a line that are given: all of them.
func (p *proof) at(t testing.TB, kind difference.Kind, words, is string) *corrections.Correction {
	t.Helper()
	for _, e := range p.set.Collection().Order() {
		for _, l := range e.Poem.Lines() {
			if i := strings.Index(l.Text(), words); i >= 0 {
				return p.add(difference.Change{
					Kind: kind, Poem: e.Poem.ID(), Line: pagemodel.LineRef{Poem: e.Poem.ID(), Line: l.ID()},
					From: i, To: i + len(words), Was: "“" + words + "”", Is: is,
				})
			}
		}
	}
	t.Fatalf("no line says %q", words)
	return nil
}

// point asks for something between the words of a line before the stroke and those
// after it.
func (p *proof) point(t testing.TB, kind difference.Kind, words, is string) *corrections.Correction {
	t.Helper()
	before, after, _ := strings.Cut(words, "|")
	c := p.at(t, kind, before+after, is)
	c.Change.From += len(before)
	c.Change.To = c.Change.From
	return c
}

func (p *proof) add(c difference.Change) *corrections.Correction {
	p.list.All = append(p.list.All, corrections.Correction{Number: len(p.list.All) + 1, Change: c, Whose: pagemodel.Authors})
	return &p.list.All[len(p.list.All)-1]
}

// poem is the identity of the n-th poem.
func (p *proof) poem(n int) pagemodel.PoemID { return p.set.Collection().Order()[n].Poem.ID() }
