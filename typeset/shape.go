package typeset

import (
	"sort"

	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"
)

// shape.go is the border to HarfBuzz: its types end here.

// unitGlyph is a glyph in font units, its x the sum of all advances before it.
type unitGlyph struct {
	id      uint32
	cluster int32
	x, y    int32 // of the origin, y up
	sum     int32 // of the advances before it
	advance int32
	bound   bool // to what is before it: cut there, both sides might have other glyphs
}

// shaped is a piece of text in one face, in font units.
type shaped struct {
	glyphs []unitGlyph
	width  int32
	script language.Script
	ltr    bool // left to right
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
	return s.cut(f, caps, text, 0, len(text))
}

// cut is shape of the bytes from start to end of a text. Where that text is known
// and HarfBuzz holds it safe to break at both ends, the glyphs are those that it
// has there, which are the same (hb_glyph_flags_t: only what is unsafe to break
// needs to be shaped again).
func (s *shaper) cut(f *Face, caps caseKind, text string, start, end int) *shaped {
	key := shapeKey{f, caps, text[start:end]}
	if sh, ok := s.young[key]; ok {
		return sh
	}
	sh, ok := s.old[key]
	if !ok && end-start < len(text) {
		sh, ok = s.cutFrom(s.known(shapeKey{f, caps, text}), text, start, end)
	}
	if !ok {
		sh = s.shapeAfresh(f, caps, text[start:end])
	}
	if len(s.young) >= shapeCacheLimit {
		s.old, s.young = s.young, make(map[shapeKey]*shaped, shapeCacheLimit)
	}
	s.young[key] = sh
	return sh
}

// known is what the cache has, or nil.
func (s *shaper) known(key shapeKey) *shaped {
	if sh, ok := s.young[key]; ok {
		return sh
	}
	return s.old[key]
}

// cutFrom cuts a piece out of a text that is shaped, where that can be done.
func (s *shaper) cutFrom(whole *shaped, text string, start, end int) (*shaped, bool) {
	if whole == nil || !whole.ltr || scriptOf(text[start:end]) != whole.script {
		return nil, false
	}
	from, first := whole.seam(start, len(text))
	to, last := whole.seam(end, len(text))
	if !first || !last {
		return nil, false
	}
	base := int32(0)
	if from < len(whole.glyphs) {
		base = whole.glyphs[from].sum
	}
	sh := &shaped{glyphs: s.glyphs(to - from), width: whole.width - base, script: whole.script, ltr: true}
	if to < len(whole.glyphs) {
		sh.width = whole.glyphs[to].sum - base
	}
	for i, g := range whole.glyphs[from:to] {
		g.cluster, g.x, g.sum = g.cluster-int32(start), g.x-base, g.sum-base
		sh.glyphs[i] = g
	}
	return sh, true
}

// seam is the first glyph of what follows a byte offset, and whether the text,
// of so many bytes, may be cut there.
func (sh *shaped) seam(at, length int) (int, bool) {
	i := sort.Search(len(sh.glyphs), func(i int) bool { return int(sh.glyphs[i].cluster) >= at })
	if i == len(sh.glyphs) {
		return i, at == length
	}
	return i, int(sh.glyphs[i].cluster) == at && !sh.glyphs[i].bound
}

// scriptOf is the script that HarfBuzz shapes a text in, as it is guessed: that of
// the first letter that has one.
func scriptOf(text string) language.Script {
	for _, r := range text {
		if script := language.LookupScript(r); script.Strong() && script != language.Unknown {
			return script
		}
	}
	return 0
}

func (s *shaper) shapeAfresh(f *Face, caps caseKind, text string) *shaped {
	b := s.buffer
	b.Clear()
	for i, r := range text {
		b.AddRune(r, i)
	}
	b.GuessSegmentProperties()
	b.Shape(f.shaping, features[caps])
	sh := &shaped{glyphs: s.glyphs(len(b.Info)), script: b.Props.Script, ltr: b.Props.Direction == harfbuzz.LeftToRight}
	for i, info := range b.Info {
		pos := &b.Pos[i]
		sh.glyphs[i] = unitGlyph{
			id: uint32(info.Glyph), cluster: int32(info.Cluster),
			x: sh.width + pos.XOffset, y: pos.YOffset, sum: sh.width, advance: pos.XAdvance,
			bound: info.Mask&harfbuzz.GlyphUnsafeToBreak != 0,
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
