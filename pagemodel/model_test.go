package pagemodel

import (
	"fmt"
	"hash/fnv"
	"testing"

	"pgregory.net/rapid"
)

// testBook is a book of two poems, built as an import builds one.
func testBook() *Collection {
	b := NewBuilder(About{Title: "A Book"}, DefaultDesign())
	b.Section("One", nil)
	for n := range 2 {
		s1 := NewStanza(Verse, []Line{b.Line("the first line of the poem"), b.Line("a second, — with a dash"), b.Line("third")})
		s2 := NewStanza(Verse, []Line{b.Line("crème and naïve words"), b.Line("last")})
		b.Poem(PoemHead{Title: fmt.Sprintf("Poem %d", n+1)}, []Part{NewPart("", []Stanza{s1, s2})})
	}
	return b.Collection()
}

// hashOf is a hash of all that a collection holds.
func hashOf(c *Collection) uint64 {
	h := fnv.New64a()
	for _, s := range c.Stored() {
		fmt.Fprintf(h, "%s %s %s\n", s.Kind, s.Key, s.Body)
	}
	return h.Sum64()
}

func drawLine(t *rapid.T, c *Collection) (LineRef, Line) {
	var refs []LineRef
	var lines []Line
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			refs, lines = append(refs, LineRef{p.ID(), l.ID()}), append(lines, l)
		}
	}
	i := rapid.IntRange(0, len(refs)-1).Draw(t, "line")
	return refs[i], lines[i]
}

// drawEdit is any edit, possible or not.
func drawEdit(t *rapid.T, c *Collection) Edit {
	ref, l := drawLine(t, c)
	other, _ := drawLine(t, c)
	at := rapid.IntRange(0, len(l.Text())).Draw(t, "at")
	in := rapid.SampledFrom([]In{InPoem, InEdition}).Draw(t, "in")
	em := Ems(float64(rapid.IntRange(0, 6).Draw(t, "ems")) / 2)
	design := c.Design()
	design.Size = Pt(float64(rapid.IntRange(9, 14).Draw(t, "size")))
	return rapid.SampledFrom([]Edit{
		Break{ref, at, in, "2026-03-01"}, Break{ref, at, InPoem, "2026-03-02"}, Join{LineRef: ref, In: in}, Join{LineRef: ref},
		Carry{ref, rapid.IntRange(-4, 4).Draw(t, "count")},
		Keep{LineRef: ref, Turns: []int{at}, Reason: "the lone word"}, Keep{LineRef: ref}, Unsettle{ref},
		Keep{LineRef: ref, Turned: "of", On: "2026-03-03"}, SetReason{ref, "sounds so", true}, SetAbove{ref, 2},
		Indent{ref, em}, SetGap{ref, at, em}, Drop{ref, true}, SetRange{ref, RangeCentre},
		Retype{ref, l.Text()[:runeFloor(l.Text(), at)] + "neu "}, Restyle{LineRef: ref, Start: 0, End: runeFloor(l.Text(), at), Style: Italic},
		StanzaBreak{ref, true}, StanzaBreak{ref, false}, SetDesign{design},
		KeepTogether{LineRef: ref, Through: other.Line}, KeepTogether{LineRef: ref, Through: other.Line, Off: true}, PageBreak{LineRef: ref}, PageBreak{ref, true},
		SetStart{ref.Poem, OnRecto, true}, SetForm{ref.Poem, Tercets}, SetRun{ref.Poem, 1}, SetMatter{UsualMatter()}, SetTab{ref, at, em},
		KeepDesign{"wide", design}, DropDesign{"wide"},
		Move{ref.Poem, 0}, SetHead{ref.Poem, PoemHead{Title: "Another"}}, SetAbout{About{Title: "Other"}},
		MarkSent{Name: "first proofs", On: "2026-03-04"}, MarkSent{}, SetReply{drawReply(t, c)}, Say{"bakery", "BA-ker-y"}, Say{Word: "bakery"},
		KeepVariant{ref.Poem, "short", "2026-03-05"}, UseVariant{ref.Poem, "short", "2026-03-06"}, NameVariant{ref.Poem, "", "long"},
		NameVariant{ref.Poem, "short", "shorter"}, DropVariant{ref.Poem, "short"}, BringBack{poemOf(t, ref), 1},
		SetReading{Reading{Name: "Thursday", Slot: 600, Items: []Item{{Poem: ref.Poem, Before: "This one is short."}}}}, SetReading{drawReading(c)},
		SetVoice{Voice{200, 0.4, 0.2, 1, 3, 140}}, SetVoice{}, KeepOrder{Name: "first", On: "2026-03-07"}, UseOrder{"first"}, DropOrder{"first"},
		Rearrange{Arrangement: shuffled(t, c)}, SetEcho{Echo{Name: "oven", Words: []string{"oven"}}}, SetEcho{Echo{Name: "oven"}}, Add{From: testBook(), Name: "more"},
	}).Draw(t, "edit")
}

// drawReply is a reply to some correction of the last round, or of none.
func drawReply(t *rapid.T, c *Collection) Reply {
	r := Reply{Key: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "key"), State: rapid.SampledFrom(ReplyStates).Draw(t, "state")}
	if rounds := c.Rounds(); len(rounds) > 0 {
		r.Round = rounds[len(rounds)-1].ID
	}
	return r
}

// drawReading is the first running order without its first item, or none that there is.
func drawReading(c *Collection) Reading {
	if len(c.Readings()) == 0 {
		return Reading{ID: 99, Name: "none"}
	}
	r := c.Readings()[0]
	r.Items = r.Items[min(1, len(r.Items)):]
	return r
}

// shuffled is the file's poems and sections in some order, one of them left out.
func shuffled(t *rapid.T, c *Collection) Arrangement {
	now := c.Arrangement()
	all := rapid.Permutation(append(append([]int64(nil), now.Order...), now.LeftOut...)).Draw(t, "order")
	if last := len(all) - 1; all[last] > 0 {
		return Arrangement{all[:last], all[last:]}
	}
	return Arrangement{Order: all}
}

// poemOf is the poem of a line as the test's book began with it, or an empty one.
func poemOf(t *rapid.T, ref LineRef) *Poem {
	if p, _, ok := testBook().Poem(ref.Poem); ok {
		return p
	}
	return NewPoem(ref.Poem, PoemHead{}, []Part{NewPart("", nil)})
}

func runeFloor(s string, at int) int {
	for at < len(s) && at > 0 && s[at]&0xC0 == 0x80 {
		at--
	}
	return at
}

// TestEditsUndoRedo holds three things after each of many random edits: no
// older collection has changed; taking the changes back gives the older one;
// making them again, from bytes, gives the newer one.
func TestEditsUndoRedo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := []*Collection{testBook()}
		hashes := []uint64{hashOf(history[0])}
		for range rapid.IntRange(1, 12).Draw(t, "edits") {
			old := history[len(history)-1]
			c, err := drawEdit(t, old).Apply(old)
			if err != nil || c == old {
				continue
			}
			changes := Between(old, c)
			if len(changes) == 0 {
				t.Fatalf("an edit that changed nothing gave another collection")
			}
			mustHash(t, old, Reversed(changes), c, "undo")
			mustHash(t, c, changes, old, "redo")
			history, hashes = append(history, c), append(hashes, hashOf(c))
		}
		for i, c := range history {
			if hashOf(c) != hashes[i] {
				t.Fatalf("collection %d of %d changed after it was made", i, len(history))
			}
		}
	})
}

// mustHash checks that from, changed, holds what want holds.
func mustHash(t *rapid.T, want *Collection, changes []Change, from *Collection, what string) {
	got, err := from.With(changes)
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	if hashOf(got) != hashOf(want) {
		t.Fatalf("%s gave\n%s\nwant\n%s", what, got.Stored(), want.Stored())
	}
}

// TestIdentities holds that no two lines share an identity, whatever is done.
func TestIdentities(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := testBook()
		for range rapid.IntRange(1, 20).Draw(t, "edits") {
			if next, err := drawEdit(t, c).Apply(c); err == nil {
				c = next
			}
			seen := map[LineID]bool{}
			for _, p := range c.Poems() {
				for _, l := range p.Lines() {
					if seen[l.ID()] || int64(l.ID()) >= c.NextID() {
						t.Fatalf("line %d is there twice, or was never given out", l.ID())
					}
					if err := l.check(); err != nil {
						t.Fatal(err)
					}
					seen[l.ID()] = true
				}
			}
		}
	})
}

// TestBreakThenJoin holds that a line broken anywhere and joined again has the
// bytes that it had, its spans and gaps where they were.
func TestBreakThenJoin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := NewBuilder(About{}, DefaultDesign())
		text := rapid.StringMatching(`[a-zé—]{1,4}([  ]{1,3}[a-zé,—]{1,5}){1,6}`).Draw(t, "text")
		l := b.Line(text).WithSpans([]Span{{0, runeFloor(text, len(text)/2), Italic}})
		words := Words(text)
		if len(words) > 1 {
			l = l.WithGap(words[1].Start, 2*OneEm)
		}
		b.Poem(PoemHead{}, []Part{NewPart("", []Stanza{NewStanza(Verse, []Line{l})})})
		c := b.Collection()
		p := c.Order()[0].Poem
		ref := LineRef{p.ID(), l.ID()}
		at := runeFloor(text, rapid.IntRange(0, len(text)).Draw(t, "at"))
		broken, err := Break{LineRef: ref, At: at}.Apply(c)
		if err != nil {
			return
		}
		joined, err := Join{LineRef: ref}.Apply(broken)
		if err != nil {
			t.Fatal(err)
		}
		got := joined.Order()[0].Poem.Line(Place{})
		got.absorbed = nil
		if !sameLine(got, l) || got.ID() != l.ID() {
			t.Fatalf("got %+v, want %+v", got, l)
		}
	})
}

func lineTexts(c *Collection) []string {
	var all []string
	for _, p := range c.Poems() {
		for _, l := range p.Lines() {
			all = append(all, l.Text())
		}
	}
	return all
}

func TestCarry(t *testing.T) {
	c := testBook()
	_, p := firstPoem(c)
	first := p.Line(Place{})
	ref := LineRef{p.ID(), first.ID()}
	for _, tc := range []struct {
		count     int
		want      string
		wantLines int
	}{
		{2, "the first line of|the poem a second, — with a dash", 10},
		{-1, "the first line of the poem a|second, — with a dash", 10},
		{-6, "the first line of the poem a second, — with a dash|third", 9},
	} {
		got, err := Carry{ref, tc.count}.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		lines := lineTexts(got)
		if s := lines[0] + "|" + lines[1]; s != tc.want || len(lines) != tc.wantLines {
			t.Errorf("carry %d: got %q in %d lines, want %q in %d", tc.count, s, len(lines), tc.want, tc.wantLines)
		}
	}
	if _, err := (Carry{ref, 6}).Apply(c); err == nil {
		t.Error("all words of a line were carried off it")
	}
}

func firstPoem(c *Collection) (int, *Poem) {
	for n, p := range c.Poems() {
		return n, p
	}
	return 0, nil
}

func TestPoemCalled(t *testing.T) {
	c := testBook()
	twice, err := Add{From: testBook()}.Apply(c)
	if err != nil {
		t.Fatal(err)
	}
	if p, err := twice.PoemCalled("#3"); err != nil || p.Name() != "Poem 1" {
		t.Errorf("#3 gave %v, %v", p, err)
	}
	if _, err := twice.PoemCalled("Poem 1"); err == nil {
		t.Error("a title that two poems have found one of them")
	}
	if p, err := c.PoemCalled("Poem 2"); err != nil || p.ID() == 0 {
		t.Errorf("a title that one poem has: %v", err)
	}
	if _, err := c.PoemCalled("#9"); err == nil {
		t.Error("poem 9 of 2 was found")
	}
}
