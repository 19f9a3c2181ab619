package pdf

import (
	"bytes"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"headland/assets"
)

func openSubsetter(t testing.TB) *Subsetter {
	t.Helper()
	s, err := NewSubsetter()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s
}

// Every face carried makes a small font that has its outlines' own tables, no
// layout and no names, and keeps its glyphs' numbers.
func TestSubsetOfEveryFace(t *testing.T) {
	s := openSubsetter(t)
	for _, f := range assets.Faces() {
		t.Run(f.File, func(t *testing.T) {
			font := assetBytes(t, f)
			small, err := s.Subset(font, []uint32{50, 3, 40})
			if err != nil {
				t.Fatal(err)
			}
			if len(small) > len(font)/4 {
				t.Errorf("%d bytes of %d: not subset", len(small), len(font))
			}
			tables, err := sfntTables(small)
			if err != nil {
				t.Fatal(err)
			}
			for _, dropped := range droppedTables {
				if _, there := tables[dropped]; there {
					t.Errorf("the subset still has a table %s", dropped)
				}
			}
			if n := tables["maxp"].u16(4); n <= 50 {
				t.Errorf("%d glyphs: glyph 50 lost its number", n)
			}
		})
	}
}

func assetBytes(t testing.TB, f assets.Face) []byte {
	t.Helper()
	bold := f.Style == "Bold" || f.Style == "Bold Italic"
	italic := f.Style == "Italic" || f.Style == "Bold Italic"
	font, ok := assets.FaceBytes(f.Family, bold, italic)
	if !ok {
		t.Fatalf("assets lists %s and does not carry it", f.File)
	}
	return font
}

// Equal questions get equal answers, whatever was asked before.
func TestSubsetIsReproducible(t *testing.T) {
	s, font := openSubsetter(t), assetBytes(t, assets.Faces()[0])
	subset := func(gids ...uint32) []byte {
		b, err := s.Subset(font, gids)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	first, other, again := subset(5, 6, 7), subset(8), subset(7, 6, 5)
	if !bytes.Equal(first, again) || bytes.Equal(first, other) {
		t.Error("the same glyphs must give the same subset, others another")
	}
}

// Bytes that are no font are refused; fonts damaged at random are refused or
// subset, and neither crash the program nor spoil the next subset.
func TestDamagedFonts(t *testing.T) {
	s := openSubsetter(t)
	for _, bad := range [][]byte{nil, {}, []byte("no font"), make([]byte, 5000)} {
		if _, err := s.Subset(bad, []uint32{1}); err == nil {
			t.Errorf("%d bytes that are no font were subset", len(bad))
		}
	}
	dice := rand.New(rand.NewPCG(5, 6))
	for _, f := range assets.Faces() {
		font := assetBytes(t, f)
		for range 10 {
			_, _ = s.Subset(damaged(dice, font), []uint32{1, 50, 99})
		}
		if _, err := s.Subset(font, []uint32{1, 50, 99}); err != nil {
			t.Errorf("%s after damaged ones: %v", f.File, err)
		}
	}
}

// damaged is a copy with bytes changed, mostly in the head, or cut short.
func damaged(dice *rand.Rand, font []byte) []byte {
	bad := bytes.Clone(font)
	for range 1 + dice.IntN(200) {
		bad[dice.IntN(len(bad))] = byte(dice.Uint32())
		bad[12+dice.IntN(300)] = byte(dice.Uint32())
	}
	if dice.IntN(3) == 0 {
		bad = bad[:dice.IntN(len(bad))]
	}
	return bad
}

// Compiled code is kept where it can be; its absence is no fault, nor is damage
// to what was kept.
func TestCacheOfCompiledCode(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "headland", "wazero")
	reopen := func(dir string) {
		t.Helper()
		s, err := newSubsetter(dir)
		if err != nil {
			t.Fatalf("cache in %q: %v", dir, err)
		}
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}
	reopen("")
	reopen("/dev/null/nowhere")
	reopen(folder)
	spoilFiles(t, folder)
	reopen(folder)
}

// spoilFiles cuts every file in a folder short; there must be some.
func spoilFiles(t *testing.T, folder string) {
	t.Helper()
	spoilt := 0
	err := filepath.WalkDir(folder, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		spoilt++
		return os.Truncate(path, 100)
	})
	if err != nil || spoilt == 0 {
		t.Fatalf("%d files kept in the cache folder: %v", spoilt, err)
	}
}

// Opening the subsetter: cold compiles it, warm takes it from the cache.
func BenchmarkOpenSubsetter(b *testing.B) {
	warm := b.TempDir()
	for name, folder := range map[string]func() string{
		"cold": func() string { return b.TempDir() },
		"warm": func() string { return warm },
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				s, err := newSubsetter(folder())
				if err != nil {
					b.Fatal(err)
				}
				_ = s.Close()
			}
		})
	}
}
