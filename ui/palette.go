package ui

import (
	"image/color"
	"math"
)

// light is one of the two lights that the desk can stand in.
type light int

const (
	day light = iota
	lamp
)

// String is the light's name, as the settings keep it.
func (l light) String() string {
	if l == lamp {
		return "lamp"
	}
	return "day"
}

// palette is every colour on the desk in one light. The page stays paper.
type palette struct {
	desk       color.RGBA // the ground
	words      color.RGBA // words on the desk
	quiet      color.RGBA // words on the desk that may be passed over
	deskMark   color.RGBA // ticks of what is unsettled or faulty
	edge       color.RGBA // the leaves, seen from the fore-edge
	edgeLine   color.RGBA // between one leaf and the next
	paper      color.RGBA // the page
	fold       color.RGBA // the page where it runs down into the gutter
	ink        color.RGBA // verse, and words on paper
	aside      color.RGBA // words on paper that may be passed over
	hairline   color.RGBA // rules, scales and hatching on paper
	mark       color.RGBA // a proof mark on paper
	panel      color.RGBA // the ground of menus, and of what is laid over the desk to ask
	panelInk   color.RGBA // words on it
	panelAside color.RGBA // words on it that may be passed over
	panelLine  color.RGBA // its hairlines
	wash       color.RGBA // behind the chosen row of a list
}

func rgb(hex uint32) color.RGBA {
	return color.RGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 0xFF}
}

var palettes = [...]palette{
	day: {
		desk: rgb(0xD8D1C5), words: rgb(0x1F1B17), quiet: rgb(0x554D43),
		deskMark: rgb(0x9A2E22), edge: rgb(0xF3EDE1), edgeLine: rgb(0x8C8375),
		paper: rgb(0xFCF9F2), fold: rgb(0xEFE9DD), ink: rgb(0x1C1A17), aside: rgb(0x625A4E), hairline: rgb(0x918A7D),
		mark: rgb(0x9A2E22), panel: rgb(0xF6F1E7), panelInk: rgb(0x1C1A17), panelAside: rgb(0x625A4E), panelLine: rgb(0x8A8275), wash: rgb(0xE4DBCB),
	},
	lamp: {
		desk: rgb(0x262320), words: rgb(0xE8DFCE), quiet: rgb(0xAEA495),
		deskMark: rgb(0xE07B62), edge: rgb(0xC9C0AF), edgeLine: rgb(0x5A5249),
		paper: rgb(0xF2EBDC), fold: rgb(0xE2D9C7), ink: rgb(0x1C1A17), aside: rgb(0x5C5448), hairline: rgb(0x867D6F),
		mark: rgb(0x8F2A1F), panel: rgb(0x322E2A), panelInk: rgb(0xE8DFCE), panelAside: rgb(0xB5AB9C), panelLine: rgb(0x938879), wash: rgb(0x453F38),
	},
}

// palette is the colours of a light.
func (l light) palette() *palette { return &palettes[l] }

// contrast is how far apart two colours are, from 1 to 21 (WCAG 2.2, relative
// luminance).
func contrast(a, b color.RGBA) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(c color.RGBA) float64 {
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

func linear(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.04045 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}
