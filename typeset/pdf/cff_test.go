package pdf

import (
	"slices"
	"testing"
)

// cffWith builds the least CFF table with a charset: header, Name INDEX, Top
// DICT INDEX, charset, CharStrings INDEX with count glyphs. Numbers are as in
// Adobe Technical Note 5176; operands of the DICT are all written in five
// bytes, so that its size is known.
func cffWith(keyed bool, charset []byte, count byte) table {
	const dictAt = 4 + 6 + 5 // header, Name INDEX, head of the Top DICT INDEX
	dict := []byte{}
	if keyed {
		dict = append(dict, 139, 139, 139, 12, 30) // 0 0 0 ROS
	}
	after := byte(dictAt + len(dict) + 12)
	dict = append(dict, 29, 0, 0, 0, after, 15)
	dict = append(dict, 29, 0, 0, 0, after+byte(len(charset)), 17)
	cff := []byte{1, 0, 4, 1, 0, 1, 1, 1, 2, 'X', 0, 1, 1, 1, byte(1 + len(dict))}
	cff = append(cff, dict...)
	cff = append(cff, charset...)
	return append(cff, 0, count)
}

// A CID-keyed font's glyphs go by the CIDs of its charset, in all three
// formats; any other's by their numbers.
func TestCIDsOfKeyedFonts(t *testing.T) {
	for _, c := range []struct {
		name    string
		keyed   bool
		charset []byte
		want    []int
	}{
		{"not keyed", false, []byte{0, 0, 9, 0, 7}, nil},
		{"format 0", true, []byte{0, 0, 9, 0, 7}, []int{0, 9, 7}},
		{"format 1", true, []byte{1, 0, 5, 1, 2, 0, 0}, []int{0, 5, 6, 512}},
		{"format 2", true, []byte{2, 1, 0, 0, 3}, []int{0, 256, 257, 258, 259}},
	} {
		got, err := cidsByGlyph(cffWith(c.keyed, c.charset, byte(len(c.want))))
		if err != nil || !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, %v; want %v", c.name, got, err, c.want)
		}
	}
}

// Broken CFF tables are refused.
func TestBrokenCFF(t *testing.T) {
	for name, cff := range map[string]table{
		"empty":          nil,
		"short charset":  cffWith(true, []byte{0, 0, 9}, 90),
		"unknown format": cffWith(true, []byte{7, 0, 9, 0, 7}, 3),
		"no glyphs":      cffWith(true, []byte{0}, 0),
	} {
		if cids, err := cidsByGlyph(cff); err == nil {
			t.Errorf("%s: read as %v", name, cids)
		}
	}
}

// Any bytes at all are read or refused, and never crash.
func FuzzFontTables(f *testing.F) {
	f.Add([]byte("OTTO\x00\x01"), []byte(cffWith(true, []byte{0, 0, 9, 0, 7}, 3)))
	f.Fuzz(func(t *testing.T, font, cff []byte) {
		if m, err := readMetrics(font); err == nil {
			m.advance(1 << 20)
		}
		_, _ = cidsByGlyph(cff)
	})
}
