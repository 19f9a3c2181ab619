package assets

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// TestFaces sees that every face listed is the file of that name, is a font of
// the kind that its name says, and has its licence beside it.
func TestFaces(t *testing.T) {
	for _, face := range Faces() {
		bold := strings.Contains(face.Style, "Bold")
		italic := strings.Contains(face.Style, "Italic")
		got, ok := FaceBytes(face.Family, bold, italic)
		if !ok {
			t.Errorf("%s %s is listed but not carried", face.Family, face.Style)
			continue
		}
		want, err := os.ReadFile(filepath.Join("faces", face.File))
		if err != nil {
			t.Error(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s %s is not the file %s", face.Family, face.Style, face.File)
		}
		signature := map[string]string{".otf": "OTTO", ".ttf": "\x00\x01\x00\x00"}[filepath.Ext(face.File)]
		if !bytes.HasPrefix(got, []byte(signature)) {
			t.Errorf("%s begins with %q, want %q", face.File, got[:4], signature)
		}
		licence, err := os.ReadFile(licenceOf(face))
		if err != nil || !bytes.Contains(licence, []byte("SIL OPEN FONT LICENSE Version 1.1")) {
			t.Errorf("%s has no licence in %s: %v", face.File, licenceOf(face), err)
		}
	}
}

// licenceOf is the path of the licence that a face is under.
func licenceOf(face Face) string {
	name, _, _ := strings.Cut(face.File, "-")
	return filepath.Join("faces", strings.TrimRight(name, "0123456789")+"-OFL.txt")
}

func TestFamilies(t *testing.T) {
	want := []string{"EB Garamond", "Gentium Book Plus"}
	if got := Families(); !slices.Equal(got, want) {
		t.Errorf("Families() = %q, want %q", got, want)
	}
}

// TestFaceBytes sees that a style which a family lacks is not replaced.
func TestFaceBytes(t *testing.T) {
	tests := []struct {
		family       string
		bold, italic bool
		want         bool
	}{
		{"EB Garamond", false, false, true},
		{"EB Garamond", false, true, true},
		{"EB Garamond", true, false, false},
		{"EB Garamond", true, true, false},
		{"Gentium Book Plus", false, false, true},
		{"Gentium Book Plus", false, true, true},
		{"Gentium Book Plus", true, false, true},
		{"Gentium Book Plus", true, true, true},
		{"eb garamond", false, false, false},
		{"", false, false, false},
	}
	for _, test := range tests {
		got, ok := FaceBytes(test.family, test.bold, test.italic)
		if ok != test.want || (len(got) > 0) != test.want {
			t.Errorf("FaceBytes(%q, bold %v, italic %v) = %d bytes, %v; want %v",
				test.family, test.bold, test.italic, len(got), ok, test.want)
		}
	}
}

// TestFacesAreTheCallers sees that writing to the list changes no later one.
func TestFacesAreTheCallers(t *testing.T) {
	Faces()[0].Family = "another"
	if got := Faces()[0].Family; got != EBGaramond {
		t.Errorf("Faces()[0].Family = %q after a caller wrote to its list", got)
	}
}

func TestDemo(t *testing.T) {
	if len(Demo()) == 0 || !utf8.Valid(Demo()) {
		t.Errorf("the demo collection is %d bytes; want some, in UTF-8", len(Demo()))
	}
}

func TestIcon(t *testing.T) {
	large, err := os.ReadFile("icon/icon.png")
	if err != nil {
		t.Fatal(err)
	}
	for wide, data := range map[int][]byte{96: Icon(), 512: large} {
		icon, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if size := icon.Bounds().Size(); size.X != wide || size.Y != wide {
			t.Errorf("an icon is %v pixels, want %d by %d", size, wide, wide)
		}
		if _, _, _, alpha := icon.At(0, 0).RGBA(); alpha != 0 {
			t.Errorf("the icon's corner has alpha %d, want a transparent ground", alpha)
		}
	}
}

// TestSubsetterWASM sees that the module is the one whose origin and licence
// are written down beside it.
func TestSubsetterWASM(t *testing.T) {
	if !bytes.HasPrefix(SubsetterWASM(), []byte("\x00asm\x01\x00\x00\x00")) {
		t.Error("the subsetter is no WebAssembly module of version 1")
	}
	licence, err := os.ReadFile("subset/LICENSE.txt")
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(SubsetterWASM())
	if !bytes.Contains(licence, []byte(hex.EncodeToString(sum[:]))) {
		t.Errorf("subset/LICENSE.txt does not name the module's SHA-256, %x", sum)
	}
}
