package typeset

import (
	"testing"

	"headland/pagemodel"
)

// TestTryInMoreRoom: where only what takes more than one row is set again, every
// poem stands where it stands in the book set from nothing, and the overlong lines
// are set alike; and nothing is ever set on from such a setting.
func TestTryInMoreRoom(t *testing.T) {
	c := smallBook()
	setter := NewSetter(Bundled())
	set := setter.Set(nil, c)
	for name, change := range map[string]func(*pagemodel.Design){
		"set right":  func(d *pagemodel.Design) { d.Turnovers = pagemodel.TurnRight },
		"run out":    func(d *pagemodel.Design) { d.RunOut = pagemodel.Pt(30) },
		"tightened":  func(d *pagemodel.Design) { d.Tighten = 40 },
		"wider":      func(d *pagemodel.Design) { d.Margins.Outer -= pagemodel.MM(9) },
		"smaller":    func(d *pagemodel.Design) { d.Size -= pagemodel.Pt(0.5) },
		"much wider": func(d *pagemodel.Design) { d.Margins.Outer = 0 },
	} {
		d := c.Design()
		change(&d)
		tried, err := set.Try(pagemodel.SetDesign{Design: d})
		if err != nil {
			t.Fatal(err)
		}
		cold := NewSetter(Bundled()).Set(nil, tried.Collection())
		for _, p := range cold.Collection().Poems() {
			now, _ := tried.PageOfPoem(p.ID())
			if want, _ := cold.PageOfPoem(p.ID()); now != want {
				t.Errorf("%s: %s stands on page %d, want %d", name, p.Name(), now, want)
			}
		}
		if tried.Extent() != cold.Extent() || tried.Unsettled() != cold.Unsettled() {
			t.Errorf("%s: %d pages, %d unsettled; want %d, %d", name, tried.Extent(), tried.Unsettled(), cold.Extent(), cold.Unsettled())
		}
		if on := setter.Set(tried, tried.Collection()); on.Extent() != cold.Extent() || on.key != cold.key {
			t.Errorf("%s: setting on from it gives another book", name)
		}
	}
}

// TestTryOfNothing: an edit that changes nothing gives the setting itself, one
// that can't be done says why.
func TestTryOfNothing(t *testing.T) {
	c := smallBook()
	set := NewSetter(Bundled()).Set(nil, c)
	if tried, err := set.Try(pagemodel.SetDesign{Design: c.Design()}); err != nil || tried != set {
		t.Errorf("no change gives another setting, error %v", err)
	}
	if _, err := set.Try(pagemodel.Join{LineRef: pagemodel.LineRef{Poem: 999, Line: 999}}); err == nil {
		t.Error("a line that is not there was joined")
	}
}
