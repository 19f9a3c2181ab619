package ui

import (
	"testing"

	"headland/pagemodel"
)

// TestEveryDesignValueSteps: every value has a next one, in other words, and
// one step back from there is the design before.
func TestEveryDesignValueSteps(t *testing.T) {
	const extent = 80
	names := map[string]bool{}
	for _, g := range designValues(extent, []string{"EB Garamond", "Gentium Book Plus"}) {
		for _, v := range g.values {
			d := pagemodel.DefaultDesign()
			was := v.words(&d)
			v.step(&d, 1)
			if v.words(&d) == was || d.Check() != nil {
				t.Errorf("%s: after %q comes %q, %v", v.name, was, v.words(&d), d.Check())
			}
			v.step(&d, -1)
			if v.words(&d) != was {
				t.Errorf("%s: one on and one back from %q is %q", v.name, was, v.words(&d))
			}
			names[v.name] = true
		}
	}
	if len(names) != 29 {
		t.Errorf("%d values have names of their own, want 29", len(names))
	}
}

// TestStepsAreWhole: a length between two steps goes to the nearer edge of its
// step.
func TestStepsAreWhole(t *testing.T) {
	for _, test := range []struct {
		from float64
		by   int
		want float64
	}{{16.67, 1, 17}, {16.67, -1, 16.5}, {16.5, 1, 17}, {16.5, -1, 16}, {14.33, 1, 14.5}} {
		if got := inMM.stepped(pagemodel.MM(test.from), 0.5, test.by); got != pagemodel.MM(test.want) {
			t.Errorf("%v mm by %d is %.2f mm, want %v", test.from, test.by, got.Millimetres(), test.want)
		}
	}
}

// TestMarginsFollow: margins that come from the binding or the canon are found
// again when the trim or the binding changes; free ones stay.
func TestMarginsFollow(t *testing.T) {
	const extent = 80
	was := pagemodel.DefaultDesign()
	now := was
	now.Binding = pagemodel.Sewn
	if got := followed(was, now, extent).Margins.Inner; got != pagemodel.DefaultInner(pagemodel.Sewn, extent) {
		t.Errorf("sewn, the inner margin is %v", got)
	}
	was.Margins = pagemodel.Canon(was.Trim)
	now = was
	now.Trim, _ = pagemodel.TrimNamed("Demy octavo")
	if got := followed(was, now, extent).Margins; got != pagemodel.Canon(now.Trim) {
		t.Errorf("in demy octavo the canon's margins are %v", got)
	}
	was.Margins.Inner += pagemodel.Point
	now.Margins = was.Margins
	if got := followed(was, now, extent).Margins; got != was.Margins {
		t.Errorf("free margins became %v", got)
	}
}
