package command

import (
	"encoding/json"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"headland/ui/session"
)

// parts is a manuscript of two sections, the first with a poem of two pages.
var parts = `---
title: Two Shifts
---

## Prelude

Before the light

# Night

## Oven

` + strings.Repeat("The oven is lit,\n", 40) + `
## Crust

Nobody cuts it yet

# Day

## Till

The till is open

## Crumbs

For the birds
`

// inParts imports the poems of two sections and gives the file.
func inParts(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	file := filepath.Join(folder, "parts.headland")
	done(t, "", "import", write(t, folder, "parts.md", parts), "-o", file)
	return file
}

// contentsOf is the order of a file: its sections and poems.
func contentsOf(t *testing.T, file string) string {
	t.Helper()
	var all []string
	for _, e := range reported(t, file).Contents {
		all = append(all, e.Title)
	}
	return strings.Join(all, ", ")
}

const asImported = "Prelude, Night, Oven, Crust, Day, Till, Crumbs"

// TestReorder does each edit about the order of the book to one book, one after
// another, and takes all back.
func TestReorder(t *testing.T) {
	file := inParts(t)
	steps := []struct{ script, want string }{
		{`{"edit":"move","poem":"Oven","through":"Crust"}`, "Prelude, Night, Day, Till, Crumbs, Oven, Crust"},
		{`{"edit":"move","poem":"Oven","through":"Crust","before":"Prelude"}`, "Oven, Crust, Prelude, Night, Day, Till, Crumbs"},
		{`{"edit":"move","poem":"Prelude","before":"Crust"}`, "Oven, Prelude, Crust, Night, Day, Till, Crumbs"},
		{`{"edit":"move-section","section":"day","before":"Night"}`, "Oven, Prelude, Crust, Day, Till, Crumbs, Night"},
		{`{"edit":"move-section","section":1}`, "Oven, Prelude, Crust, Night, Day, Till, Crumbs"},
		{`{"edit":"leave-out","poem":"Prelude","through":"Crust"}`, "Oven, Night, Day, Till, Crumbs"},
		{`{"edit":"put-back","poem":"Crust","before":"Till"}`, "Oven, Night, Day, Crust, Till, Crumbs"},
		{`{"edit":"put-back","poem":"Prelude"}`, "Oven, Night, Day, Crust, Till, Crumbs, Prelude"},
	}
	for _, step := range steps {
		done(t, step.script, "edit", file, "-")
		if got := contentsOf(t, file); got != step.want {
			t.Fatalf("after %s the order is %s, want %s", step.script, got, step.want)
		}
	}
	done(t, strings.Repeat(`{"edit":"undo"}`+"\n", len(steps)), "edit", file, "-")
	if got := contentsOf(t, file); got != asImported {
		t.Errorf("all undone, the order is %s", got)
	}
}

// TestReorderIsOneStep sees that moving a poem to where it is changes nothing, and
// that the history says what was moved.
func TestReorderIsOneStep(t *testing.T) {
	file := inParts(t)
	done(t, `{"edit":"move","poem":"Oven","before":"Oven"}
		{"edit":"move","poem":"Oven","before":"Crust"}
		{"edit":"move-section","section":"Day"}
		{"edit":"move","poem":"Till","through":"Crumbs"}`, "edit", file, "-")
	if r := run(t, `{"edit":"undo"}`, "edit", file, "-"); !strings.Contains(r.errs, "nothing to undo") {
		t.Errorf("moved nowhere, undo says %q", r.errs)
	}
	for script, want := range map[string]string{
		`{"edit":"move","poem":"Oven","through":"Crust"}`: "move 2 poems", `{"edit":"move","poem":"Till","before":"Prelude"}`: "move Till",
		`{"edit":"move-section","section":"Night"}`: "move the section Night", `{"edit":"leave-out","poem":"Prelude"}`: "leave out Prelude",
		`{"edit":"put-back","poem":"Prelude"}`: "put back Prelude",
	} {
		if strings.Contains(script, "put-back") {
			done(t, `{"edit":"leave-out","poem":"Prelude"}`, "edit", file, "-")
		}
		done(t, script, "edit", file, "-")
		if got := undoLabel(t, file); got != want {
			t.Errorf("the history calls %s %q, want %q", script, got, want)
		}
		done(t, `{"edit":"undo"}`, "edit", file, "-")
		if strings.Contains(script, "put-back") {
			done(t, `{"edit":"undo"}`, "edit", file, "-")
		}
	}
}

// undoLabel is what undo would take back.
func undoLabel(t *testing.T, file string) string {
	t.Helper()
	s, err := session.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	label, _ := s.UndoLabel()
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	return label
}

// costs is what headland order says of a file, read back.
func costs(t *testing.T, file string) orders {
	t.Helper()
	var o orders
	if err := json.Unmarshal([]byte(done(t, "", "order", file, "--json")), &o); err != nil {
		t.Fatal(err)
	}
	return o
}

// TestKeptOrders keeps an order, puts the book into another, and sees what either
// costs: the two-page poem begins on the recto or on the verso behind it.
func TestKeptOrders(t *testing.T) {
	file, today := inParts(t), time.Now().Format(time.DateOnly)
	before := costs(t, file)
	done(t, `{"edit":"keep-order","name":"as it came"}
		{"edit":"move","poem":"Crust","before":"Oven"}
		{"edit":"leave-out","poem":"Crumbs"}
		{"edit":"keep-order","name":"crust first"}`, "edit", file, "-")
	after := costs(t, file)
	if before.Toll.Unfaced == after.Toll.Unfaced {
		t.Fatalf("moved by a page, the long poem still costs %+v, and before %+v", after.Toll, before.Toll)
	}
	if len(after.Kept) != 2 || after.Kept[0].Name != "as it came" || after.Kept[0].On != today || after.Kept[0].Book || !after.Kept[1].Book {
		t.Fatalf("the orders kept are %+v", after.Kept)
	}
	if !sameToll(after.Kept[0].Toll, before.Toll) || !sameToll(after.Kept[1].Toll, after.Toll) || !slices.Equal(after.Kept[1].LeftOut, []string{"Crumbs"}) {
		t.Errorf("the orders kept are %+v; the book costs %+v and cost %+v", after.Kept, after.Toll, before.Toll)
	}
	out := done(t, "", "order", file)
	for _, want := range []string{"The book, 4 poems: ", "as it came " + today + ": ", "the book is in it", "leaves out Crumbs", "beside the book's, ", " unfaced poem"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	done(t, `{"edit":"use-order","name":"As It Came"}`, "edit", file, "-")
	if got := contentsOf(t, file); got != asImported {
		t.Errorf("the order used is %s", got)
	}
	done(t, `{"edit":"drop-order","name":"as it came"}`, "edit", file, "-")
	if got := costs(t, file).Kept; len(got) != 1 || got[0].Name != "crust first" {
		t.Errorf("with one dropped there is %+v", got)
	}
}

// sameToll compares what two orders cost, but for what was not counted.
func sameToll(a, b toll) bool {
	if a.Faults != nil && b.Faults != nil && *a.Faults != *b.Faults {
		return false
	}
	a.Faults, b.Faults = nil, nil
	return a == b
}

// TestUseOrderLeavesOutWhatItKnows: a poem that was out of the book when the order
// was kept, and of which the order knows, is left out without a word.
func TestUseOrderLeavesOutWhatItKnows(t *testing.T) {
	file := inParts(t)
	done(t, `{"edit":"leave-out","poem":"Crumbs"}
		{"edit":"keep-order","name":"short"}
		{"edit":"put-back","poem":"Crumbs"}
		{"edit":"use-order","name":"short"}`, "edit", file, "-")
	if got := reported(t, file).LeftOut; !slices.Equal(got, []leftOut{{"Crumbs", 1}}) {
		t.Errorf("left out are %+v", got)
	}
	if out := done(t, "", "report", file); !strings.Contains(out, "Left out: Crumbs\nOrders kept: short "+time.Now().Format(time.DateOnly)+"\n") {
		t.Errorf("the report does not say so:\n%s", out)
	}
}

// TestUseOrderSaysWhatCameIn: a poem that came in after the order was kept is left
// out, and named.
func TestUseOrderSaysWhatCameIn(t *testing.T) {
	file := inParts(t)
	done(t, `{"edit":"keep-order","name":"as it came"}`, "edit", file, "-")
	s, err := session.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	_, err = s.Add([]string{write(t, t.TempDir(), "more.md", "## Yeast\n\nIt rises\n")})
	if e := s.Close(); err != nil || e != nil {
		t.Fatal(err, e)
	}
	r := run(t, `{"edit":"use-order","name":"as it came"}`, "edit", file, "-")
	if want := "the input, line 1: not in that order yet, and so left out of the book: Yeast\n"; r.status != Done || r.errs != want {
		t.Errorf("status %d, says %q, want %q", r.status, r.errs, want)
	}
	if got := contentsOf(t, file); got != asImported {
		t.Errorf("the order is %s", got)
	}
}

// found is what a search finds, read back.
func found(t *testing.T, file, conditions string) []foundOrder {
	t.Helper()
	var all struct{ Found []foundOrder }
	if err := json.Unmarshal([]byte(done(t, conditions, "order", file, "--json", "--find", "-")), &all); err != nil {
		t.Fatal(err)
	}
	return all.Found
}

// titlesOf are the titles of an order that was found.
func titlesOf(f foundOrder) string {
	var all []string
	for _, place := range f.Order {
		all = append(all, place.Title)
	}
	return strings.Join(all, ", ")
}

// TestFindOrder looks for orders that meet conditions, sees that they do and that
// nothing is done; and then puts the book into the one that was found by hand, which
// costs what was said.
func TestFindOrder(t *testing.T) {
	file := inParts(t)
	for _, test := range []struct{ conditions, want string }{
		{"", "Prelude, Night, Oven, Crust, Day, Till, Crumbs"},
		{`{"first":"Till"}`, "Till, "},
		{`{"last":"Prelude"}` + "\n\n" + `{"together":["Oven","Till"]}`, ", Prelude"},
		{`{"in_order":[5,1]}`, "Crumbs, Prelude"},
		{`{"sections":"stay"}` + "\n" + `{"last":4}`, "Crumbs, Till"},
	} {
		all := found(t, file, test.conditions)
		if len(all) == 0 || !strings.Contains(titlesOf(all[len(all)-1]), test.want) && test.conditions != "" {
			t.Errorf("with %s it finds %+v, want %q in it", test.conditions, all, test.want)
		}
	}
	all := found(t, file, `{"sections":"stay"}`)
	best := all[len(all)-1]
	if got := titlesOf(best); got != "Prelude, Night, Crust, Oven, Day, Till, Crumbs" && best.Toll.Unfaced > 0 {
		t.Fatalf("the best order is %s, at %+v", got, best.Toll)
	}
	if got := contentsOf(t, file); got != asImported {
		t.Fatalf("looking has put the book into the order %s", got)
	}
	if len(best.Moved) != 1 || !strings.Contains(best.Says[0], best.Moved[0]) {
		t.Fatalf("the best order moves %q and says %q", best.Moved, best.Says)
	}
	done(t, `{"edit":"move","poem":"Crust","before":"Oven"}`, "edit", file, "-")
	if got := contentsOf(t, file); got != titlesOf(best) || !sameToll(costs(t, file).Toll, best.Toll) {
		t.Errorf("by hand the order is %s and costs %+v; found was %s at %+v", got, costs(t, file).Toll, titlesOf(best), best.Toll)
	}
}

// TestFindOrderInWords: each order found is printed with what it costs and moves.
func TestFindOrderInWords(t *testing.T) {
	file := inParts(t)
	conditions := write(t, t.TempDir(), "conditions.json", `{"first":"Till"}`)
	out := done(t, "", "order", file, "--find", conditions, "--seconds", "2.5")
	for _, want := range []string{"The book: ", "\n1. ", "    “Till” from ", " to the beginning of the book", "None is better."} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}

// TestOrderWrong goes through what can be wrong with the command line and the
// conditions.
func TestOrderWrong(t *testing.T) {
	file := inParts(t)
	for _, test := range []struct {
		in     string
		flags  []string
		status int
		want   []string
	}{
		{"", []string{"--seconds", "3"}, Misuse, []string{"--seconds is for --find"}},
		{"", []string{"--find", ""}, Misuse, []string{"--find needs", "or -"}},
		{"", []string{"--find", "-", "--seconds", "0"}, Misuse, []string{"--seconds is 0", "up to 3600"}},
		{"", []string{"--find", "-", "--seconds", "NaN"}, Misuse, []string{"--seconds is NaN"}},
		{"", []string{"--find", "-", "--seconds", "ten"}, Misuse, []string{"--seconds", "ten"}},
		{"", []string{"--find", "nowhere.json"}, CouldNot, []string{"file of conditions", "nowhere.json"}},
		{`{"first":1}` + "\n\n" + `{"second":2}`, nil, CouldNot, []string{"the input, line 3: ", "it is one of together, in_order"}},
		{`{"first":1,"last":2}`, nil, CouldNot, []string{"the input, line 1: ", "one condition"}},
		{`[1,2]`, nil, CouldNot, []string{"line 1", "one condition"}},
		{`{}`, nil, CouldNot, []string{"line 1", "one condition"}},
		{`first: 1`, nil, CouldNot, []string{"line 1", "no JSON object"}},
		{`{"first":9}`, nil, CouldNot, []string{"line 1", "no poem 9", "has 5"}},
		{`{"together":["Oven","Yeast"]}`, nil, CouldNot, []string{"line 1", `"Yeast"`}},
		{`{"together":"Oven"}`, nil, CouldNot, []string{`"together" must be a list of poems`}},
		{`{"together":[1,true]}`, nil, CouldNot, []string{`"together" must be a poem's number`}},
		{`{"together":[1]}`, nil, CouldNot, []string{"where there are two", "name another"}},
		{`{"apart":[1,2,3]}`, nil, CouldNot, []string{"two poems", "3 poems are named"}},
		{`{"sections":"go"}`, nil, CouldNot, []string{`"sections" must be "stay"`, `"go"`}},
		{`{"first":1}` + "\n" + `{"first":2}`, nil, CouldNot, []string{"all be had", "give up one"}},
	} {
		args := []string{"order", file, "--json"}
		if test.flags == nil {
			test.flags = []string{"--find", "-"}
		}
		wrongly(t, test.status, test.want, test.in, append(args, test.flags...)...)
	}
}
