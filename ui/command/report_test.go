package command

import (
	"encoding/json"
	"slices"
	"testing"

	"headland/pagemodel"
)

// TestReportJSON sees that the report has just the names that other programs
// read it by, in every object.
func TestReportJSON(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"text","poem":1,"stanza":1,"line":1,"text":"One loaf `+"\U0001F35E"+`"}`, "edit", file, "-")
	var r map[string]any
	if err := json.Unmarshal([]byte(done(t, "", "report", file, "--json")), &r); err != nil {
		t.Fatal(err)
	}
	first := func(list any) any {
		all, ok := list.([]any)
		if !ok || len(all) == 0 {
			t.Fatalf("%v is no list of something", list)
		}
		return all[0]
	}
	for _, test := range []struct {
		name   string
		object any
		want   []string
	}{
		{"the report", r, []string{"contents", "design", "extent", "faults", "lines", "pages", "poems", "title", "turnovers"}},
		{"extent", r["extent"], []string{"blanks", "pages", "signatures", "spine_mm"}},
		{"design", r["design"], slices.Clone(designFields)},
		{"a turnover", first(r["turnovers"]), []string{"line", "number", "overrun_pt", "page", "parts", "poem", "row", "stanza", "state", "text"}},
		{"a fault", first(r["faults"]), []string{"kind", "page", "poem", "row", "text"}},
		{"the contents", first(r["contents"]), []string{"page", "title"}},
	} {
		object, ok := test.object.(map[string]any)
		if !ok {
			t.Errorf("%s is %v", test.name, test.object)
			continue
		}
		var got []string
		for name := range object {
			got = append(got, name)
		}
		slices.Sort(got)
		slices.Sort(test.want)
		if !slices.Equal(got, test.want) {
			t.Errorf("%s has %q, want %q", test.name, got, test.want)
		}
	}
}

// TestEmptyLists sees that where there is nothing there is an empty list.
func TestEmptyLists(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"text","poem":2,"stanza":1,"line":1,"text":"Short"}`, "edit", file, "-")
	var r map[string]json.RawMessage
	if err := json.Unmarshal([]byte(done(t, "", "report", file, "--json")), &r); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"turnovers", "faults"} {
		if string(r[name]) != "[]" {
			t.Errorf("%q is %s, want []", name, r[name])
		}
	}
}

// TestExtent checks the spine against the formula worked by hand for bound
// pages: 64 and 96 pages of 80 gsm, volume 18.
func TestExtent(t *testing.T) {
	for pages, want := range map[int]extentReport{
		64: {64, 4, 0, 4.608}, 96: {96, 6, 0, 6.912}, 61: {61, 4, 3, 4.608}, 81: {81, 6, 15, 6.912}, 0: {},
	} {
		if got := extentOf(pages); got != want {
			t.Errorf("%d pages take %+v, want %+v", pages, got, want)
		}
	}
}

// TestLengthsComeBack sees that every length is reported so that it can be set
// again, and usual ones as they are spoken.
func TestLengthsComeBack(t *testing.T) {
	for l := pagemodel.Length(0); l < pagemodel.MM(300); l++ {
		if pagemodel.MM(millimetres(l)) != l || pagemodel.Pt(points(l)) != l {
			t.Fatalf("%v is reported as %g mm, %g pt", l, millimetres(l), points(l))
		}
	}
	if got := millimetres(pagemodel.MM(129)); got != 129 {
		t.Errorf("129 mm is reported as %g", got)
	}
	if got := points(pagemodel.Pt(11.5)); got != 11.5 {
		t.Errorf("11.5 pt is reported as %g", got)
	}
}
