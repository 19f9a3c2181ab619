package command

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// heard are the echoes of a file, read back.
func heard(t *testing.T, file string) []echo {
	t.Helper()
	var all []echo
	if err := json.Unmarshal([]byte(done(t, "", "echoes", file, "--json")), &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// TestEchoes marks something by words, a line and a poem, one after another, sees
// where it comes back, and marks it no more.
func TestEchoes(t *testing.T) {
	file := book(t)
	if got := heard(t, file); len(got) != 0 {
		t.Fatalf("nothing is marked, and there is %+v", got)
	}
	if out := done(t, "", "echoes", file); !strings.Contains(out, "nothing is marked") {
		t.Errorf("echoes says %q", out)
	}
	oven := occurrence{"Bread", 1, 1, 2, "1", "oven"}
	line := occurrence{"Weights", 2, 1, 2, "2", "and nobody says a word."}
	whole := occurrence{"1984", 4, 0, 0, "4", ""}
	for _, step := range []struct {
		script string
		want   []occurrence
	}{
		{`"words":["ovens"]`, []occurrence{oven}},
		{`"lines":[{"poem":2,"stanza":1,"line":2}]`, []occurrence{oven, line}},
		{`"poems":[4]`, []occurrence{oven, line, whole}},
		{`"words":[]`, []occurrence{line, whole}},
	} {
		done(t, `{"edit":"echo","name":"heat",`+step.script+`}`, "edit", file, "-")
		all := heard(t, file)
		if len(all) != 1 || all[0].Name != "heat" || !all[0].Marked || !slices.Equal(all[0].Occurrences, step.want) {
			t.Errorf("after %s there is %+v, want %+v", step.script, all, step.want)
		}
	}
	out := done(t, "", "echoes", file)
	for _, want := range []string{"heat: 2 places, marked, nearest 2 poems on\n", "page 2  #2 Weights  stanza 1, line 2  and nobody says a word.", "page 4  #4 1984     the poem\n"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	done(t, `{"edit":"echo","name":"Heat","off":true}`, "edit", file, "-")
	if got := heard(t, file); len(got) != 0 {
		t.Errorf("marked no more, there is %+v", got)
	}
}

// TestEchoesJSON sees that an echo has just the names that other programs read it
// by.
func TestEchoesJSON(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"echo","name":"heat","words":["oven"]}`, "edit", file, "-")
	var all []map[string]any
	if err := json.Unmarshal([]byte(done(t, "", "echoes", file, "--json")), &all); err != nil || len(all) != 1 {
		t.Fatal(all, err)
	}
	if got, want := keysOf(all[0]), []string{"expected", "marked", "name", "nearest", "occurrences", "poems"}; !slices.Equal(got, want) {
		t.Errorf("an echo has %q, want %q", got, want)
	}
	one := all[0]["occurrences"].([]any)[0].(map[string]any)
	if got, want := keysOf(one), []string{"line", "number", "page", "poem", "stanza", "text"}; !slices.Equal(got, want) {
		t.Errorf("a place has %q, want %q", got, want)
	}
}
