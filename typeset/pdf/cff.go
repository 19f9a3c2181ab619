package pdf

import "errors"

// errCFF is what is wrong with outlines that can't be read.
var errCFF = errors.New("the face's CFF outlines can't be read; check that the font file is whole")

// Operators of a CFF Top DICT (Adobe Technical Note 5176, table 9).
const (
	cffCharset     = 15
	cffCharStrings = 17
	cffROS         = 12<<8 | 30 // registry, ordering, supplement: CID-keyed fonts only
)

// cidsByGlyph gives the CID of each glyph where the CFF table is CID-keyed and
// names its glyphs by CID; a PDF must then use those numbers. For all other
// fonts it gives nil: there a PDF's CID is the glyph's number (ISO 9.7.4.2).
func cidsByGlyph(cff table) ([]int, error) {
	_, at := cffIndex(cff, cff.u16(2)>>8) // the Name INDEX follows the header
	tops, _ := cffIndex(cff, at)
	if len(tops) == 0 {
		return nil, errCFF
	}
	dict := cffDict(tops[0])
	if _, keyed := dict[cffROS]; !keyed {
		return nil, nil
	}
	glyphs := cff.u16(dict[cffCharStrings]) // an INDEX starts with its count
	cids := cffCharsetCIDs(cff, dict[cffCharset], glyphs)
	if glyphs == 0 || len(cids) != glyphs {
		return nil, errCFF
	}
	return cids, nil
}

// cffIndex reads an INDEX (Technical Note 5176, 5): its items, and where what
// follows it starts.
func cffIndex(cff table, at int) (items []table, after int) {
	count, size := cff.u16(at), int(cff.byteAt(at+2))
	if count == 0 {
		return nil, at + 2
	}
	data := at + 2 + (count+1)*size // one less than the first byte, as offsets count from 1
	offset := func(i int) int { return cff.uint(at+3+i*size, size) }
	for i := range count {
		items = append(items, cff.slice(data+offset(i), offset(i+1)-offset(i)))
	}
	return items, data + offset(count)
}

// cffDict reads the last operand of each operator in a DICT (Technical Note
// 5176, 4). Real numbers are skipped: no operator asked for here has one.
func cffDict(d table) map[int]int {
	dict, operand := map[int]int{}, 0
	for i := 0; i < len(d); {
		switch b := int(d[i]); {
		case b == 12:
			dict[12<<8|int(d.byteAt(i+1))] = operand
			i += 2
		case b <= 21:
			dict[b] = operand
			i++
		case b == 30:
			i += cffRealSize(d[i:])
		default:
			var n int
			operand, n = cffInteger(d[i:])
			i += n
		}
	}
	return dict
}

// cffInteger reads a whole number and says how many bytes it took.
func cffInteger(d table) (value, size int) {
	switch b := int(d[0]); {
	case b == 28:
		return d.i16(1), 3
	case b == 29:
		return int(int32(d.u32(1))), 5
	case b >= 251:
		return -(b-251)*256 - int(d.byteAt(1)) - 108, 2
	case b >= 247:
		return (b-247)*256 + int(d.byteAt(1)) + 108, 2
	default:
		return b - 139, 1
	}
}

// cffRealSize is how many bytes a real number takes: up to the first with the
// end mark, 0xF, in one of its halves.
func cffRealSize(d table) int {
	for i := 1; i < len(d); i++ {
		if d[i]&0x0F == 0x0F || d[i]>>4 == 0x0F {
			return i + 1
		}
	}
	return len(d)
}

// cffCharsetCIDs reads a charset (Technical Note 5176, 13). Glyph 0 is CID 0
// and is not in it. Offsets below 3 are charsets of fonts that aren't
// CID-keyed.
func cffCharsetCIDs(cff table, at, glyphs int) []int {
	if at < 3 || at >= len(cff) {
		return nil
	}
	cids, format := []int{0}, int(cff[at])
	if format > 2 {
		return nil
	}
	for at++; len(cids) < glyphs && at < len(cff); {
		first, left := cff.u16(at), 0
		at += 2
		if format > 0 {
			left = cff.uint(at, format)
			at += format
		}
		for i := 0; i <= left && len(cids) < glyphs; i++ {
			cids = append(cids, first+i)
		}
	}
	return cids
}

// byteAt is the byte there, or 0 past the end.
func (t table) byteAt(at int) byte {
	if at < 0 || at >= len(t) {
		return 0
	}
	return t[at]
}

// uint is a number of size bytes.
func (t table) uint(at, size int) int {
	n := 0
	for i := range size {
		n = n<<8 | int(t.byteAt(at+i))
	}
	return n
}
