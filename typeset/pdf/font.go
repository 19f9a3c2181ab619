package pdf

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// A face is one font of the document, while its pages are being written.
type face struct {
	font []byte
	metrics
	codes
	object ref  // the Type0 font that pages refer to
	subset bool // whether the maker lets it travel as a subset
}

// newFace reads the font and reserves its object.
func newFace(f *file, font []byte) (*face, error) {
	m, err := readMetrics(font)
	if err != nil {
		return nil, err
	}
	subset, err := m.checkRights()
	if err != nil {
		return nil, err
	}
	return &face{font: font, metrics: *m, codes: codes{number: map[pair]int{}}, object: f.reserve(), subset: subset}, nil
}

// code gives a glyph with its text the code that shows it.
func (fc *face) code(glyph uint32, text string) (int, error) {
	if int(glyph) >= fc.glyphCount {
		return 0, fmt.Errorf("the face %s has no glyph %d; set the pages again with the face that is in the book", fc.name, glyph)
	}
	return fc.of(pair{glyph, text})
}

// writeFace writes the font's objects (ISO 9.7.6): the composite font, the
// font of glyphs under it, its descriptor and program, and the two CMaps.
func (f *file) writeFace(fc *face, s *Subsetter) error {
	e, err := fc.embed(s)
	if err != nil {
		return err
	}
	cmapName := "Headland-" + subsetTag(e.program)[:6]
	encoding := f.addStream(fmt.Sprintf("/Type /CMap /CMapName /%s /CIDSystemInfo %s ", cmapName, identity),
		fc.encoding(cmapName, e.cid))
	unicode := f.addStream("", fc.toUnicode(cmapName+"-Text"))
	glyphs := f.add(fc.cidFont(e, f.add(fc.descriptor(e, f.addProgram(fc, e)))))
	f.put(fc.object, fmt.Sprintf("<< /Type /Font /Subtype /Type0 /BaseFont %s /Encoding %v /DescendantFonts [%v] /ToUnicode %v >>",
		name(e.name), encoding, glyphs, unicode))
	return nil
}

// identity is the character collection of fonts whose CIDs mean nothing
// outside the font.
const identity = "<< /Registry (Adobe) /Ordering (Identity) /Supplement 0 >>"

// addProgram writes the font program: TrueType as it is, of an OpenType font
// only the CFF table (ISO table 126).
func (f *file) addProgram(fc *face, e *embedding) ref {
	if fc.cff {
		return f.addStream("/Subtype /CIDFontType0C ", e.program)
	}
	return f.addStream(fmt.Sprintf("/Length1 %d ", len(e.program)), e.program)
}

// cidFont is the dictionary of the font of glyphs (ISO table 117).
func (fc *face) cidFont(e *embedding, descriptor ref) string {
	kind := "/CIDFontType2 /CIDToGIDMap /Identity"
	if fc.cff {
		kind = "/CIDFontType0"
	}
	return fmt.Sprintf("<< /Type /Font /Subtype %s /BaseFont %s /CIDSystemInfo %s /FontDescriptor %v /W [%s] >>",
		kind, name(e.name), identity, descriptor, fc.widths(e))
}

// widths is the widths of the glyphs shown, by CID (ISO 9.7.4.3): runs of
// CIDs that follow each other are one entry.
func (fc *face) widths(e *embedding) string {
	width := map[int]int{}
	var cids []int
	for _, g := range fc.glyphs() {
		cids = append(cids, e.cid(g))
		width[e.cid(g)] = fc.advance(g)
	}
	slices.Sort(cids)
	var b strings.Builder
	for i, cid := range cids {
		switch {
		case i == 0:
			fmt.Fprintf(&b, "%d [", cid)
		case cids[i-1]+1 != cid:
			fmt.Fprintf(&b, "] %d [", cid)
		default:
			b.WriteByte(' ')
		}
		b.WriteString(strconv.Itoa(width[cid]))
	}
	b.WriteByte(']')
	return b.String()
}

// Flags of a font descriptor (ISO table 123).
const (
	flagFixed    = 1 << 0
	flagSymbolic = 1 << 2 // glyphs outside the standard Latin set, or in an order of their own
	flagItalic   = 1 << 6
)

// stemWidth stands in the descriptor because it must (ISO table 122). Only a
// reader that can't use the embedded program looks at it; 80 is a book face's.
const stemWidth = 80

// descriptor is the font descriptor (ISO 9.8).
func (fc *face) descriptor(e *embedding, program ref) string {
	flags := flagSymbolic
	if fc.angle != 0 {
		flags |= flagItalic
	}
	if fc.fixed {
		flags |= flagFixed
	}
	key := "/FontFile2"
	if fc.cff {
		key = "/FontFile3"
	}
	return fmt.Sprintf("<< /Type /FontDescriptor /FontName %s /Flags %d /FontBBox [%d %d %d %d] /ItalicAngle %s /Ascent %d /Descent %d /CapHeight %d /StemV %d %s %v >>",
		name(e.name), flags, fc.box[0], fc.box[1], fc.box[2], fc.box[3],
		strconv.FormatFloat(fc.angle, 'f', -1, 64), fc.ascent, fc.descent, fc.capHeight, stemWidth, key, program)
}
