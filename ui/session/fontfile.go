package session

import (
	"encoding/binary"
	"fmt"
	"strings"

	"headland/typeset"
)

// A fontFile is what a font says of itself.
type fontFile struct {
	family       string
	bold, italic bool
	rights       rights
}

// readFont reads what a font file says of itself. The error says what is wrong
// with the font.
func readFont(data []byte) (fontFile, error) {
	face, err := typeset.ParseFace(data)
	if err != nil {
		return fontFile{}, err
	}
	f := fontFile{family: familyOf(face)}
	if f.family == "" {
		return f, fmt.Errorf("the font does not say which family it is of")
	}
	f.rights = rightsOf(data)
	f.bold, f.italic = styleOf(data)
	return f, nil
}

// nameFamily is the name under which a face's regular, italic, bold and bold
// italic belong together (OpenType, name table, name ID 1). The typographic
// family (ID 16) would put light, medium and black together as well, which a
// design does not tell apart.
const nameFamily = 1

func familyOf(face *typeset.Face) string {
	name, err := face.Outlines().Name(nil, nameFamily)
	if err != nil {
		return ""
	}
	return strings.TrimSpace(name)
}

// table is a table of a font file, or nil where it has none (OpenType, font
// file structure: the table directory).
func table(data []byte, tag string) []byte {
	const header, record = 12, 16
	if len(data) < header {
		return nil
	}
	count := int(binary.BigEndian.Uint16(data[4:]))
	for i := range count {
		at := header + i*record
		if at+record > len(data) {
			return nil
		}
		if string(data[at:at+4]) != tag {
			continue
		}
		start := uint64(binary.BigEndian.Uint32(data[at+8:]))
		end := start + uint64(binary.BigEndian.Uint32(data[at+12:]))
		if end > uint64(len(data)) {
			return nil
		}
		return data[start:end]
	}
	return nil
}

// word is a 16-bit value of a table, 0 where the table is too short for it.
func word(table []byte, at int) uint16 {
	if at+2 > len(table) {
		return 0
	}
	return binary.BigEndian.Uint16(table[at:])
}

// styleOf is whether the font is its family's bold or italic: OpenType, OS/2
// fsSelection, bit 0 italic, bit 5 bold; else head macStyle, bit 0 bold, bit 1
// italic.
func styleOf(data []byte) (bold, italic bool) {
	if os2 := table(data, "OS/2"); os2 != nil {
		selection := word(os2, 62)
		return selection&(1<<5) != 0, selection&1 != 0
	}
	style := word(table(data, "head"), 44)
	return style&1 != 0, style&2 != 0
}

// rights is what a font's maker allows to be done with it in a file that
// travels: OpenType, OS/2 fsType.
type rights uint16

// The bits of fsType that matter here. Where bits 1 to 3 are all clear, the
// font may be installed by whoever gets the file.
const (
	restrictedLicence rights = 1 << 1
	previewAndPrint   rights = 1 << 2
	editable          rights = 1 << 3
	bitmapOnly        rights = 1 << 9
)

// rightsOf reads a font's rights. A font without an OS/2 table states none and
// so forbids nothing.
func rightsOf(data []byte) rights { return rights(word(table(data, "OS/2"), 8)) }

// mayTravel is nil where the font may be put into a file, or the reason why
// not. Old fonts may set several of bits 1 to 3, and then the most generous
// holds (the specification's note on OS/2 before version 3).
func (r rights) mayTravel() error {
	switch {
	case r&restrictedLicence != 0 && r&(previewAndPrint|editable) == 0:
		return fmt.Errorf("its maker forbids it to be embedded (OS/2 fsType: restricted licence)")
	case r&bitmapOnly != 0:
		return fmt.Errorf("its maker allows only its bitmaps to be embedded (OS/2 fsType)")
	}
	return nil
}

// String is the rights in words, as the file keeps them.
func (r rights) String() string {
	switch {
	case r&editable != 0:
		return "editable"
	case r&previewAndPrint != 0:
		return "preview and print"
	case r&restrictedLicence != 0:
		return "restricted"
	}
	return "installable"
}
