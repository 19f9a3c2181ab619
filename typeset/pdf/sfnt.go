package pdf

import (
	"encoding/binary"
	"errors"
	"fmt"
	"strings"
	"unicode/utf16"
)

// A table is one table of a font file. Reading past its end gives 0, so a
// short table makes a wrong number and never a crash.
type table []byte

// u16, i16 and u32 read a big-endian number of that many bits, i16 with a sign.
func (t table) u16(at int) int {
	if at < 0 || at+2 > len(t) {
		return 0
	}
	return int(binary.BigEndian.Uint16(t[at:]))
}

func (t table) i16(at int) int { return int(int16(t.u16(at))) }

func (t table) u32(at int) int { return t.u16(at)<<16 | t.u16(at+2) }

// slice is length bytes from at, or as many as there are.
func (t table) slice(at, length int) table {
	if at < 0 || at > len(t) || length < 0 {
		return nil
	}
	return t[at:min(at+length, len(t))]
}

// errNoFont is what is wrong with bytes that no font can be read from.
var errNoFont = errors.New("the face is no TrueType or OpenType font that a PDF can hold; choose a .ttf or .otf file")

// sfntTables splits a font file into its tables (OpenType 1.9, "Organization
// of an OpenType font"). The tables share the file's bytes.
func sfntTables(font []byte) (map[string]table, error) {
	head := table(font)
	if len(font) < 12 || head.u32(0) == 0x74746366 { // "ttcf", a collection of fonts
		return nil, errNoFont
	}
	tables := map[string]table{}
	for i := range head.u16(4) {
		entry := head.slice(12+16*i, 16)
		if len(entry) < 16 {
			return nil, errNoFont
		}
		tables[string(entry[:4])] = head.slice(entry.u32(8), entry.u32(12))
	}
	return tables, nil
}

// metrics is what a PDF says about a font besides its outlines. Distances are
// in thousandths of an em, y up.
type metrics struct {
	name      string // PostScript name, without a subset's tag
	cff       bool   // outlines are CFF, else TrueType
	box       [4]int // left, foot, right, head of all glyphs together
	ascent    int
	descent   int // negative
	capHeight int
	angle     float64 // degrees, negative for an italic
	fixed     bool    // all advances are one
	fsType    int     // embedding rights, OS/2

	em         int // font units per em
	glyphCount int
	hmtx       table
	advances   int // how many glyphs have an advance of their own
}

// readMetrics reads a font's tables.
func readMetrics(font []byte) (*metrics, error) {
	t, err := sfntTables(font)
	if err != nil {
		return nil, err
	}
	m := &metrics{em: t["head"].u16(18), glyphCount: t["maxp"].u16(4), hmtx: t["hmtx"], advances: t["hhea"].u16(34)}
	if _, m.cff = t["CFF "]; !m.cff && t["glyf"] == nil || m.em == 0 || m.advances == 0 {
		return nil, errNoFont
	}
	m.describe(t)
	return m, nil
}

// describe fills in what the font descriptor says.
func (m *metrics) describe(t map[string]table) {
	m.name = postScriptName(t["name"])
	for i := range m.box {
		m.box[i] = m.thousandths(t["head"].i16(36 + 2*i))
	}
	m.ascent, m.descent = m.thousandths(t["hhea"].i16(4)), m.thousandths(t["hhea"].i16(6))
	m.capHeight = m.thousandths(t["OS/2"].i16(88))
	if m.capHeight == 0 {
		m.capHeight = m.ascent
	}
	m.angle = float64(int32(t["post"].u32(4))) / 65536
	m.fixed = t["post"].u32(12) != 0
	m.fsType = t["OS/2"].u16(8)
}

// thousandths turns font units into thousandths of an em, rounded.
func (m *metrics) thousandths(units int) int {
	n := 2*1000*units + m.em
	if n < 0 {
		n -= 2*m.em - 1
	}
	return n / (2 * m.em)
}

// advance is the width of a glyph in whole thousandths of an em. Some readers
// drop the fraction of a width, and the error would grow along the line; a
// whole number is the same to all, and the glyphs' exact places make up for it.
func (m *metrics) advance(glyph uint32) int {
	return m.thousandths(m.hmtx.u16(4 * min(int(glyph), m.advances-1)))
}

// postScriptName reads name 6 of the name table; the Windows and Unicode
// platforms write UTF-16, the Macintosh single bytes.
func postScriptName(t table) string {
	strs := t.u16(4)
	for i := range t.u16(2) {
		rec := t.slice(6+12*i, 12)
		if rec.u16(6) != 6 {
			continue
		}
		raw := t.slice(strs+rec.u16(10), rec.u16(8))
		if s := printable(decodeName(raw, rec.u16(0) != 1)); s != "" {
			return s
		}
	}
	return "Face"
}

// decodeName reads a name in UTF-16 if wide, else in single bytes.
func decodeName(raw table, wide bool) string {
	if !wide {
		return string(raw)
	}
	units := make([]uint16, len(raw)/2)
	for i := range units {
		units[i] = uint16(raw.u16(2 * i))
	}
	return string(utf16.Decode(units))
}

// printable keeps what a PostScript name may hold: ASCII without spaces and
// delimiters, 63 characters at most (OpenType 1.9, "name", ID 6).
func printable(s string) string {
	s = strings.Map(func(r rune) rune {
		if r <= ' ' || r > '~' || strings.ContainsRune("[](){}<>/%", r) {
			return -1
		}
		return r
	}, s)
	return s[:min(len(s), 63)]
}

// checkRights says whether the font's maker lets it travel in a PDF, and
// whether as a subset (OpenType 1.9, OS/2 fsType: bits 0-3 the licence, 8 no
// subsetting, 9 bitmaps only).
func (m *metrics) checkRights() (subset bool, err error) {
	const restricted, licence, whole, bitmaps = 0x0002, 0x000F, 0x0100, 0x0200
	if m.fsType&licence == restricted || m.fsType&bitmaps != 0 {
		return false, fmt.Errorf("the maker of the face %s does not allow it in a PDF; choose another face or ask for a licence to embed it", m.name)
	}
	return m.fsType&whole == 0, nil
}
