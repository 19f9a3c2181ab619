package typeset

import (
	"reflect"
	"strings"
	"testing"

	"headland/pagemodel"
)

// TestTakenOver: what a line's setting owes to the lines beside it is set anew when
// those change: where a dropped line begins, whether a turnover set right passes
// over the line below, how deep a turnover is indented.
func TestTakenOver(t *testing.T) {
	right := testDesign()
	right.Turnovers = pagemodel.TurnRight
	wide := strings.Repeat("a wide line ", 4)
	for _, tc := range []struct {
		name string
		d    pagemodel.Design
		text string
		drop int // the line that is dropped, from 0
		line int // the line that is edited
		edit func(pagemodel.LineRef) pagemodel.Edit
	}{
		{"dropped", testDesign(), "a line\nanother", 1, 0, retyped("a longer line")},
		{"dropped, above it a stanza", testDesign(), "a line\n\nanother", 1, 0, retyped("a longer line")},
		{"set right, the line below shorter", right, overlongLine + "\n" + wide, -1, 1, retyped("short")},
		{"set right, the line below longer", right, overlongLine + "\nshort", -1, 1, retyped(wide)},
		{"the deepest indent", testDesign(), overlongLine + "\nshort", -1, 1, func(ref pagemodel.LineRef) pagemodel.Edit {
			return pagemodel.Indent{LineRef: ref, To: pagemodel.Ems(3)}
		}},
		{"broken in the poem", testDesign(), "a line of words that is broken\nanother", -1, 0, func(ref pagemodel.LineRef) pagemodel.Edit {
			return pagemodel.Break{LineRef: ref, At: 7}
		}},
	} {
		c := poemOf(tc.d, "", tc.text)
		var refs []pagemodel.LineRef
		for _, l := range c.Order()[0].Poem.Lines() {
			refs = append(refs, pagemodel.LineRef{Poem: c.Order()[0].Poem.ID(), Line: l.ID()})
		}
		if tc.drop >= 0 {
			c = mustApply(t, c, pagemodel.Drop{LineRef: refs[tc.drop], Dropped: true})
		}
		faces := Bundled()
		setter := NewSetter(faces)
		before := setter.Set(nil, c)
		next := mustApply(t, c, tc.edit(refs[tc.line]))
		warm, cold := setter.Set(before, next).Page(1), NewSetter(faces).Set(nil, next).Page(1)
		if !reflect.DeepEqual(warm, cold) {
			t.Errorf("%s: set on it is\n%s\nset afresh\n%s", tc.name, describe(warm), describe(cold))
		}
	}
}

func retyped(text string) func(pagemodel.LineRef) pagemodel.Edit {
	return func(ref pagemodel.LineRef) pagemodel.Edit { return pagemodel.Retype{LineRef: ref, Text: text} }
}
