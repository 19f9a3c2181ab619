package ui

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2/theme"
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

// TestKeysInMenusCanBeRead works out the ink that the toolkit gives the keys in
// its menus (widget/menu_item.go, shortcutColor: the low bytes of the
// foreground, its alpha times 0.95) and holds it to the contrast of words.
func TestKeysInMenusCanBeRead(t *testing.T) {
	for _, l := range []light{day, lamp} {
		p := l.palette()
		r, g, b, a := newDeskTheme(l).Color(theme.ColorNameForeground, 0).RGBA()
		keys := color.NRGBA{R: uint8(r), G: uint8(g), B: uint8(b), A: uint8(uint32(float32(a) * 0.95))}
		seen := over(keys, p.panel)
		if c := contrast(seen, p.panel); c < 4.5 {
			t.Errorf("%v: the keys in menus have a contrast of %.1f", l, c)
		}
	}
}

// over is an ink laid over an opaque ground.
func over(ink color.NRGBA, ground color.RGBA) color.RGBA {
	mix := func(i, g uint8) uint8 { return uint8((int(i)*int(ink.A) + int(g)*(255-int(ink.A))) / 255) }
	return color.RGBA{mix(ink.R, ground.R), mix(ink.G, ground.G), mix(ink.B, ground.B), 255}
}
