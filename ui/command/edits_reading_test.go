package command

import (
	"slices"
	"testing"

	"headland/pagemodel"
	"headland/ui/session"
)

// collectionOf is what a file holds.
func collectionOf(t *testing.T, file string) *pagemodel.Collection {
	t.Helper()
	s, err := session.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	c := s.Collection()
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	return c
}

// TestReadingEdits makes a running order, changes one thing of it at a time, and
// sees that the rest stays; and throws it away.
func TestReadingEdits(t *testing.T) {
	file := book(t)
	done(t, thursday, "edit", file, "-")
	want := collectionOf(t, file).Readings()[0]
	for _, step := range []struct {
		script string
		change func(*pagemodel.Reading)
	}{
		{`{"edit":"reading","name":"thursday","slot_s":0}`, func(r *pagemodel.Reading) { r.Slot = 0 }},
		{`{"edit":"reading","name":"Thursday","on":""}`, func(r *pagemodel.Reading) { r.On = "" }},
		{`{"edit":"reading","name":"Thursday","occasion":"the mill"}`, func(r *pagemodel.Reading) { r.Occasion = "the mill" }},
		{`{"edit":"reading","name":"Thursday","to":"Friday"}`, func(r *pagemodel.Reading) { r.Name = "Friday" }},
		{`{"edit":"reading","name":"Friday","items":[]}`, func(r *pagemodel.Reading) { r.Items = nil }},
	} {
		done(t, step.script, "edit", file, "-")
		step.change(&want)
		got := collectionOf(t, file).Readings()
		if len(got) != 1 || got[0].ID != want.ID || got[0].Name != want.Name || got[0].Occasion != want.Occasion || got[0].On != want.On ||
			got[0].Slot != want.Slot || len(got[0].Items) != len(want.Items) {
			t.Errorf("after %s there is %+v, want %+v", step.script, got, want)
		}
	}
	done(t, `{"edit":"drop-reading","name":"friday"}`, "edit", file, "-")
	if got := collectionOf(t, file).Readings(); len(got) != 0 {
		t.Errorf("dropped, there is still %+v", got)
	}
}

// TestSaid sees that words that are read otherwise are found by their count and by
// a character, without the signs about them, in poems of the book and elsewhere, and
// in a poem that is left out.
func TestSaid(t *testing.T) {
	file := book(t)
	done(t, "", "edit", file, write(t, t.TempDir(), "s.jsonl", `{"edit":"leave-out","poem":"1984"}`+"\n"+
		`{"edit":"reading","name":"Thursday","items":[{"poem":1,"said":[{"stanza":1,"line":1,"word":5,"as":"cill"},{"stanza":2,"line":1,"at":8,"as":"is"}]},`+
		`{"poem":"1984","said":[{"stanza":1,"line":1,"word":2,"as":"night"}]},`+
		`{"text":["Ünder","","the “peel”, hot"],"said":[{"stanza":2,"line":1,"word":2,"as":"paddle"}]}]}`))
	var got []pagemodel.Saying
	for _, item := range collectionOf(t, file).Readings()[0].Items {
		for _, s := range item.Said {
			s.Line = 0
			got = append(got, s)
		}
	}
	want := []pagemodel.Saying{
		{At: len("One loaf on the "), Word: "sill", As: "cill"}, {At: len("Nobody "), Word: "was", As: "is"}, {At: len("A "), Word: "year", As: "night"},
		{At: len("Ünder\n\nthe “"), Word: "peel", As: "paddle"},
	}
	if !slices.Equal(got, want) {
		t.Errorf("the words are\n%+v, want\n%+v", got, want)
	}
}

// TestVoice sets each constant alone, and goes back to the usual voice.
func TestVoice(t *testing.T) {
	file := book(t)
	want := pagemodel.UsualVoice()
	for _, step := range []struct {
		script string
		change func(*pagemodel.Voice)
	}{
		{`"syllables":120`, func(v *pagemodel.Voice) { v.Syllables = 120 }},
		{`"line_end_s":0.5,"run_on_s":0.1`, func(v *pagemodel.Voice) { v.LineEnd, v.RunOn = 0.5, 0.1 }},
		{`"stanza_s":2`, func(v *pagemodel.Voice) { v.Stanza = 2 }},
		{`"title_s":4,"words":100`, func(v *pagemodel.Voice) { v.Title, v.Words = 4, 100 }},
		{`"usual":true`, func(v *pagemodel.Voice) { *v = pagemodel.UsualVoice() }},
	} {
		done(t, `{"edit":"voice",`+step.script+`}`, "edit", file, "-")
		step.change(&want)
		if got := voiceOf(t, file); got != want {
			t.Errorf("after %s the voice is %+v, want %+v", step.script, got, want)
		}
	}
}

// TestReadingRefused goes through what can be wrong with edits about orders,
// readings, the voice and echoes.
func TestReadingRefused(t *testing.T) {
	reading := func(rest string) string { return `{"edit":"reading","name":"Thursday",` + rest + `}` }
	item := func(rest string) string { return reading(`"items":[{"poem":1},{` + rest + `}]`) }
	refuseAll(t, []struct {
		bad  string
		want []string
	}{
		{`{"edit":"move","poem":1,"through":3,"before":2}`, []string{`"before" names one of the poems`, "outside of them"}},
		{`{"edit":"move","poem":3,"through":1}`, []string{"name the upper poem first"}},
		{`{"edit":"move-section","section":"Night"}`, []string{"no section in the book"}},
		{`{"edit":"move-section"}`, []string{`needs "section"`}},
		{`{"edit":"leave-out"}`, []string{`needs "poem"`}},
		{`{"edit":"put-back","poem":"Bread"}`, []string{"no poem is left out"}},
		{`{"edit":"keep-order"}`, []string{`needs "name"`}},
		{`{"edit":"use-order","name":"short"}`, []string{"no order is kept yet"}},
		{`{"edit":"drop-order","name":"short"}`, []string{"no order is kept yet"}},
		{`{"edit":"echo","words":["loaf"]}`, []string{`needs "name"`}},
		{`{"edit":"echo","name":"ovens"}`, []string{"something to mark", "words, poems, lines", `"off":true`}},
		{`{"edit":"echo","name":"ovens","off":true}`, []string{`"ovens"`, "nothing is marked"}},
		{`{"edit":"echo","name":"ovens","off":true,"words":["oven"]}`, []string{"something to mark"}},
		{`{"edit":"echo","name":"ovens","words":[]}`, []string{"nothing is left to mark"}},
		{`{"edit":"echo","name":"ovens","poems":["Water"]}`, []string{`"Water"`}},
		{`{"edit":"echo","name":"ovens","lines":[{"poem":1,"stanza":1,"line":1},{"poem":1,"stanza":1,"line":9}]}`, []string{"line 2: ", "no line 9"}},
		{`{"edit":"echo","name":"ovens","lines":[7]}`, []string{`"lines" must be a list of lines`, "7"}},
		{reading(`"to":"Friday"`), []string{"no running order yet"}},
		{reading(`"on":"Thursday"`), []string{`"on" is "Thursday"`, "2026-03-05"}},
		{reading(`"slot_s":-1`), []string{"-1 seconds", "0, for no limit"}},
		{reading(`"slot_s":1.5`), []string{`"slot_s" must be a whole number`}},
		{reading(`"items":{}`), []string{`"items" must be a list of objects`}},
		{reading(`"items":[1]`), []string{`"items" must be a list of objects`, "holds 1"}},
		{item(``), []string{"nothing in it"}},
		{item(`"poems":2`), []string{"item 2: ", `takes no field "poems"`, "talk_s"}},
		{item(`"poem":9`), []string{"item 2: ", "no poem 9"}},
		{item(`"poem":1,"title":"Mine"`), []string{"a poem from elsewhere"}},
		{item(`"title":"Mine","from":{"stanza":1,"line":1}`), []string{`"from" and "to" are for lines of a poem`}},
		{item(`"poem":1,"from":{"stanza":1}`), []string{`"from" must be a stanza and a line`}},
		{item(`"poem":1,"from":{"stanza":2,"line":1},"to":{"stanza":1,"line":1}`), []string{`"to" stands above "from"`}},
		{item(`"poem":1,"talk_s":-3`), []string{"-3 seconds"}},
		{item(`"poem":1,"said":[{"stanza":1,"line":1,"as":"x"}]`), []string{"item 2: ", "said 1: ", `either "word"`}},
		{item(`"poem":1,"said":[{"stanza":1,"line":1,"word":6,"as":"x"}]`), []string{"no such word", "One loaf on the sill,", "5 words"}},
		{item(`"poem":1,"said":[{"stanza":1,"line":1,"at":21,"as":"x"}]`), []string{"no such word", "21 characters"}},
		{item(`"poem":1,"said":[{"stanza":4,"line":1,"word":1,"as":"x"}]`), []string{"no line 1 of a stanza 4"}},
		{item(`"poem":1,"said":[{"stanza":1,"line":1,"word":1,"as":" "}]`), []string{`"as" says nothing`}},
		{`{"edit":"reading"}`, []string{`needs "name"`}},
		{`{"edit":"drop-reading","name":"Friday"}`, []string{"no running order yet"}},
		{`{"edit":"voice"}`, []string{"something to change", "syllables, line_end_s"}},
		{`{"edit":"voice","usual":true,"words":100}`, []string{"either something to change"}},
		{`{"edit":"voice","syllables":5}`, []string{"5 syllables", "from 30 to 1000"}},
		{`{"edit":"voice","title_s":-1}`, []string{"-1 seconds", "0 to 60"}},
		{`{"edit":"fit-voice"}`, []string{"nothing was timed", "run through"}},
	})
}

// TestSectionsRefused: what can be wrong where the book has sections, and poems that
// are left out.
func TestSectionsRefused(t *testing.T) {
	file := inParts(t)
	done(t, `{"edit":"leave-out","poem":"Till"}`, "edit", file, "-")
	for script, want := range map[string][]string{
		`{"edit":"move","poem":"Prelude","through":"Crust"}`:     {"a section begins between Prelude and Crust"},
		`{"edit":"leave-out","poem":"Crust","through":"Crumbs"}`: {"a section begins between"},
		`{"edit":"move-section","section":"Dusk"}`:               {"no section Dusk", "Night, Day"},
		`{"edit":"move-section","section":3}`:                    {"no section #3"},
		`{"edit":"put-back","poem":"Crumbs"}`:                    {`"Crumbs"`, "is left out", "Till"},
		`{"edit":"put-back","poem":"Till","before":"Till"}`:      {`"Till"`},
	} {
		wrongly(t, CouldNot, append(want, "line 1: "), script, "edit", file, "-")
	}
}
