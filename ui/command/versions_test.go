package command

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestVariants keeps a version of a poem, uses it, names it and drops it.
func TestVariants(t *testing.T) {
	file, today := book(t), time.Now().Format(time.DateOnly)
	for _, step := range []struct {
		script string
		want   []variant
		text   string
	}{
		{`{"edit":"keep-variant","poem":1,"name":"fed"}`, []variant{{"Bread", 1, "", true, ""}, {"Bread", 1, "fed", false, today}}, "Nobody was hungry."},
		{`{"edit":"text","poem":1,"stanza":2,"line":1,"text":"All were."}`, []variant{{"Bread", 1, "", true, ""}, {"Bread", 1, "fed", false, today}}, "All were."},
		{`{"edit":"name-variant","poem":1,"to":"unfed"}`, []variant{{"Bread", 1, "unfed", true, ""}, {"Bread", 1, "fed", false, today}}, "All were."},
		{`{"edit":"use-variant","poem":1,"name":"fed"}`, []variant{{"Bread", 1, "fed", true, ""}, {"Bread", 1, "unfed", false, today}}, "Nobody was hungry."},
		{`{"edit":"name-variant","poem":1,"from":"unfed","to":"starved"}`, []variant{{"Bread", 1, "fed", true, ""}, {"Bread", 1, "starved", false, today}}, "Nobody was hungry."},
		{`{"edit":"drop-variant","poem":1,"name":"starved"}`, []variant{{"Bread", 1, "fed", true, ""}}, "Nobody was hungry."},
	} {
		done(t, step.script, "edit", file, "-")
		if got := reported(t, file).Variants; !slices.Equal(got, step.want) {
			t.Errorf("after %s the variants are\n%+v, want\n%+v", step.script, got, step.want)
		}
		if got := exported(t, file); !strings.Contains(got, step.text) {
			t.Errorf("after %s, %q is not in\n%s", step.script, step.text, got)
		}
	}
}

// statesListed are a poem's states, as other programs read them.
func statesListed(t *testing.T, file, poem string) []poemState {
	t.Helper()
	var all []poemState
	if err := json.Unmarshal([]byte(done(t, "", "states", file, "--poem", poem, "--json")), &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// TestStates lists what a poem was, what was undone too, and brings it back.
func TestStates(t *testing.T) {
	file := book(t)
	retype := func(text string) string {
		return `{"edit":"text","poem":1,"stanza":2,"line":1,"text":"` + text + `"}` + "\n"
	}
	done(t, retype("All were.")+`{"edit":"undo"}`+"\n"+retype("Some were."), "edit", file, "-")
	states := statesListed(t, file, "#1")
	var got []string
	for _, s := range states {
		at, err := time.Parse(time.RFC3339, s.At)
		if err != nil || time.Since(at) > time.Hour || s.Title != "Bread" || s.Stanzas[0][0] != "One loaf on the sill," {
			t.Errorf("%v: the state is %+v", err, s)
		}
		got = append(got, s.Stanzas[1][0]+map[bool]string{true: " undone"}[s.Undone]+map[bool]string{true: " now"}[s.Now])
	}
	if want := []string{"Nobody was hungry.", "All were. undone", "Some were. now"}; !slices.Equal(got, want) {
		t.Fatalf("the states are %q, want %q", got, want)
	}
	out := done(t, "", "states", file, "--poem", "1")
	for _, want := range []string{"Bread: 3 states\n", "3 lines in 2 stanzas", "in the book", "undone", "earlier", states[1].Label} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	number, err := json.Marshal(states[1].State)
	if err != nil {
		t.Fatal(err)
	}
	done(t, `{"edit":"bring-back","poem":1,"state":`+string(number)+`}`, "edit", file, "-")
	if text := exported(t, file); !strings.Contains(text, "All were.") {
		t.Errorf("brought back, the text is\n%s", text)
	}
	if after := statesListed(t, file, "1"); len(after) != 4 || !after[3].Now || after[2].Now {
		t.Errorf("brought back, the states are %+v", after)
	}
}
