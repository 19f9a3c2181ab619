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
	done(t, `{"edit":"keep-variant","poem":1,"name":"crumbs"}`, "edit", file, "-")
	done(t, "", "mark-sent", file)
	done(t, `{"edit":"keep-order","name":"first"}
		{"edit":"reading","name":"Thursday","items":[{"poem":1}]}
		{"edit":"leave-out","poem":4}`, "edit", file, "-")
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
		{"the report", r, []string{
			"contents", "decisions", "design", "designs", "extent", "faults", "left_out", "lines", "orders", "page_ends", "pages", "poems",
			"proposed_forms", "readings", "rounds", "title", "turnovers", "variants",
		}},
		{"extent", r["extent"], []string{
			"blanks", "even_working", "pages", "paper", "signature_pages", "signatures", "spine_glued_mm", "spine_in", "spine_mm",
		}},
		{"an even working", first(r["extent"].(map[string]any)["even_working"]), []string{"blanks", "signature_pages"}},
		{"the paper", r["extent"].(map[string]any)["paper"], []string{"gsm", "pages_per_inch", "volume"}},
		{"design", r["design"], slices.Clone(designFields)},
		{"a turnover", first(r["turnovers"]), []string{"line", "number", "overrun_pt", "page", "parts", "poem", "row", "stanza", "state", "text"}},
		{"a fault", first(r["faults"]), []string{"kind", "page", "poem", "remedies", "row", "text"}},
		{"a decision", first(r["decisions"]), []string{
			"asleep", "in", "line", "number", "on", "page", "poem", "reason", "row", "stanza", "state", "text", "why",
		}},
		{"a round", first(r["rounds"]), []string{"name", "on"}},
		{"a variant", first(r["variants"]), []string{"current", "name", "number", "on", "poem"}},
		{"a poem left out", first(r["left_out"]), []string{"lines", "title"}},
		{"a kept order", first(r["orders"]), []string{"name", "on"}},
		{"a running order", first(r["readings"]), []string{"name", "on", "slot_s", "total_s"}},
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
	for _, name := range []string{"turnovers", "faults", "page_ends", "proposed_forms", "designs", "decisions", "rounds", "variants", "left_out", "orders", "readings"} {
		if string(r[name]) != "[]" {
			t.Errorf("%q is %s, want []", name, r[name])
		}
	}
}

// TestExtent checks what is made of an extent against the formulas worked by hand
// for bound pages: 64 and 96 pages of 80 gsm, volume 18, are 4.608 and 6.912 mm, or
// at 353 pages an inch 0.1813 and 0.272 in; half a millimetre of glue is added and
// rounded up to half a millimetre.
func TestExtent(t *testing.T) {
	for pages, want := range map[int]extentReport{
		64: {Signatures: 4, SpineMM: 4.608, SpineIn: 0.1813, SpineGluedMM: 5.5, EvenWorking: [3]evenWorking{{8, 0}, {16, 0}, {32, 0}}},
		96: {Signatures: 6, SpineMM: 6.912, SpineIn: 0.272, SpineGluedMM: 7.5, EvenWorking: [3]evenWorking{{8, 0}, {16, 0}, {32, 0}}},
		61: {Signatures: 4, Blanks: 3, SpineMM: 4.608, SpineIn: 0.1813, SpineGluedMM: 5.5, EvenWorking: [3]evenWorking{{8, 3}, {16, 3}, {32, 3}}},
		81: {Signatures: 6, Blanks: 15, SpineMM: 6.912, SpineIn: 0.272, SpineGluedMM: 7.5, EvenWorking: [3]evenWorking{{8, 7}, {16, 15}, {32, 15}}},
		0:  {SpineGluedMM: 0.5, EvenWorking: [3]evenWorking{{8, 0}, {16, 0}, {32, 0}}},
	} {
		want.Pages, want.SignaturePages, want.Paper = pages, 16, extentPaper{paperReport{80, 18}, 353}
		if got := extentOf(pages, pagemodel.DefaultDesign()); got != want {
			t.Errorf("%d pages take %+v, want %+v", pages, got, want)
		}
	}
}

// TestExtentOfAStapledBook: 32 pages of 0.1 mm leaves creep 0.70 mm square and 1.10
// mm round (by geometry); signatures are the design's.
func TestExtentOfAStapledBook(t *testing.T) {
	d := pagemodel.DefaultDesign()
	d.Binding, d.Signature, d.Paper = pagemodel.Stapled, 8, pagemodel.Paper{GSM: 100, Volume: 10}
	got := extentOf(30, d)
	if got.CreepMM == nil || *got.CreepMM != (creepReport{0.7, 1.1}) || got.SpineGluedMM != 0 || got.Signatures != 4 || got.Blanks != 2 {
		t.Errorf("30 pages take %+v, creep %+v", got, got.CreepMM)
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
