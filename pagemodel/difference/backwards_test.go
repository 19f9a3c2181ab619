package difference

import (
	"math/rand/v2"
	"testing"

	"headland/pagemodel"
)

// TestBackwards pins the kinds that take something back: the way from a book with
// it to the one without.
func TestBackwards(t *testing.T) {
	for _, tc := range []struct {
		name string
		edit func(l pagemodel.LineRef) pagemodel.Edit
		want wanted
	}{
		{"cancel indent", func(l pagemodel.LineRef) pagemodel.Edit { return pagemodel.Indent{LineRef: l, To: 1500} },
			wanted{CancelIndent, 1, "", 0, 0, "“salt on the sill” indented 1.5 em", "“salt on the sill” not indented"}},
		{"run on a break of this edition", func(l pagemodel.LineRef) pagemodel.Edit {
			return pagemodel.Break{LineRef: l, At: 5, In: pagemodel.InEdition}
		}, wanted{RunOn, 1, "", 4, 4, "“salt / on the sill”", "“salt on the sill”"}},
		{"roman", func(l pagemodel.LineRef) pagemodel.Edit {
			return pagemodel.Restyle{LineRef: l, Start: 0, End: 7, Style: pagemodel.Italic}
		}, wanted{Roman, 1, "", 0, 7, "“salt on” in italic", "“salt on” in roman"}},
		{"light", func(l pagemodel.LineRef) pagemodel.Edit {
			return pagemodel.Restyle{LineRef: l, Start: 0, End: 4, Style: pagemodel.Bold}
		}, wanted{Bold, 1, "", 0, 4, "“salt” in bold", "“salt” in the usual weight"}},
		{"turn", func(l pagemodel.LineRef) pagemodel.Edit { return pagemodel.Keep{LineRef: l, Turns: []int{8}} },
			wanted{TurnAt, 1, "", 8, 8, "turned between “salt on” and “the sill”", "“salt on the sill” turned wherever the measure ends"}},
		{"a gap closed", func(l pagemodel.LineRef) pagemodel.Edit {
			return pagemodel.SetGap{LineRef: l, At: 5, Width: pagemodel.OneEm}
		}, wanted{Space, 1, "", 5, 5, "“salt on” with 1 em of white", "“salt on” with a word space"}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			plain, refs := poemOf([]string{salt, moon})
			with, err := tc.edit(refs[0]).Apply(plain)
			if err != nil {
				t.Fatal(err)
			}
			changes := Between(with, plain)
			if len(changes) != 1 {
				t.Fatalf("got %d changes:\n%s", len(changes), listed(changes))
			}
			mustBe(t, &changes[0], tc.want, refs)
			mustGive(t, 0, with, plain, changes)
		})
	}
}

// TestOrder pins what is said of poems that move, come in and go.
func TestOrder(t *testing.T) {
	was := bakery()
	order := was.Order()
	moved, err := pagemodel.Move{Poem: order[6].Poem.ID(), Before: order[1].Poem.ID()}.Apply(was)
	if err != nil {
		t.Fatal(err)
	}
	changes := Between(was, moved)
	if len(changes) != 1 || changes[0].Kind != MovePoem || changes[0].Was != "the poem “Loaf 3” after the poem “Loaf 2”" ||
		changes[0].Is != "the poem “Loaf 3” after the section “Before light”" {
		t.Errorf("a poem moved gave\n%s", listed(changes))
	}
	short := was.Only(0, 6)
	out := Between(was, short)
	if last := out[len(out)-1]; last.Kind != Delete || last.Was != "the poem “Loaf 3”" || last.Is != "nothing" {
		t.Errorf("a poem taken out gave\n%s", listed(out))
	}
	in := Between(short, was)
	if last := in[len(in)-1]; last.Kind != Insert || last.Is != "the poem “Loaf 3” after the poem “Loaf 2”" {
		t.Errorf("a poem put in gave\n%s", listed(in))
	}
}

// TestSubsets holds that any of the changes can be made without the others, in any
// order.
func TestSubsets(t *testing.T) {
	first := bakery()
	for seed := range uint64(1000) {
		r := chooser{rand.New(rand.NewPCG(seed, 6))}
		is := r.history(first, 12)
		changes := Between(first, is)
		r.Shuffle(len(changes), func(i, j int) { changes[i], changes[j] = changes[j], changes[i] })
		text := TextOf(first)
		if _, err := Apply(text, changes[:r.IntN(len(changes)+1)]); err != nil {
			t.Fatalf("history %d: %v\n%s", seed, err, listed(changes))
		}
		if got, err := Apply(text, changes); err != nil || !got.Equal(TextOf(is)) {
			t.Fatalf("history %d, shuffled: %v", seed, err)
		}
	}
}

// TestKeysLast holds that a change has the same key whatever else has changed.
func TestKeysLast(t *testing.T) {
	was, refs := poemOf([]string{breathe, salt}, []string{moon})
	alone, err := retype(refs[1], "salt on the step").Apply(was)
	if err != nil {
		t.Fatal(err)
	}
	is := alone
	for _, e := range edits(pagemodel.Break{LineRef: refs[0], At: 18}, retype(refs[2], "a loaf"), pagemodel.Indent{LineRef: refs[1], To: 1000}) {
		if is, err = e.Apply(is); err != nil {
			t.Fatal(err)
		}
	}
	key := Between(was, alone)[0].Key
	count := 0
	for _, ch := range Between(was, is) {
		if ch.Key == key {
			count++
		}
	}
	if count != 1 {
		t.Errorf("the key %q is there %d times among\n%s", key, count, listed(Between(was, is)))
	}
}
