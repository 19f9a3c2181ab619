package command

import (
	"fmt"
	"strings"
	"testing"

	"headland/ui/session"
)

// bread is the first poem, as it comes out of the book of these tests.
const bread = "## Bread\n\nOne loaf on the sill,\nthe other in the oven.\n\nNobody was hungry.\n"

// TestEdits does each edit of a script to a fresh book, and looks at what
// became of the first poem.
func TestEdits(t *testing.T) {
	at := func(stanza, line int, rest string) string {
		return fmt.Sprintf(`"poem":1,"stanza":%d,"line":%d%s}`, stanza, line, rest)
	}
	tests := []struct {
		name, script, old, new string
	}{
		{"break after a word", `{"edit":"break",` + at(1, 1, `,"after":2`), "loaf on", "loaf\non"},
		{"break after a character", `{"edit":"break",` + at(1, 1, `,"at":6,"in":"poem"`), "One loaf", "One lo\naf"},
		{"characters, not bytes", `{"edit":"text",` + at(1, 1, `,"text":"Ünë löaf"`) + "\n" + `{"edit":"break",` + at(1, 1, `,"at":6`), "One loaf on the sill,", "Ünë lö\naf"},
		{"join", `{"edit":"join",` + at(1, 1, ``), "sill,\nthe", "sill, the"},
		{"words down", `{"edit":"words",` + at(1, 1, `,"count":2`), "on the sill,\nthe other", "on\nthe sill, the other"},
		{"words up", `{"edit":"words",` + at(1, 1, `,"count":-1`), "sill,\nthe other", "sill, the\nother"},
		{"indent", `{"edit":"indent",` + at(1, 2, `,"em":2`), "the other", "        the other"},
		{"gap", `{"edit":"gap",` + at(1, 1, `,"after":2,"em":1.5`), "loaf on", "loaf [gap 1.5] on"},
		{"text", `{"edit":"text",` + at(2, 1, `,"text":"All were."`), "Nobody was hungry.", "All were."},
		{"open a stanza", `{"edit":"stanza",` + at(1, 1, `,"open":true`), "sill,\nthe", "sill,\n\nthe"},
		{"close a stanza", `{"edit":"stanza",` + at(1, 2, `,"open":false`), "oven.\n\nNobody", "oven.\nNobody"},
		{"undo", `{"edit":"join",` + at(1, 1, ``) + "\n" + `{"edit":"undo"}`, "", ""},
		{"redo", `{"edit":"join",` + at(1, 1, ``) + "\n{\"edit\":\"undo\"}\n\n{\"edit\":\"redo\"}", "sill,\nthe", "sill, the"},
		{"its number", `{"edit":"text","poem":"#1","stanza":2,"line":1,"text":"All were."}`, "Nobody was hungry.", "All were."},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			file := book(t)
			done(t, test.script, "edit", file, "-")
			want := strings.Replace(bread, test.old, test.new, 1)
			if got := exported(t, file); !strings.HasPrefix(got, want+"\n## Weights") {
				t.Errorf("the first poem is\n%s\nwant\n%s", got[:len(want)], want)
			}
		})
	}
}

// TestSettling sees that what settles a line changes the report and not the
// poem, and that unsettling takes it back.
func TestSettling(t *testing.T) {
	file := book(t)
	text := exported(t, file)
	line := `"poem":"Weights","stanza":1,"line":1`
	for _, test := range []struct{ script, state string }{
		{`{"edit":"keep",` + line + `,"reason":"a breath","turn_after":7}`, "kept"},
		{`{"edit":"unsettle",` + line + `}`, "unsettled"},
		{`{"edit":"break",` + line + `,"after":12,"in":"edition"}`, ""},
		{`{"edit":"join",` + line + `,"in":"edition"}`, "unsettled"},
		{`{"edit":"break",` + line + `,"after":12,"in":"edition"}`, ""},
		{`{"edit":"join",` + line + `,"in":"edition","after":12}`, "unsettled"},
	} {
		done(t, test.script, "edit", file, "-")
		state := ""
		if turnovers := reported(t, file).Turnovers; len(turnovers) > 0 {
			state = turnovers[0].State
		}
		if test.state != "" && state != test.state || test.state == "" && state == "unsettled" {
			t.Errorf("after %s the line is %q", test.script, state)
		}
		if got := exported(t, file); got != text {
			t.Errorf("%s changes the poem:\n%s", test.script, got)
		}
	}
}

func TestMove(t *testing.T) {
	file := book(t)
	titles := func() string {
		var all []string
		for _, e := range reported(t, file).Contents {
			all = append(all, e.Title)
		}
		return strings.Join(all, ", ")
	}
	for _, test := range []struct{ script, want string }{
		{`{"edit":"move","poem":"Weights","before":1}`, "Weights, Bread, Bread, 1984"},
		{`{"edit":"move","poem":"Weights"}`, "Bread, Bread, 1984, Weights"},
		{`{"edit":"move","poem":"1984","before":"#1"}`, "1984, Bread, Bread, Weights"},
		{`{"edit":"undo"}`, "Bread, Bread, 1984, Weights"},
	} {
		done(t, test.script, "edit", file, "-")
		if got := titles(); got != test.want {
			t.Errorf("after %s the order is %s, want %s", test.script, got, test.want)
		}
	}
}

// TestDesign sees that every value of the report's design can be set, alone,
// and that setting what is there changes nothing.
func TestDesign(t *testing.T) {
	file := book(t)
	before := reported(t, file).Design
	tests := []struct {
		value string
		want  func(*designReport)
	}{
		{`"trim_mm":[138,216]`, func(d *designReport) { d.Trim = [2]float64{138, 216}; d.Measure = 291.97 }},
		{`"trim":"Demy octavo"`, func(d *designReport) { d.Trim = [2]float64{138, 216}; d.Measure = 291.97 }},
		{`"binding":"stapled","margins":"binding"`, func(d *designReport) {
			d.Binding, d.Margins.Inner, d.Measure = "stapled", 13, 274.96
		}},
		{`"margins_mm":{"inner":18,"foot":25}`, func(d *designReport) { d.Margins.Inner, d.Margins.Foot, d.Measure = 18, 25, 260.8 }},
		{`"measure_pt":280`, func(d *designReport) { d.Measure, d.Margins.Outer = 280, 14.22 }},
		{`"face":"Gentium Book Plus"`, func(d *designReport) { d.Face = "Gentium Book Plus" }},
		{`"size_pt":10.5,"leading_pt":13.25`, func(d *designReport) { d.Size, d.Leading = 10.5, 13.25 }},
		{`"binding":"sewn"`, func(d *designReport) { d.Binding = "sewn" }},
		{`"turnovers":"set right"`, func(d *designReport) { d.Turnovers = "set right" }},
		{`"stanza_gap":2,"title_row":2,"poem_row":7`, func(d *designReport) { d.StanzaGap, d.TitleRow, d.PoemRow = 2, 2, 7 }},
		{`"run_out_pt":6,"hang_quotes":true`, func(d *designReport) { d.RunOut, d.HangQuotes = 6, true }},
		{`"tighten_percent":20,"edge":"optical"`, func(d *designReport) { d.Tighten, d.Edge = 20, "optical" }},
		{`"titles":"small capitals","title_size_pt":14.5,"title_centred":true`, func(d *designReport) {
			d.Titles, d.TitleSize, d.TitleCentred = "small capitals", 14.5, true
		}},
		{`"folios":"centred","running_heads":"poet and book"`, func(d *designReport) { d.Folios, d.Running = "centred", "poet and book" }},
		{`"prose":"justified","hidden_breaks":"a sign","sections_open":true`, func(d *designReport) {
			d.Prose, d.Hidden, d.SectionsOpen = "justified", "a sign", true
		}},
		{`"signature":8,"paper":{"gsm":100}`, func(d *designReport) { d.Signature, d.Paper.GSM = 8, 100 }},
	}
	for _, test := range tests {
		want := before
		test.want(&want)
		done(t, `{"edit":"design",`+test.value+`}`, "edit", file, "-")
		got := reported(t, file).Design
		if near(got.Measure, want.Measure) {
			got.Measure = want.Measure
		}
		if near(got.Margins.Outer, want.Margins.Outer) {
			got.Margins.Outer = want.Margins.Outer
		}
		if got != want {
			t.Errorf("%s makes the design\n%+v, want\n%+v", test.value, got, want)
		}
		done(t, `{"edit":"undo"}`, "edit", file, "-")
	}
}

func near(a, b float64) bool { return a-b < 0.05 && b-a < 0.05 }

// TestScriptStops sees that a script stops at the first line that can't be done
// and says which, that what was before it is done, and that it says why.
func TestScriptStops(t *testing.T) {
	good := `{"edit":"text","poem":1,"stanza":2,"line":1,"text":"All were."}` + "\n\n"
	line := `"poem":2,"stanza":1,"line":1`
	tests := []struct {
		bad  string
		want []string
	}{
		{`{"edit":"brake",` + line + `}`, []string{`no edit "brake"`, "break, join"}},
		{`{"edit":"break",` + line + `,"after":7,"word":7}`, []string{`"break" takes no field "word"`, "after, at, in"}},
		{`{"edit":"break",` + line + `,"After":7}`, []string{`no field "After"`}},
		{`{"edit":"undo","times":2}`, []string{`"undo" takes no field "times"`}},
		{`{"edit":"break",` + line + `}`, []string{`either "after", in words, or "at"`}},
		{`{"edit":"break",` + line + `,"after":1,"at":3}`, []string{`either "after"`}},
		{`{"edit":"break",` + line + `,"after":17}`, []string{long, "17 words", "from 1 to 16"}},
		{`{"edit":"break",` + line + `,"at":0}`, []string{"92 characters", "from 1 to 91"}},
		{`{"edit":"break",` + line + `,"after":1,"in":"book"}`, []string{`"in" must be "poem" or "edition"`, `"book"`}},
		{`{"edit":"break",` + line + `,"after":1.5}`, []string{`"after" must be a whole number`, "1.5"}},
		{`{"edit":"join",` + line + `,"after":2}`, []string{`only in the edition`}},
		{`{"edit":"join",` + line + `,"in":"edition"}`, []string{"no break there"}},
		{`{"edit":"join","poem":1,"stanza":1,"line":2}`, []string{"the other in the oven.", "ends its stanza"}},
		{`{"edit":"words",` + line + `}`, []string{`"words" needs "count"`}},
		{`{"edit":"words",` + line + `,"count":40}`, []string{"17 words"}},
		{`{"edit":"indent",` + line + `,"em":1e9}`, []string{"too much"}},
		{`{"edit":"indent",` + line + `,"em":-1}`, []string{"indented"}},
		{`{"edit":"text",` + line + `,"text":null}`, []string{`"text" must be words`}},
		{`{"edit":"text",` + line + `,"text":"a\nb"}`, []string{"end of a line"}},
		{`{"edit":"stanza",` + line + `}`, []string{`needs "open"`}},
		{`{"edit":"break","stanza":1,"line":1,"after":1}`, []string{`needs "poem"`}},
		{`{"edit":"break","poem":2,"line":1,"after":1}`, []string{`needs "stanza"`}},
		{`{"edit":"break","poem":2,"stanza":3,"line":1,"after":1}`, []string{"Weights has 1 stanza", "no stanza 3"}},
		{`{"edit":"break","poem":2,"stanza":1,"line":9,"after":1}`, []string{"has 2 lines", "no line 9"}},
		{`{"edit":"break","poem":9,"stanza":1,"line":1,"after":1}`, []string{"no poem 9", "the book has 4"}},
		{`{"edit":"break","poem":"Bread","stanza":1,"line":1,"after":1}`, []string{"2 poems", "#1, #3"}},
		{`{"edit":"break","poem":"Water","stanza":1,"line":1,"after":1}`, []string{`"Water"`, "title or its number"}},
		{`{"edit":"break","poem":true,"stanza":1,"line":1,"after":1}`, []string{`"poem" must be`}},
		{`{"edit":"move","poem":1,"before":"Water"}`, []string{`"Water"`}},
		{`{"edit":"design","trim_mm":[129]}`, []string{"width and height"}},
		{`{"edit":"design","trim":"Elephant"}`, []string{"Elephant", "B-format"}},
		{`{"edit":"design","margins":"golden"}`, []string{"golden", "canon or binding"}},
		{`{"edit":"design","trim_mm":[1,2]}`, []string{"1 by 2 mm", "choose"}},
		{`{"edit":"design","margins_mm":{"left":3}}`, []string{`"margins_mm" takes no field "left"`}},
		{`{"edit":"design","measure_pt":200,"margins_mm":{"outer":3}}`, []string{"leave out one"}},
		{`{"edit":"design","face":"Comic Relief"}`, []string{"Comic Relief", "EB Garamond"}},
		{`{"edit":"design","binding":"glued"}`, []string{"glued", "sewn"}},
		{`{"edit":"design","size_pt":1}`, []string{"4pt to 72pt"}},
		{`{"edit":"redo"}`, []string{"nothing to redo"}},
		{`{"poem":1}`, []string{"says what it does"}},
		{`["undo"]`, []string{"says what it does"}},
		{`{"edit":"undo"`, []string{"no JSON object"}},
		{`{"edit":"undo"} {"edit":"undo"}`, []string{"a line of its own"}},
		{`{"edit":"undo","edit":"redo"}`, []string{`"edit" stands there twice`}},
		{`break it`, []string{"no JSON object"}},
	}
	file := book(t)
	original := exported(t, file)
	for _, test := range tests {
		script := good + test.bad + "\n" + `{"edit":"text","poem":1,"stanza":2,"line":1,"text":"Too far."}`
		r := run(t, script, "edit", file, "-")
		if r.status != CouldNot || r.out != "" {
			t.Errorf("%s: status %d, printed %q", test.bad, r.status, r.out)
		}
		for _, want := range append(test.want, "the input, line 3: ", "The edit before it is done") {
			if !strings.Contains(r.errs, want) {
				t.Errorf("%s\nsays %s\nwant %q in it", test.bad, r.errs, want)
			}
		}
		if got := exported(t, file); got != strings.Replace(original, "Nobody was hungry.", "All were.", 1) {
			t.Errorf("after %s the text is\n%s", test.bad, got)
		}
		done(t, `{"edit":"undo"}`, "edit", file, "-")
	}
}

// TestScriptFile sees that a script is read from a file too, and named by it.
func TestScriptFile(t *testing.T) {
	file := book(t)
	script := write(t, t.TempDir(), "script.jsonl", "\ufeff"+`{"edit":"join","poem":1,"stanza":1,"line":1}`+"\r\n"+`{"edit":"redo"}`)
	r := run(t, "", "edit", file, script)
	if r.status != CouldNot || !strings.Contains(r.errs, script+", line 2: ") {
		t.Errorf("status %d: %s", r.status, r.errs)
	}
	if got := exported(t, file); !strings.Contains(got, "sill, the other") {
		t.Errorf("the first edit is not done:\n%s", got)
	}
}

// TestOpenElsewhere sees that a collection that is open in a window can be
// reported on and not edited.
func TestOpenElsewhere(t *testing.T) {
	file := book(t)
	window, err := session.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, `{"edit":"join","poem":1,"stanza":1,"line":1}`, "edit", file, "-")
	if r.status != CouldNot || !strings.Contains(r.errs, "another window") || !strings.Contains(r.errs, "Nothing was done") {
		t.Errorf("edit: status %d: %s", r.status, r.errs)
	}
	done(t, "", "report", file)
	if err := window.Close(); err != nil {
		t.Error(err)
	}
	done(t, `{"edit":"join","poem":1,"stanza":1,"line":1}`, "edit", file, "-")
}

// TestCanonByScript: on a trim of 120 by 180 mm the canon of page construction
// gives 13.33, 26.67, 20 and 40 mm (arithmetic from its ninths), and a margin
// that is said as well is the last word.
func TestCanonByScript(t *testing.T) {
	file := book(t)
	done(t, `{"edit":"design","trim_mm":[120,180],"margins":"canon","margins_mm":{"foot":30}}`, "edit", file, "-")
	got := reported(t, file).Design.Margins
	for name, pair := range map[string][2]float64{
		"inner": {got.Inner, 13.333}, "outer": {got.Outer, 26.667}, "head": {got.Head, 20}, "foot": {got.Foot, 30},
	} {
		if d := pair[0] - pair[1]; d > 0.02 || d < -0.02 {
			t.Errorf("the %s margin is %.3f mm, want %.3f", name, pair[0], pair[1])
		}
	}
}
