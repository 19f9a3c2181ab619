package typeset

import (
	"fmt"

	"headland/assets"
)

// FaceSource finds the faces that a design asks for.
type FaceSource interface {
	// Face gives a face of the family, or false where there is none. It
	// gives the same Face each time.
	Face(family string, bold, italic bool) (*Face, bool)
}

type faceKey struct {
	family       string
	bold, italic bool
}

// Faces are the faces that travel with the program and any that are added. It
// parses a face when it is first asked for. Not for two goroutines at once.
type Faces struct {
	parsed map[faceKey]*Face
}

// Bundled gives the faces that travel with the program.
func Bundled() *Faces { return &Faces{parsed: map[faceKey]*Face{}} }

// Add adds a face of the user's, or replaces one. It keeps the bytes.
func (f *Faces) Add(family string, bold, italic bool, data []byte) error {
	face, err := ParseFace(data)
	if err != nil {
		return fmt.Errorf("the face %s: %w", family, err)
	}
	f.parsed[faceKey{family, bold, italic}] = face
	return nil
}

// Face finds a face that was added or that travels with the program.
func (f *Faces) Face(family string, bold, italic bool) (*Face, bool) {
	key := faceKey{family, bold, italic}
	if face, ok := f.parsed[key]; ok {
		return face, face != nil
	}
	data, ok := assets.FaceBytes(family, bold, italic)
	if !ok {
		f.parsed[key] = nil
		return nil, false
	}
	face, err := ParseFace(data)
	if err != nil {
		face = nil
	}
	f.parsed[key] = face
	return face, face != nil
}

// typeCase is the faces that one setting uses: the four styles of a family,
// each filled in by the nearest there is. absent says which were not there.
type typeCase struct {
	styles [4]*Face // by style bits: italic 1, bold 2
	absent [4]bool
	family bool // the family itself was there
}

const (
	styleItalic = 1
	styleBold   = 2
)

func newTypeCase(source FaceSource, family string) typeCase {
	c := typeCase{family: true}
	if _, ok := source.Face(family, false, false); !ok {
		c.family = false
		family = assets.EBGaramond
	}
	for i := range c.styles {
		c.styles[i], c.absent[i] = nearest(source, family, i)
	}
	return c
}

// nearest is the face of a style, or the closest one that the family has.
func nearest(source FaceSource, family string, style int) (face *Face, absent bool) {
	for i, try := range [...]int{style, style &^ styleBold, style &^ styleItalic, 0} {
		if face, ok := source.Face(family, try&styleBold != 0, try&styleItalic != 0); ok {
			return face, i > 0 && try != style
		}
	}
	return nil, true
}

// key says which faces the case holds, so that settings made with others are
// not taken for this one's.
func (c *typeCase) key() [4][32]byte {
	var k [4][32]byte
	for i, f := range c.styles {
		k[i] = f.id
	}
	return k
}
