package typeset

import (
	"bytes"
	"crypto/sha256"
	"fmt"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
)

// Face is one face of type: the roman of a family, say, or its italic. It is
// parsed twice from the same bytes, for shaping and for outlines. A Face must
// not be shaped with on two goroutines at once; all else may be read freely.
type Face struct {
	id       [sha256.Size]byte
	data     []byte
	outlines *sfnt.Font
	shaping  *harfbuzz.Font
	upem     int32
}

// ParseFace reads a .ttf or .otf. It keeps the bytes, which must not be changed
// afterwards. Broken fonts give an error, never a crash.
func ParseFace(data []byte) (f *Face, err error) {
	defer func() {
		if trouble := recover(); trouble != nil {
			f, err = nil, fmt.Errorf("the font is damaged: %v", trouble)
		}
	}()
	outlines, err := opentype.Parse(data)
	if err != nil {
		return nil, fmt.Errorf("not a .ttf or .otf that can be read: %w", err)
	}
	shaping, err := font.ParseTTF(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("not a .ttf or .otf that can be read: %w", err)
	}
	return &Face{
		id: sha256.Sum256(data), data: data, outlines: outlines,
		shaping: harfbuzz.NewFont(shaping), upem: int32(shaping.Upem()),
	}, nil
}

// ID is a hash of the face's bytes: equal IDs set alike.
func (f *Face) ID() [sha256.Size]byte { return f.id }

// Data is the font file. Not to be changed.
func (f *Face) Data() []byte { return f.data }

// Outlines gives the glyphs' outlines by glyph id. It may be read on any
// goroutine, each with an sfnt.Buffer of its own.
func (f *Face) Outlines() *sfnt.Font { return f.outlines }

// UnitsPerEm is how many font units an em has.
func (f *Face) UnitsPerEm() int32 { return f.upem }

// at scales font units to a type size, rounded to the nearest 1/64 pt. It is
// only ever given sums, so that rounding does not add up along a line.
func (f *Face) at(size Length, units int32) Length {
	n := int64(units) * int64(size)
	half := int64(f.upem) / 2
	if n < 0 {
		return -Length((-n + half) / int64(f.upem))
	}
	return Length((n + half) / int64(f.upem))
}
