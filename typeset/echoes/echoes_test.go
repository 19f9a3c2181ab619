package echoes

import (
	"cmp"
	"reflect"
	"slices"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
)

// shift is a book with echoes planted in it: ovens in three poems and baking in
// two; and words that are none: one three times in one poem, and one twice.
const shift = `## Four

The oven has not slept.
Its door ticks, the paddle leans, and paddle
and paddle again: I’m counting.

## Five

Nothing of that here. A kestrel
goes by with its one light.

## Six

Both ovens roar; the oven-light
falls on a half-baked wall.
Nobody here would say what for.

## Seven

They bake, they baked; the baking
is the Oven’s, not the baker’s,
and no kestrel’s.
`

// TestPlanted finds what was planted, with its places, and nothing else.
func TestPlanted(t *testing.T) {
	set := read(t, shift)
	found := find(t, set)
	if got, want := names(found), []string{"oven", "baked"}; !slices.Equal(got, want) {
		t.Fatalf("the echoes are %q, want %q", got, want)
	}
	tests := []struct {
		name  string
		want  []string
		poems int
		near  int
	}{
		{"oven", []string{
			"1: The [oven] has not slept.", "3: Both [ovens] roar; the oven-light", "3: Both ovens roar; the [oven]-light",
			"4: is the [Oven]’s, not the baker’s,",
		}, 3, 1},
		{"baked", []string{
			"3: falls on a half-[baked] wall.", "4: They [bake], they baked; the baking", "4: They bake, they [baked]; the baking",
			"4: They bake, they baked; the [baking]",
		}, 2, 1},
	}
	for _, test := range tests {
		e := called(t, found, test.name)
		if got := places(t, set, e); !slices.Equal(got, test.want) {
			t.Errorf("%s is at %q, want %q", test.name, got, test.want)
		}
		if e.Marked || e.Poems != test.poems || e.Nearest.Poems != test.near {
			t.Errorf("%s is %+v", test.name, e)
		}
	}
}

// TestMarked sees that what the poet marked comes first, in the poet's order, with
// all that was marked and each place once, and is not put forward again.
func TestMarked(t *testing.T) {
	set := read(t, shift)
	six := lineOf(t, set, 3, 1, 1)
	set = edited(t, set,
		pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "want", Words: []string{"not"}, Poems: []pagemodel.PoemID{lineOf(t, set, 2, 1, 1).Poem}}},
		pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "heat", Words: []string{"Ovens", "oven", "oven light"}, Lines: []pagemodel.LineRef{six, {Poem: six.Poem, Line: 999_999}}}},
		pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "sea", Words: []string{"sea", "…"}}},
		pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "baking", Words: []string{"bakes"}}},
		pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "glow", Words: []string{"oven-light"}}},
		pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "light", Words: []string{"light", "oven", "oven light", "slept Its"}}},
	)
	found := find(t, set)
	if got, want := names(found), []string{"want", "heat", "sea", "baking", "glow", "light"}; !slices.Equal(got, want) {
		t.Fatalf("the echoes are %q, want %q", got, want)
	}
	for name, want := range map[string][]string{
		"want": {"1: The oven has [not] slept.", "2: []", "4: is the Oven’s, [not] the baker’s,"},
		"heat": {"1: The [oven] has not slept.", "3: [Both ovens roar; the oven-light]", "4: is the [Oven]’s, not the baker’s,"},
		"sea":  nil,
		"light": {
			"1: The [oven] has not slept.", "2: goes by with its one [light].", "3: Both [ovens] roar; the oven-light",
			"3: Both ovens roar; the [oven-light]", "4: is the [Oven]’s, not the baker’s,",
		},
		"glow": {"3: Both ovens roar; the [oven-light]"},
	} {
		e := called(t, found, name)
		if got := places(t, set, e); !slices.Equal(got, want) || !e.Marked {
			t.Errorf("%s is at %q, want %q, marked", name, got, want)
		}
	}
	if e := called(t, found, "baking"); len(e.Found) != 4 || e.Surprise < leastSurprise || e.Expected <= 0 {
		t.Errorf("baking is %+v; want four places, and as surprising as unmarked", e)
	}
	for _, name := range []string{"want", "heat", "glow", "light"} {
		if e := called(t, found, name); e.Expected != 0 || e.Surprise != 0 {
			t.Errorf("%s is expected %g times; want nothing told of what is more than words of content", name, e.Expected)
		}
	}
}

// wyatt is Sir Thomas Wyatt’s poem, and after it two lines of ours. It is typed
// from memory.
const wyatt = `## Forget not yet

Forget not yet the tried intent
Of such a truth as I have meant;
My great travail so gladly spent,
Forget not yet!

Forget not yet when first began
The weary life ye know, since whan
The suit, the service, none tell can;
Forget not yet!

Forget not yet the great assays,
The cruel wrong, the scornful ways,
The painful patience in delays,
Forget not yet!

Forget not! oh! forget not this,
How long ago hath been, and is
The mind that never meant amiss—
Forget not yet!

Forget not then thine own approved,
The which so long hath thee so loved,
Whose steadfast faith yet never moved—
Forget not this!
`

// TestRefrain counts a refrain where it is marked, and puts it forward only once
// it leaves its poem.
func TestRefrain(t *testing.T) {
	set := edited(t, read(t, wyatt), pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "refrain", Words: []string{"forget not yet"}}})
	found := find(t, set)
	if got := names(found); !slices.Equal(got, []string{"refrain"}) {
		t.Fatalf("the echoes are %q, want the refrain alone", got)
	}
	if e := found[0]; len(e.Found) != 7 || e.Poems != 1 || e.Nearest != (Gap{}) {
		t.Errorf("the refrain is found %d times in %d poems, %+v apart; want 7 times in one", len(e.Found), e.Poems, e.Nearest)
	}
	set = read(t, wyatt+"\n## Till\n\nI forgot the till,\nand he forgets the change.\n")
	if e := called(t, find(t, set), "forget"); len(e.Found) != 13 || e.Poems != 2 {
		t.Errorf("forget is found %d times in %d poems, want 13 in 2", len(e.Found), e.Poems)
	}
}

// TestDemo counts echoes of the demo collection. The counts are those of grep in
// its lines, titles and epigraphs left out.
func TestDemo(t *testing.T) {
	found := find(t, demo(t))
	for name, want := range map[string]int{
		"Denise": 15, "Tadek": 8, "barm": 8, "Errol": 6, "tin": 12, "bread": 12, "oven": 6, "teacake": 5, "Yusuf": 4, "kettle": 5,
	} {
		e := called(t, found, name)
		if len(e.Found) != want || e.Marked || e.Surprise < leastSurprise || float64(want) <= e.Expected {
			t.Errorf("%s is found %d times, want %d: %+v", name, len(e.Found), want, e)
		}
	}
	if got, want := names(found)[:3], []string{"Denise", "Tadek", "barm"}; !slices.Equal(got, want) {
		t.Errorf("the most surprising are %q, want %q", got, want)
	}
	if !slices.IsSortedFunc(found, func(a, b Echo) int { return cmp.Compare(b.Surprise, a.Surprise) }) {
		t.Error("the echoes are not in the order of their surprise")
	}
	for _, e := range found {
		if grammar[e.Name] {
			t.Errorf("%s is a word of grammar", e.Name)
		}
	}
}

// TestFinder sees that what a finder kept of earlier states of a book changes
// nothing.
func TestFinder(t *testing.T) {
	first := demo(t)
	retyped := edited(t, first, pagemodel.Retype{LineRef: lineOf(t, first, 2, 1, 1), Text: "Bring bread, bread, bread and an oven."})
	order := first.Collection().Arrangement()
	slices.Reverse(order.Order[1:4])
	german := first.Collection().About()
	german.Language = "de"
	var f Finder
	for name, set := range map[string]pagemodel.Edit{
		"retyped":  nil,
		"moved":    pagemodel.Rearrange{Arrangement: order},
		"language": pagemodel.SetAbout{About: german},
		"marked":   pagemodel.SetEcho{Echo: pagemodel.Echo{Name: "bread", Words: []string{"bread"}}},
	} {
		after := retyped
		if set != nil {
			after = edited(t, first, set)
		}
		if !reflect.DeepEqual(f.Of(after), new(Finder).Of(after)) {
			t.Errorf("%s: the finder finds other echoes than a new one", name)
		}
	}
	if got, before := called(t, f.Of(retyped), "bread"), called(t, f.Of(first), "bread"); len(got.Found) != len(before.Found)+3 {
		t.Errorf("bread is found %d times after the edit, %d before", len(got.Found), len(before.Found))
	}
	if len(f.poems) != countPoems(first.Collection()) {
		t.Errorf("the finder keeps %d poems of %d", len(f.poems), countPoems(first.Collection()))
	}
}

func countPoems(c *pagemodel.Collection) int {
	n := 0
	for range c.Poems() {
		n++
	}
	return n
}

// TestEmpty finds nothing where there is nothing.
func TestEmpty(t *testing.T) {
	for name, c := range map[string]*pagemodel.Collection{
		"no poem":    pagemodel.NewCollection(pagemodel.About{}, pagemodel.DefaultDesign()),
		"no word":    read(t, "## 1\n\n12, 14\n").Collection(),
		"no English": read(t, "---\nlanguage: fr\n---\n\n## 1\n\n12, 14\n").Collection(),
	} {
		if found := find(t, typeset.NewSetter(typeset.Bundled()).Set(nil, c)); len(found) != 0 {
			t.Errorf("%s has the echoes %q", name, names(found))
		}
	}
}
