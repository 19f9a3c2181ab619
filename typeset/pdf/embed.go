package pdf

import "crypto/sha256"

// An embedding is a face's program as it goes into the file.
type embedding struct {
	name    string // PostScript name; a subset's has a tag
	program []byte
	cids    []int // glyph to CID where they differ, else nil
}

// embed makes the program: the subset of the glyphs shown or, where the maker
// does not allow a subset or the subsetter can't make one, the whole face.
func (fc *face) embed(s *Subsetter) (*embedding, error) {
	e := &embedding{name: fc.name, program: fc.font}
	if fc.subset {
		if small, err := s.Subset(fc.font, fc.glyphs()); err == nil {
			e.program, e.name = small, subsetTag(small)+fc.name
		}
	}
	if !fc.cff {
		return e, nil
	}
	tables, err := sfntTables(e.program)
	if err != nil {
		return nil, err
	}
	e.program = tables["CFF "]
	if e.cids, err = cidsByGlyph(e.program); err != nil {
		return nil, err
	}
	if shown := fc.glyphs(); e.cids != nil && int(shown[len(shown)-1]) >= len(e.cids) {
		return nil, errCFF
	}
	return e, nil
}

// subsetTag is the six letters and a plus that mark a subset's name (ISO
// 9.6.4); they come from the subset's bytes, so two subsets of one face get
// two tags.
func subsetTag(program []byte) string {
	sum := sha256.Sum256(program)
	tag := make([]byte, 6)
	for i := range tag {
		tag[i] = 'A' + sum[i]%26
	}
	return string(tag) + "+"
}

// cid is what the PDF calls a glyph.
func (e *embedding) cid(glyph uint32) int {
	if e.cids == nil {
		return int(glyph)
	}
	return e.cids[glyph]
}
