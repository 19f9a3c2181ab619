package pdf

import (
	"crypto/sha256"
	"fmt"
	"strings"

	"headland/typeset"
)

// faces are the fonts of a document in the order of their first use.
type faces struct {
	file   *file
	all    []*face
	number map[[sha256.Size]byte]int // by [typeset.Face.ID], from 1
}

// newFaces are the fonts of a document that shows none yet.
func newFaces(f *file) *faces { return &faces{file: f, number: map[[sha256.Size]byte]int{}} }

// of gives a face of the setting its face here, and the name that contents
// call it by.
func (fs *faces) of(f *typeset.Face) (string, *face, error) {
	n, ok := fs.number[f.ID()]
	if !ok {
		fc, err := newFace(fs.file, f.Data())
		if err != nil {
			return "", nil, err
		}
		fs.all = append(fs.all, fc)
		n = len(fs.all)
		fs.number[f.ID()] = n
	}
	return fmt.Sprintf("F%d", n), fs.all[n-1], nil
}

// embed writes all fonts into the file. It comes after the pages, since a
// subset needs to know all that is shown.
func (fs *faces) embed() (err error) {
	if len(fs.all) == 0 {
		return nil
	}
	s, err := NewSubsetter()
	if err != nil {
		return err
	}
	for _, fc := range fs.all {
		if err == nil {
			err = fs.file.writeFace(fc, s)
		}
	}
	if shut := s.Close(); err == nil {
		err = shut
	}
	return err
}

// resources is the dictionary of what contents refer to by name; one for the
// whole document.
func (fs *faces) resources() string {
	var b strings.Builder
	for i, fc := range fs.all {
		fmt.Fprintf(&b, " /F%d %v", i+1, fc.object)
	}
	return fmt.Sprintf("<< /Font <<%s >> >>", b.String())
}
