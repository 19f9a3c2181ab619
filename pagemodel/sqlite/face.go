package sqlite

import (
	"crypto/sha256"
	"database/sql"
	"fmt"
)

// Face is a face of the user's own that travels in the file.
type Face struct {
	Hash         [sha256.Size]byte // SHA-256 of Bytes
	Family       string
	Bold, Italic bool
	Bytes        []byte // the font file, the caller's to keep and change
	Rights       string // what the face says of embedding, in words
}

// AddFace puts a face into the file. Faces lie outside undo. Bytes that are in
// the file already are not put there twice: they take the new name and rights.
// It is for the caller to know whether the face may be embedded.
func (s *Store) AddFace(family string, bold, italic bool, bytes []byte, rights string) error {
	defer s.hold()()
	if err := s.writable(); err != nil {
		return err
	}
	if family == "" || len(bytes) == 0 {
		return &Error{s.path, "takes no face without a name or without bytes", "choose a whole font file", nil}
	}
	hash := sha256.Sum256(bytes)
	return translate(s.path, s.exec(`INSERT INTO face (hash, family, bold, italic, bytes, rights) VALUES (?, ?, ?, ?, ?, ?)
		ON CONFLICT (hash) DO UPDATE SET family = excluded.family, bold = excluded.bold,
		italic = excluded.italic, rights = excluded.rights`, hash[:], family, bold, italic, bytes, rights))
}

// Faces are the faces in the file in the order in which they were added. Where
// two have one family and style, the later is the one to set with.
func (s *Store) Faces() ([]Face, error) {
	defer s.hold()()
	if s.closed {
		return nil, s.isClosed()
	}
	var faces []Face
	err := s.each(func(r *sql.Rows) error {
		var f Face
		var hash []byte
		if err := r.Scan(&hash, &f.Family, &f.Bold, &f.Italic, &f.Bytes, &f.Rights); err != nil {
			return err
		}
		if f.Hash = sha256.Sum256(f.Bytes); string(f.Hash[:]) != string(hash) {
			return damaged(s.path, fmt.Sprintf("the face %q is not as it was put there", f.Family))
		}
		faces = append(faces, f)
		return nil
	}, "SELECT hash, family, bold, italic, bytes, rights FROM face ORDER BY id")
	return faces, translate(s.path, err)
}
