package ui

import (
	"image/color"
	"testing"
)

// pairing is a colour and what it stands on.
type pairing struct {
	name     string
	over, on color.RGBA
	least    float64
}

func pairings(p *palette) []pairing {
	const words, marks = 4.5, 3
	return []pairing{
		{"words on the desk", p.words, p.desk, words},
		{"quiet words on the desk", p.quiet, p.desk, words},
		{"ticks on the desk", p.deskMark, p.desk, marks},
		{"lines between leaves", p.edgeLine, p.edge, marks},
		{"verse on paper", p.ink, p.paper, words},
		{"verse in the fold", p.ink, p.fold, words},
		{"quiet words on paper", p.aside, p.paper, words},
		{"hairlines on paper", p.hairline, p.paper, marks},
		{"proof marks on paper", p.mark, p.paper, words},
		{"words on a panel", p.panelInk, p.panel, words},
		{"quiet words on a panel", p.panelAside, p.panel, words},
		{"hairlines on a panel", p.panelLine, p.panel, marks},
		{"words on a wash", p.panelInk, p.wash, words},
		{"quiet words on a wash", p.panelAside, p.wash, words},
	}
}

// TestContrast: words keep 4.5:1 and marks and hairlines 3:1 against what they
// stand on, in both lights.
func TestContrast(t *testing.T) {
	for _, l := range []light{day, lamp} {
		for _, pair := range pairings(l.palette()) {
			if got := contrast(pair.over, pair.on); got < pair.least {
				t.Errorf("%v: %s: contrast %.2f, want at least %.1f", l, pair.name, got, pair.least)
			}
		}
	}
}
