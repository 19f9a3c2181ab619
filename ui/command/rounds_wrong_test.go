package command

import (
	"path/filepath"
	"strings"
	"testing"

	"headland/ui/session"
)

// TestRoundsWrong goes through what can be wrong with the verbs about rounds and
// states: the status, and the words that must be in what is said.
func TestRoundsWrong(t *testing.T) {
	fresh, sent := book(t), book(t)
	done(t, "", "mark-sent", sent)
	pdf := filepath.Join(t.TempDir(), "a.pdf")
	for _, test := range []struct {
		args   []string
		status int
		want   []string
	}{
		{[]string{"mark-sent"}, Misuse, []string{"name the collection's file"}},
		{[]string{"mark-sent", fresh, "--name", "x"}, Misuse, []string{"no flag --name", "mark-sent FILE [--round NAME]"}},
		{[]string{"mark-sent", "nowhere.headland"}, CouldNot, []string{"nowhere.headland", "not there"}},
		{[]string{"mark-sent", sent, "--round", "Copy-edit"}, CouldNot, []string{`"copy-edit" already`, "another name"}},
		{[]string{"corrections"}, Misuse, []string{"name the collection's file"}},
		{[]string{"corrections", fresh}, CouldNot, []string{"no round has gone out yet", "mark the book as sent"}},
		{[]string{"corrections", sent, "--round", "revises"}, CouldNot, []string{`no round "revises"`, "copy-edit"}},
		{[]string{"corrections", sent, "--pdf", "list.txt"}, Misuse, []string{"--pdf writes a file that ends in .pdf", "list.txt"}},
		{[]string{"corrections", sent, "--marked", sent}, Misuse, []string{"--marked writes a file that ends in .pdf", sent}},
		{[]string{"corrections", sent, "--pdf", pdf, "--marked", pdf}, Misuse, []string{"--pdf and --marked both name " + pdf, "another name"}},
		{[]string{"corrections", sent, "--txt", "no/such/list.txt"}, CouldNot, []string{"list.txt", "folder"}},
		{[]string{"states", sent}, Misuse, []string{"--poem"}},
		{[]string{"states", sent, "--poem", "#9"}, CouldNot, []string{"no poem 9", "the book has 4"}},
		{[]string{"states", sent, "--poem", "Bread"}, CouldNot, []string{"2 poems", "#1, #3"}},
	} {
		r := run(t, "", test.args...)
		if r.status != test.status || r.out != "" {
			t.Errorf("headland %q: status %d, want %d; printed %q", test.args, r.status, test.status, r.out)
		}
		for _, want := range append(test.want, "headland: ") {
			if !strings.Contains(r.errs, want) {
				t.Errorf("headland %q says %q, want %q in it", test.args, r.errs, want)
			}
		}
	}
}

// TestDecisionsRefused goes through what can be wrong with edits about decisions,
// versions, rounds and corrections, in a book that has none of them.
func TestDecisionsRefused(t *testing.T) {
	line := `"poem":1,"stanza":1,"line":1`
	refuseAll(t, []struct {
		bad  string
		want []string
	}{
		{`{"edit":"keep",` + line + `,"shown":true}`, []string{`"shown"`, `give a "reason" too`}},
		{`{"edit":"keep",` + line + `,"shown":"yes"}`, []string{`"shown" must be true or false`}},
		{`{"edit":"reason",` + line + `}`, []string{`needs "reason"`, `"shown"`}},
		{`{"edit":"reason",` + line + `,"shown":true}`, []string{`give a "reason" too`}},
		{`{"edit":"reason",` + line + `,"reason":7}`, []string{`"reason" must be words`}},
		{`{"edit":"reason","poem":1,"reason":"x"}`, []string{`needs "stanza"`}},
		{`{"edit":"white",` + line + `}`, []string{`needs "lines"`}},
		{`{"edit":"white",` + line + `,"lines":-1}`, []string{"-1 lines of white", "choose from 0"}},
		{`{"edit":"white",` + line + `,"lines":1000}`, []string{"1000 lines of white", "choose from 0"}},
		{`{"edit":"say","word":"bread"}`, []string{`needs "as"`}},
		{`{"edit":"say","as":"BREAD"}`, []string{`needs "word"`}},
		{`{"edit":"say","word":"the bread","as":"BREAD"}`, []string{"not one word", "one word goes at a time"}},
		{`{"edit":"say","word":"bread","as":"B--D"}`, []string{"can't be read as syllables", "CAR-da-mom"}},
		{`{"edit":"keep-variant","poem":1}`, []string{`needs "name"`}},
		{`{"edit":"keep-variant","name":"x"}`, []string{`needs "poem"`}},
		{`{"edit":"keep-variant","poem":1,"name":" "}`, []string{"a variant needs a name"}},
		{`{"edit":"use-variant","poem":1,"name":"x"}`, []string{"no variant is kept beside Bread", "keep one first"}},
		{`{"edit":"drop-variant","poem":1,"name":"x"}`, []string{"keep one first"}},
		{`{"edit":"name-variant","poem":1,"from":"x"}`, []string{`needs "to"`}},
		{`{"edit":"name-variant","poem":1,"from":"x","to":"y"}`, []string{"keep one first"}},
		{`{"edit":"bring-back","poem":1}`, []string{`needs "state"`}},
		{`{"edit":"bring-back","poem":1,"state":99}`, []string{"Bread has no state 99", "headland states", "1 state"}},
		{`{"edit":"bring-back","poem":1,"state":"first"}`, []string{`"state" must be a whole number`}},
		{`{"edit":"mark-sent","round":"x"}`, []string{`takes no field "round"`, "name"}},
		{`{"edit":"reply","number":1}`, []string{"something to note", "state, whose, reason"}},
		{`{"edit":"reply","state":"made"}`, []string{`needs "number"`}},
		{`{"edit":"reply","number":1,"state":"made"}`, []string{"no round has gone out yet"}},
	})
}

// TestRepliesRefused is of a book with a round and one correction.
func TestRepliesRefused(t *testing.T) {
	file := book(t)
	done(t, "", "mark-sent", file)
	done(t, `{"edit":"text","poem":1,"stanza":2,"line":1,"text":"Nobody was thirsty."}`, "edit", file, "-")
	for bad, want := range map[string]string{
		`"number":2,"state":"made"`:               "there is no correction 2 of copy-edit: it has 1 correction",
		`"number":0,"state":"made"`:               "there is no correction 0",
		`"number":1,"state":"done"`:               "open, made, refused, queried, missed",
		`"number":1,"whose":"mine"`:               "AA, PE, EA, DA",
		`"number":1,"shown":true`:                 `give a "reason" too`,
		`"number":1,"question":["a","b"]`:         `"question" must be words`,
		`"number":1,"state":"made","round":"two"`: `no round "two"`,
	} {
		r := run(t, `{"edit":"reply",`+bad+`}`, "edit", file, "-")
		if r.status != CouldNot || !strings.Contains(r.errs, want) || !strings.Contains(r.errs, "the input, line 1: ") {
			t.Errorf("%s: status %d, %s\nwant %q in it", bad, r.status, r.errs, want)
		}
	}
}

// TestReadOnlyRounds sees that a book that is open elsewhere is not marked, and
// that what went out of it can be listed.
func TestReadOnlyRounds(t *testing.T) {
	file := sentAndChanged(t)
	all := listed(t, file)
	window, err := session.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer window.Close()
	if r := run(t, "", "mark-sent", file); r.status != CouldNot || !strings.Contains(r.errs, "another window") {
		t.Errorf("mark-sent: status %d: %s", r.status, r.errs)
	}
	if got := listed(t, file); len(got) != len(all) {
		t.Errorf("open elsewhere, the book has the corrections %+v, want %+v", got, all)
	}
	done(t, "", "states", file, "--poem", "1")
}
