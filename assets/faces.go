package assets

import (
	_ "embed"
	"slices"
)

// A Face names one book face that the program carries with it.
type Face struct {
	// Family is the name that a design asks for, such as "EB Garamond".
	Family string

	// Style is "Regular", "Italic", "Bold" or "Bold Italic".
	Style string

	// File is the file's own name in assets/faces, without a folder. It ends
	// in ".otf" where the outlines are CFF and in ".ttf" where they are
	// TrueType.
	File string
}

// The families, spelled as a design spells them.
const (
	// EBGaramond has a roman and an italic. (Its unfinished bold is left out:
	// it has no small capitals, and the Go port of HarfBuzz can not read its
	// kerning.)
	EBGaramond = "EB Garamond"

	// GentiumBookPlus has all four styles.
	GentiumBookPlus = "Gentium Book Plus"
)

// The four styles a family may have.
const (
	styleRegular    = "Regular"
	styleItalic     = "Italic"
	styleBold       = "Bold"
	styleBoldItalic = "Bold Italic"
)

var (
	//go:embed faces/EBGaramond12-Regular.otf
	ebGaramondRegular []byte

	//go:embed faces/EBGaramond12-Italic.otf
	ebGaramondItalic []byte

	//go:embed faces/GentiumBookPlus-Regular.ttf
	gentiumRegular []byte

	//go:embed faces/GentiumBookPlus-Italic.ttf
	gentiumItalic []byte

	//go:embed faces/GentiumBookPlus-Bold.ttf
	gentiumBold []byte

	//go:embed faces/GentiumBookPlus-BoldItalic.ttf
	gentiumBoldItalic []byte
)

// carried pairs a face with its embedded file.
type carried struct {
	Face
	bytes []byte
}

// shelf holds every face, families in the order in which they are offered.
var shelf = []carried{
	{Face{EBGaramond, styleRegular, "EBGaramond12-Regular.otf"}, ebGaramondRegular},
	{Face{EBGaramond, styleItalic, "EBGaramond12-Italic.otf"}, ebGaramondItalic},
	{Face{GentiumBookPlus, styleRegular, "GentiumBookPlus-Regular.ttf"}, gentiumRegular},
	{Face{GentiumBookPlus, styleItalic, "GentiumBookPlus-Italic.ttf"}, gentiumItalic},
	{Face{GentiumBookPlus, styleBold, "GentiumBookPlus-Bold.ttf"}, gentiumBold},
	{Face{GentiumBookPlus, styleBoldItalic, "GentiumBookPlus-BoldItalic.ttf"}, gentiumBoldItalic},
}

// Faces lists every face carried, family by family, regular first. The list is
// the caller's to keep and change.
func Faces() []Face {
	faces := make([]Face, len(shelf))
	for i, c := range shelf {
		faces[i] = c.Face
	}
	return faces
}

// Families lists the families carried, in the order in which they are offered,
// each once. The list is the caller's to keep and change.
func Families() []string {
	var families []string
	for _, c := range shelf {
		if !slices.Contains(families, c.Family) {
			families = append(families, c.Family)
		}
	}
	return families
}

// FaceBytes returns the font file of a family in the style asked for, and
// whether there is one. It never puts another style in its place: EB Garamond
// in bold italic is nil and false, and what then happens is the caller's to
// decide. The bytes belong to this package and must not be written to; every
// call returns the same ones, and any goroutine may ask.
func FaceBytes(family string, bold, italic bool) ([]byte, bool) {
	style := styleName(bold, italic)
	for _, c := range shelf {
		if c.Family == family && c.Style == style {
			return c.bytes, true
		}
	}
	return nil, false
}

// styleName is the style that bold and italic together ask for.
func styleName(bold, italic bool) string {
	switch {
	case bold && italic:
		return styleBoldItalic
	case bold:
		return styleBold
	case italic:
		return styleItalic
	}
	return styleRegular
}
