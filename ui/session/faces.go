package session

import (
	"fmt"
	"os"
	"slices"

	"headland/assets"
	"headland/typeset"
)

// loadFaces makes the session's faces, those that travel with the program and
// those that travel in the file, and a setter that sets with them.
func (s *Session) loadFaces() error {
	s.faces, s.families, s.sent, s.lists = typeset.Bundled(), nil, nil, nil
	stored, err := s.store.Faces()
	if err != nil {
		return err
	}
	for _, f := range stored {
		if err := s.faces.Add(f.Family, f.Bold, f.Italic, f.Bytes); err != nil {
			return err
		}
		s.addFamily(f.Family)
	}
	s.setter = typeset.NewSetter(s.faces)
	return nil
}

func (s *Session) addFamily(family string) {
	if !slices.Contains(s.families, family) {
		s.families = append(s.families, family)
	}
}

// Families are the names that a design may ask for: the families that travel
// with the program, then the poet's own in this file. The list is the caller's.
func (s *Session) Families() []string {
	all := assets.Families()
	for _, family := range s.families {
		if !slices.Contains(all, family) {
			all = append(all, family)
		}
	}
	return all
}

// AddFace puts a face of the poet's own, a .ttf or .otf, into the file, so that
// the book is set alike wherever the file goes, and sets the book with it. It
// belongs to the family, and is the bold or italic of it, that it says it is.
// A face whose maker does not let it be embedded is refused, and so is what is
// no font. No edit: it stays when edits are undone. Any preview is dropped.
func (s *Session) AddFace(path string) error {
	if err := s.writable(); err != nil {
		return err
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("add the face %s: %w", path, cause(err))
	}
	font, err := readFont(data)
	if err != nil {
		return fmt.Errorf("add the face %s: %w: choose a .ttf or .otf file", path, err)
	}
	if err := font.rights.mayTravel(); err != nil {
		return fmt.Errorf("the face %s (%s) can't travel in %s: %w. Ask its maker for a licence to embed it, or choose another face", path, font.family, s.Name(), err)
	}
	if err := s.store.AddFace(font.family, font.bold, font.italic, data, font.rights.String()); err != nil {
		return err
	}
	return s.useFace(font, data)
}

// useFace sets the book again with a face that the file now has.
func (s *Session) useFace(font fontFile, data []byte) error {
	if err := s.faces.Add(font.family, font.bold, font.italic, data); err != nil {
		return err
	}
	s.addFamily(font.family)
	s.preview = nil
	s.committed = s.setter.Set(s.committed, s.Collection())
	s.show()
	return nil
}
