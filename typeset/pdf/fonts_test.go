package pdf

import (
	"bytes"
	"encoding/binary"
	"os"
	"regexp"
	"strings"
	"testing"

	"headland/assets"
	"headland/typeset"
)

// fontLine is pdffonts' line about one font: name, then embedded, subset and
// with a Unicode map.
var fontLine = regexp.MustCompile(`(?m)^(\S+) +CID (Type 0C|TrueType) +Custom +(yes|no) +(yes|no) +(yes|no) `)

// fontsIn reads a file's fonts with pdffonts: name, kind, embedded, subset and
// with a Unicode map.
func fontsIn(t *testing.T, path string) []string {
	t.Helper()
	var all []string
	for _, m := range fontLine.FindAllStringSubmatch(tool(t, "pdffonts", path), -1) {
		all = append(all, strings.Join(m[1:], " "))
	}
	return all
}

// Faces are embedded, subset and mapped to Unicode (pdffonts), each once
// however many runs show it.
func TestFacesAreEmbeddedAsSubsets(t *testing.T) {
	garamond := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	gentium := newSetter(t, faceNamed(t, assets.GentiumBookPlus, true))
	again := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	page := pageOf(garamond.row(t, "verse", 40, 60, 11), gentium.row(t, "verse", 40, 80, 11), again.row(t, "turns", 40, 100, 9))
	got := fontsIn(t, saved(t, Document{Pages: []*typeset.Page{page}}))
	want := regexp.MustCompile(`^[A-Z]{6}\+EBGaramond12-Regular Type 0C yes yes yes;[A-Z]{6}\+GentiumBookPlus-Italic TrueType yes yes yes$`)
	if !want.MatchString(strings.Join(got, ";")) {
		t.Errorf("got %q", got)
	}
}

// withRights is a copy of a font whose maker has set these embedding rights.
func withRights(t *testing.T, f *typeset.Face, fsType uint16) *typeset.Face {
	t.Helper()
	data := bytes.Clone(f.Data())
	tables, err := sfntTables(data)
	if err != nil {
		t.Fatal(err)
	}
	binary.BigEndian.PutUint16(tables["OS/2"][8:], fsType) // the tables share data's bytes
	return parsed(t, data)
}

// A maker's embedding rights are honoured (OpenType 1.9, OS/2 fsType).
func TestEmbeddingRights(t *testing.T) {
	for _, c := range []struct {
		fsType uint16
		want   string // what pdffonts says of subset; empty if refused
	}{
		{0x0000, "yes"}, // installable
		{0x0002, ""},    // restricted
		{0x0004, "yes"}, // preview and print
		{0x0008, "yes"}, // editable
		{0x0100, "no"},  // never in part
		{0x0200, ""},    // bitmaps only
	} {
		eachFamily(t, func(t *testing.T, s *setter) {
			s = newSetter(t, withRights(t, s.face, c.fsType))
			d := Document{Pages: []*typeset.Page{pageOf(s.row(t, "office", 40, 60, 11))}}
			if c.want == "" {
				if err := Write(&bytes.Buffer{}, d); err == nil || !strings.Contains(err.Error(), "choose another face") {
					t.Errorf("fsType %#x: error %v, want a refusal", c.fsType, err)
				}
				return
			}
			fonts := fontsIn(t, saved(t, d))
			if len(fonts) != 1 || !strings.HasSuffix(fonts[0], " yes "+c.want+" yes") {
				t.Errorf("fsType %#x: %q, want subset %s", c.fsType, fonts, c.want)
			}
		})
	}
}

// A whole face copies out as well as a subset does (pdftotext).
func TestWholeFaceCopiesOut(t *testing.T) {
	eachFamily(t, func(t *testing.T, s *setter) {
		s = newSetter(t, withRights(t, s.face, 0x0100))
		if got := copied(t, s.row(t, "office", 40, 60, 11)); got != "office\n" {
			t.Errorf("got %q", got)
		}
	})
}

// A subset looks exactly as the whole face does (pdftoppm), in every face
// carried.
func TestSubsetLooksAsTheWholeFace(t *testing.T) {
	const text = "Sphinx of black quartz, judge my vow: “Œuvre & žluťoučký—39”"
	for _, f := range assets.Faces() {
		t.Run(f.File, func(t *testing.T) {
			part := newSetter(t, parsed(t, assetBytes(t, f)))
			whole := newSetter(t, withRights(t, part.face, 0x0100))
			a, b := picture(t, part.row(t, text, 10, 60, 12)), picture(t, whole.row(t, text, 10, 60, 12))
			if !bytes.Equal(a, b) {
				t.Error("the pages look different")
			}
		})
	}
}

// picture is a page with the row as grey pixels.
func picture(t *testing.T, row typeset.Row) []byte {
	t.Helper()
	path := saved(t, Document{Pages: []*typeset.Page{pageOf(row)}})
	tool(t, "pdftoppm", "-gray", "-r", "200", "-singlefile", path, path)
	image, err := os.ReadFile(path + ".pgm")
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Count(image, []byte{0}) < 1000 {
		t.Fatal("the page is empty")
	}
	return image
}

// A glyph that the face lacks is a fault of the setting and is said so.
func TestMissingGlyphIsRefused(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	row := s.row(t, "x", 40, 60, 11)
	row.Runs[0].Glyphs[0].ID = 60000
	err := Write(&bytes.Buffer{}, Document{Pages: []*typeset.Page{pageOf(row)}})
	if err == nil || !strings.Contains(err.Error(), "page 1: the face EBGaramond12-Regular has no glyph 60000") {
		t.Errorf("error %v", err)
	}
}
