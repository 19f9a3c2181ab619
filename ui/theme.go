package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"headland/assets"
)

// deskTheme dresses the toolkit's own things, menus and dialogs, in the desk's
// colours and its face.
type deskTheme struct {
	light light
	fonts map[bool]fyne.Resource // by whether italic
	bold  fyne.Resource
}

func newDeskTheme(l light) *deskTheme {
	t := &deskTheme{light: l, fonts: map[bool]fyne.Resource{}}
	for _, italic := range [...]bool{false, true} {
		if data, ok := assets.FaceBytes(assets.EBGaramond, false, italic); ok {
			t.fonts[italic] = fyne.NewStaticResource("desk.otf", data)
		}
	}
	if data, ok := assets.FaceBytes(assets.EBGaramond, true, false); ok {
		t.bold = fyne.NewStaticResource("desk-bold.otf", data)
	}
	return t
}

// Color is a colour of the desk's palette for one of the toolkit's names.
func (t *deskTheme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	p := t.light.palette()
	switch name {
	case theme.ColorNameBackground:
		return windowGround{p.desk}
	case theme.ColorNameHeaderBackground:
		return p.desk
	case theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground, theme.ColorNameInputBackground,
		theme.ColorNameButton, theme.ColorNameDisabledButton, theme.ColorNameForegroundOnPrimary:
		return p.panel
	case theme.ColorNameForeground:
		return menuInk{p.panelInk}
	case theme.ColorNamePrimary, theme.ColorNameHyperlink:
		return p.panelInk
	case theme.ColorNamePlaceHolder, theme.ColorNameDisabled:
		return p.panelAside
	case theme.ColorNameHover, theme.ColorNameFocus, theme.ColorNameSelection, theme.ColorNamePressed:
		return p.wash
	case theme.ColorNameInputBorder, theme.ColorNameSeparator, theme.ColorNameScrollBar:
		return p.panelLine
	case theme.ColorNameShadow:
		return color.RGBA{}
	case theme.ColorNameError:
		return p.deskMark
	}
	return theme.DefaultTheme().Color(name, t.variant())
}

// windowGround is the colour that the toolkit clears the window with. It takes
// 255 times 255 for the most that a part of a colour can be, where it is 65535:
// given as that, opacity too, the desk's ground is the same as in the pictures on
// it.
type windowGround struct{ exact color.RGBA }

// RGBA is the colour, each part of 255 as so many times 255.
func (c windowGround) RGBA() (r, g, b, a uint32) {
	return uint32(c.exact.R) * 255, uint32(c.exact.G) * 255, uint32(c.exact.B) * 255, 255 * 255
}

// menuInk is the ink of the toolkit's words. The toolkit inks the keys in its
// menus with the low byte of 0.95 of this ink's alpha, which for a full ink is
// far too faint; with this alpha it is 0xCC, and the words themselves lose
// nothing that can be seen.
type menuInk struct{ full color.RGBA }

const menuInkAlpha = 0xF2F2

// RGBA is the ink, not quite opaque.
func (c menuInk) RGBA() (r, g, b, a uint32) {
	r, g, b, _ = c.full.RGBA()
	return r, g, b, menuInkAlpha
}

func (t *deskTheme) variant() fyne.ThemeVariant {
	if t.light == lamp {
		return theme.VariantDark
	}
	return theme.VariantLight
}

// Font is the desk's face; the toolkit's own where a style is lacking.
func (t *deskTheme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol || style.Monospace:
		return theme.DefaultTheme().Font(style)
	case style.Bold && t.bold != nil:
		return t.bold
	case t.fonts[style.Italic] != nil:
		return t.fonts[style.Italic]
	}
	return theme.DefaultTheme().Font(style)
}

// Icon is the toolkit's.
func (t *deskTheme) Icon(name fyne.ThemeIconName) fyne.Resource {
	return theme.DefaultTheme().Icon(name)
}

// Size is the toolkit's, but for type of a book's size and square corners.
func (t *deskTheme) Size(name fyne.ThemeSizeName) float32 {
	switch name {
	case theme.SizeNameText:
		return 16
	case theme.SizeNameHeadingText:
		return 22
	case theme.SizeNameInputRadius, theme.SizeNameSelectionRadius:
		return 0
	}
	return theme.DefaultTheme().Size(name)
}
