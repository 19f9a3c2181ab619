package pdf

import (
	"bytes"
	"fmt"
	"slices"
)

// A pair is a glyph and the text that copies out for it. The same glyph may
// stand for several texts (small capital A for "a"; in EB Garamond the i of
// "fi" is the dotless i), so neither alone will do as a character code.
type pair struct {
	glyph uint32
	text  string
}

// codes numbers pairs in the order of their first use. Codes are two bytes and
// count from 1; code 0 is never shown.
type codes struct {
	number map[pair]int
	pairs  []pair // pairs[i] has code i+1
}

// maxCodes is how many codes two bytes have, without 0.
const maxCodes = 0xFFFF

// of gives a pair its code. The error is for a face shown with more than
// 65,535 pairs in one file.
func (c *codes) of(p pair) (int, error) {
	if n, ok := c.number[p]; ok {
		return n, nil
	}
	if len(c.pairs) == maxCodes {
		return 0, fmt.Errorf("the pages show more than %d different characters of one face; write them as two PDFs", maxCodes)
	}
	c.pairs = append(c.pairs, p)
	c.number[p] = len(c.pairs)
	return len(c.pairs), nil
}

// glyphs lists the glyphs shown, each once, in order.
func (c *codes) glyphs() []uint32 {
	ids := make([]uint32, len(c.pairs))
	for i, p := range c.pairs {
		ids[i] = p.glyph
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}

// encoding is the CMap that says which glyph a code shows (ISO 9.7.5); cid
// turns a glyph into the number it has in the embedded font.
func (c *codes) encoding(cmapName string, cid func(uint32) int) []byte {
	lines := make([]string, len(c.pairs))
	for i, p := range c.pairs {
		lines[i] = fmt.Sprintf("<%04X> %d", i+1, cid(p.glyph))
	}
	return cmap(cmapName, 1, "cidchar", lines)
}

// toUnicode is the CMap that says which text a code stands for (ISO 9.10.3).
// A code without text maps to nothing at all.
func (c *codes) toUnicode(cmapName string) []byte {
	var lines []string
	for i, p := range c.pairs {
		lines = append(lines, fmt.Sprintf("<%04X> <%s>", i+1, utf16Hex(p.text)))
	}
	return cmap(cmapName, 2, "bfchar", lines)
}

// cmapBlock is how many lines a block of a CMap may have (Adobe Technical Note
// 5014, 4.4).
const cmapBlock = 100

// cmap writes a CMap of two-byte codes: kind is its CMapType, operator the
// name of its blocks.
func cmap(cmapName string, kind int, operator string, lines []string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (%s) /Supplement 0 >> def
/CMapName /%s def
/CMapType %d def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
`, cmapOrdering[kind], cmapName, kind)
	for block := range slices.Chunk(lines, cmapBlock) {
		fmt.Fprintf(&b, "%d begin%s\n", len(block), operator)
		for _, line := range block {
			fmt.Fprintln(&b, line)
		}
		fmt.Fprintf(&b, "end%s\n", operator)
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return b.Bytes()
}

// cmapOrdering is the character collection of each kind of CMap: glyph numbers
// of the font itself, and Unicode.
var cmapOrdering = map[int]string{1: "Identity", 2: "UCS"}
