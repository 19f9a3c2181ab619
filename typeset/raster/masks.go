package raster

import (
	"crypto/sha256"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/vector"

	"headland/typeset"
)

// Masks keeps what glyphs cover, so that each is drawn from its outline once
// for a face, a size and a quarter of a pixel, and after that only laid down.
// It is bounded: when it is full, the face and size that has gone unused for
// longest is forgotten. What is drawn never depends on what is kept.
//
// Masks and the pens on it must not be used by two goroutines at once.
type Masks struct {
	limit, held int
	clock       uint64
	strikes     map[strikeKey]*strike

	buffer  sfnt.Buffer
	raster  vector.Rasterizer
	scratch []uint8 // coverage that is laid down at once and not kept
	well    inkwell
}

// strikeKey names a face at a size in 1/64 device pixel.
type strikeKey struct {
	face [sha256.Size]byte
	size int
}

// strike is the glyphs of one face at one size.
type strike struct {
	face  *typeset.Face
	size  int // of the em, in 1/64 device pixel
	held  int
	used  uint64
	masks map[uint32]*mask // by maskKey
}

// mask is how much of each pixel a glyph covers, row by row, from 0 to 255.
type mask struct {
	x, y, w, h int // its top left pixel, from the pixel of the glyph's origin
	cover      []uint8
}

// quarters is how many places across a pixel a glyph may stand at.
const quarters = 4

// maskCost is what a mask takes besides its coverage: itself and its place in
// the map.
const maskCost = 96

// NewMasks gives an empty cache that keeps at most limitBytes. A page of text
// takes about 60 kB at a screen's scale. With a limit of 0 nothing is kept and
// everything is still drawn.
func NewMasks(limitBytes int) *Masks {
	return &Masks{limit: limitBytes, strikes: map[strikeKey]*strike{}}
}

// Bytes is about how much memory the kept masks take; never more than the
// limit.
func (m *Masks) Bytes() int { return m.held }

// strike finds or begins the glyphs of a face at a size in 1/64 pixel.
func (m *Masks) strike(face *typeset.Face, size int) *strike {
	key := strikeKey{face.ID(), size}
	s := m.strikes[key]
	if s == nil {
		s = &strike{face: face, size: size, masks: map[uint32]*mask{}}
		m.strikes[key] = s
	}
	m.clock++
	s.used = m.clock
	return s
}

// maskKey names a glyph of a strike at a quarter of a pixel, upright or turned.
func maskKey(id uint32, quarter int, turned bool) uint32 {
	key := (id*quarters + uint32(quarter)) << 1
	if turned {
		key++
	}
	return key
}

// glyph gives the mask of a glyph whose origin is that many quarters of a pixel
// farther along the line than a whole one: right or, turned, up.
func (m *Masks) glyph(s *strike, id uint32, quarter int, turned bool) *mask {
	key := maskKey(id, quarter, turned)
	if k := s.masks[key]; k != nil {
		return k
	}
	k := m.draw(s, id, quarter)
	if turned {
		k = k.turned()
	}
	m.keep(s, key, k)
	return k
}

// keep stores a mask, making room for it first. One that is too large for the
// whole cache is not kept.
func (m *Masks) keep(s *strike, key uint32, k *mask) {
	cost := maskCost + len(k.cover)
	if cost > m.limit {
		return
	}
	for m.held+cost > m.limit {
		m.forget(s)
	}
	s.masks[key] = k
	s.held += cost
	m.held += cost
}

// forget drops the strike that has gone unused for longest: current only where
// there is no other, and then only its masks.
func (m *Masks) forget(current *strike) {
	var oldest *strike
	var at strikeKey
	for key, s := range m.strikes {
		if s != current && (oldest == nil || s.used < oldest.used) {
			oldest, at = s, key
		}
	}
	if oldest == nil {
		m.held -= current.held
		current.held = 0
		clear(current.masks)
		return
	}
	m.held -= oldest.held
	delete(m.strikes, at)
}
