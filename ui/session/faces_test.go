package session

import (
	"bytes"
	"encoding/binary"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"unicode/utf16"

	"headland/assets"
	"headland/pagemodel"
)

// utf16BE is how a name table holds a name.
func utf16BE(s string) []byte {
	var b []byte
	for _, unit := range utf16.Encode([]rune(s)) {
		b = binary.BigEndian.AppendUint16(b, unit)
	}
	return b
}

// another is a font of a family of its own, with those rights.
func another(t *testing.T, italic bool, fsType uint16) string {
	t.Helper()
	bundled, ok := assets.FaceBytes(assets.GentiumBookPlus, false, italic)
	if !ok {
		t.Fatal("there is no such face")
	}
	data := bytes.ReplaceAll(bundled, utf16BE("Gentium Book Plus"), utf16BE("Another Book Face"))
	data = bytes.ReplaceAll(data, []byte("Gentium Book Plus"), []byte("Another Book Face"))
	binary.BigEndian.PutUint16(table(data, "OS/2")[8:], fsType)
	path := filepath.Join(t.TempDir(), "face.ttf")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestReadFont sees that the faces that travel with the program say of
// themselves what assets says of them.
func TestReadFont(t *testing.T) {
	for _, face := range assets.Faces() {
		for _, style := range []struct {
			name         string
			bold, italic bool
		}{{"Regular", false, false}, {"Italic", false, true}, {"Bold", true, false}, {"Bold Italic", true, true}} {
			if style.name != face.Style {
				continue
			}
			data, _ := assets.FaceBytes(face.Family, style.bold, style.italic)
			font, err := readFont(data)
			if err != nil || font.bold != style.bold || font.italic != style.italic || font.rights.mayTravel() != nil {
				t.Errorf("%s %s says it is %+v, %v", face.Family, face.Style, font, err)
			}
		}
	}
}

// TestAddFace sees that a poet's own face travels in the file and sets the book
// wherever it is opened.
func TestAddFace(t *testing.T) {
	s := imported(t)
	garamond := places(s.Setting())
	d := s.Collection().Design()
	d.Face = "Another Book Face"
	must(t, s.Do(pagemodel.SetDesign{Design: d}))
	if s.Setting().FaceHere() {
		t.Fatal("the face is here before it was added")
	}
	refused(t, s.ExportPDF(filepath.Join(t.TempDir(), "x.pdf"), PDFOptions{}, nil), "Another Book Face", "add the face")
	told := 0
	s.OnChange(func() { told++ })
	must(t, s.AddFace(another(t, false, 0)))
	must(t, s.AddFace(another(t, true, 8)))
	if !s.Setting().FaceHere() || places(s.Setting()) == garamond || told != 2 {
		t.Errorf("the book is not set in the face; told %d times", told)
	}
	if got := s.Families(); !slices.Equal(got, append(assets.Families(), "Another Book Face")) {
		t.Errorf("the families are %q", got)
	}
	copied := filepath.Join(t.TempDir(), "copy.headland")
	must(t, s.SaveCopy(copied))
	elsewhere, err := Open(copied)
	must(t, err)
	defer closed(t, elsewhere)
	if places(elsewhere.Setting()) != places(s.Setting()) {
		t.Error("the copy is set otherwise")
	}
	must(t, elsewhere.ExportPDF(filepath.Join(t.TempDir(), "x.pdf"), PDFOptions{}, nil))
}

// TestFacesThatMayNotTravel goes through the rights a font's maker can give
// (OpenType, OS/2 fsType).
func TestFacesThatMayNotTravel(t *testing.T) {
	tests := []struct {
		fsType uint16
		want   string // in the refusal
		rights string
	}{
		{0x0000, "", "installable"},
		{0x0002, "restricted licence", "restricted"},
		{0x0004, "", "preview and print"},
		{0x0006, "", "preview and print"},
		{0x0008, "", "editable"},
		{0x0104, "", "preview and print"},
		{0x0200, "bitmaps", "installable"},
	}
	for _, test := range tests {
		if got := rights(test.fsType).String(); got != test.rights {
			t.Errorf("fsType %#04x is %q, want %q", test.fsType, got, test.rights)
		}
		s := imported(t)
		path := another(t, false, test.fsType)
		err := s.AddFace(path)
		if test.want == "" {
			must(t, err)
			continue
		}
		refused(t, err, path, "Another Book Face", "can't travel", test.want, "choose another face")
		if families := s.Families(); !slices.Equal(families, assets.Families()) {
			t.Errorf("refused, the families are %q", families)
		}
	}
}

// TestNoFace sees that what is no font is refused in words.
func TestNoFace(t *testing.T) {
	s := imported(t)
	refused(t, s.AddFace("nowhere.otf"), "nowhere.otf", "no such file")
	path := write(t, "verse.ttf", verse)
	refused(t, s.AddFace(path), path, "choose a .ttf or .otf")
	whole, err := os.ReadFile(another(t, false, 0))
	must(t, err)
	for _, length := range []int{4, 12, 100, 1000, len(whole) / 2} {
		cut := write(t, "cut.ttf", string(whole[:length]))
		refused(t, s.AddFace(cut), cut)
	}
}
