package command

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// chosen are the choices of a line, as other programs read them.
func chosen(t *testing.T, file string, flags ...string) []map[string]any {
	t.Helper()
	var all []map[string]any
	args := append([]string{"choices", file, "--poem", "2", "--stanza", "1", "--line", "1", "--json"}, flags...)
	if err := json.Unmarshal([]byte(done(t, "", args...)), &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// TestChoicesJSON sees that choices have just the names that other programs read
// them by, and that nothing is null.
func TestChoicesJSON(t *testing.T) {
	file := book(t)
	before := read(t, file)
	for _, c := range chosen(t, file) {
		want := []string{"alone", "at", "echoes", "head", "moves", "parts", "says", "title"}
		if got := keysOf(c); !slices.Equal(got, want) {
			t.Fatalf("a choice has %q, want %q", got, want)
		}
		for name, value := range c {
			if value == nil {
				t.Errorf("%v, %v: %q is null", c["head"], c["title"], name)
			}
		}
		want = []string{"end", "guessed", "last_word", "overrun_pt", "stress", "syllables", "text"}
		if got := keysOf(c["parts"].([]any)[0].(map[string]any)); !slices.Equal(got, want) {
			t.Fatalf("a part has %q, want %q", got, want)
		}
	}
	if read(t, file) != before {
		t.Error("asking for choices changed the file")
	}
}

func keysOf(object map[string]any) []string {
	var names []string
	for name := range object {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// TestChoicesAreDone: "at" counts characters, so that an edit script can break
// the line where a choice does.
func TestChoicesAreDone(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"text","poem":2,"stanza":1,"line":1,"text":"“É”—so the inspector takes his time about it, and the whole street is watching"}`, "edit", file, "-")
	all := chosen(t, file)
	i := slices.IndexFunc(all, func(c map[string]any) bool { return c["title"] == "before “and”" })
	if i < 0 {
		t.Fatalf("no break before “and” among %v", all)
	}
	at := all[i]["at"].([]any)[0].(float64)
	done(t, fmt.Sprintf(`{"edit":"break","poem":2,"stanza":1,"line":1,"at":%v}`, at), "edit", file, "-")
	text := exported(t, file)
	for _, p := range all[i]["parts"].([]any) {
		if part := p.(map[string]any)["text"].(string); !strings.Contains(text, part+"\n") {
			t.Errorf("broken there, the poem has no line %q:\n%s", part, text)
		}
	}
}

// TestChoicesInOrder: by a measure, under each head.
func TestChoicesInOrder(t *testing.T) {
	file := book(t)
	last := -1.0
	for _, c := range chosen(t, file, "--by", "overrun") {
		if c["head"] != "a break in the poem" {
			break
		}
		over := 0.0
		for _, p := range c["parts"].([]any) {
			over += p.(map[string]any)["overrun_pt"].(float64)
		}
		if over < last-0.01 {
			t.Errorf("%v overruns by %v, and stands after one by %v", c["title"], over, last)
		}
		last = over
	}
}

// TestChoicesInWords: the four heads, and nothing called good or bad.
func TestChoicesInWords(t *testing.T) {
	out := done(t, "", "choices", book(t), "--poem", "Weights", "--stanza", "1", "--line", "1")
	for _, want := range []string{
		long, "\nA break in the poem\n", "\nIn this edition\n", "\nLet it turn\n", "\nSpace\n", "both parts fit", "syllables: ",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("it does not say %q:\n%s", want, out)
		}
	}
	for _, judged := range []string{"good", "bad", "best", "better", "worse"} {
		if strings.Contains(out, judged) {
			t.Errorf("it says %q", judged)
		}
	}
}

// TestChoicesWrong: what is wrong is said, and what to do.
func TestChoicesWrong(t *testing.T) {
	file := book(t)
	for _, test := range []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"choices"}, Misuse, "name the collection's file"},
		{[]string{"choices", file}, Misuse, "--poem, --stanza and --line"},
		{[]string{"choices", file, "--poem", "2", "--stanza", "1", "--line", "1", "--by", "beauty"}, Misuse, "place, overrun"},
		{[]string{"choices", file, "--poem", "#9", "--stanza", "1", "--line", "1"}, CouldNot, "there is no poem 9"},
		{[]string{"choices", file, "--poem", "2", "--stanza", "1", "--line", "7"}, CouldNot, "there is no line 7"},
	} {
		if r := run(t, "", test.args...); r.status != test.status || !strings.Contains(r.errs, test.want) {
			t.Errorf("%q: status %d, %q", test.args, r.status, r.errs)
		}
	}
}
