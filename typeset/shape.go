package typeset

import (
	"github.com/go-text/typesetting/harfbuzz"
)

// shape.go is the border to HarfBuzz: its types end here.

// unitGlyph is a glyph in font units, its x the sum of all advances before it.
type unitGlyph struct {
	id      uint32
	cluster int32
	x, y    int32 // of the origin, y up
	sum     int32 // of the advances before it
	advance int32
}

// shaped is a piece of text in one face, in font units.
type shaped struct {
	glyphs []unitGlyph
	width  int32
}

// caseKind says which set of font features a piece is shaped with.
type caseKind uint8

const (
	plainCase caseKind = iota // old-style figures
	smallCaps                 // real small capitals, old-style figures
)

// The features over HarfBuzz's own default ones (kerning, ligatures,
// contextual forms): onum and smcp are of the OpenType feature registry.
var (
	oldStyle    = mustFeature("onum")
	smallCapped = mustFeature("smcp")
	features    = [...][]harfbuzz.Feature{plainCase: {oldStyle}, smallCaps: {oldStyle, smallCapped}}
)

func mustFeature(tag string) harfbuzz.Feature {
	f, err := harfbuzz.ParseFeature(tag)
	if err != nil {
		panic(err)
	}
	return f
}

type shapeKey struct {
	face *Face
	caps caseKind
	text string
}

// shapeCacheLimit bounds how many shaped pieces one generation of the cache
// holds: with two generations and some 1.2 KB for a line, about 40 MB at most.
const shapeCacheLimit = 16 << 10

// shaper shapes pieces of text and remembers them. What has not been asked for
// during a whole generation is forgotten. Not for two goroutines at once.
type shaper struct {
	buffer     *harfbuzz.Buffer
	young, old map[shapeKey]*shaped
	slab       []unitGlyph
}

func newShaper() *shaper {
	return &shaper{buffer: harfbuzz.NewBuffer(), young: map[shapeKey]*shaped{}}
}

// shape gives the piece in font units. Clusters are byte offsets.
func (s *shaper) shape(f *Face, caps caseKind, text string) *shaped {
	key := shapeKey{f, caps, text}
	if sh, ok := s.young[key]; ok {
		return sh
	}
	sh, ok := s.old[key]
	if !ok {
		sh = s.shapeAfresh(f, caps, text)
	}
	if len(s.young) >= shapeCacheLimit {
		s.old, s.young = s.young, make(map[shapeKey]*shaped, shapeCacheLimit)
	}
	s.young[key] = sh
	return sh
}

func (s *shaper) shapeAfresh(f *Face, caps caseKind, text string) *shaped {
	b := s.buffer
	b.Clear()
	for i, r := range text {
		b.AddRune(r, i)
	}
	b.GuessSegmentProperties()
	b.Shape(f.shaping, features[caps])
	sh := &shaped{glyphs: s.glyphs(len(b.Info))}
	for i, info := range b.Info {
		pos := &b.Pos[i]
		sh.glyphs[i] = unitGlyph{
			id: uint32(info.Glyph), cluster: int32(info.Cluster),
			x: sh.width + pos.XOffset, y: pos.YOffset, sum: sh.width, advance: pos.XAdvance,
		}
		sh.width += pos.XAdvance
	}
	return sh
}

// glyphs takes room for n glyphs from a slab, so that a cold set of a whole
// book asks for memory some hundred times and not ten thousand.
func (s *shaper) glyphs(n int) []unitGlyph {
	const slab = 4096
	if n > len(s.slab) {
		s.slab = make([]unitGlyph, max(n, slab))
	}
	taken := s.slab[:n:n]
	s.slab = s.slab[n:]
	return taken
}

// run is the piece as a run at a size, its origin at 0.
func (sh *shaped) run(f *Face, size Length, text string, start int, glyphs []Glyph) Run {
	for _, g := range sh.glyphs {
		sum := f.at(size, g.sum)
		glyphs = append(glyphs, Glyph{
			ID: g.id, X: f.at(size, g.x), Y: -f.at(size, g.y),
			Advance: f.at(size, g.sum+g.advance) - sum, Cluster: int(g.cluster),
		})
	}
	return Run{Face: f, Size: size, Width: f.at(size, sh.width), Glyphs: glyphs, Text: text, Start: start}
}
