package pdf

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"

	"github.com/tetratelabs/wazero"

	"headland/assets"
)

// subsetterMemoryPages is how much the sandbox may use, in WebAssembly pages
// of 64 KiB: 256 MiB. A book face of 1 MB takes about 10 MiB; what asks for
// more than the limit is no font that a book is set in.
const subsetterMemoryPages = 4096

// A Subsetter makes of a font the smaller font that holds only the glyphs a
// document shows. It runs HarfBuzz's own subsetter in a sandbox that sees no
// file, no clock and no network, so a damaged or hostile font can spoil only
// its own subset.
//
// The machine code that the sandbox is compiled to is kept in the user's cache
// folder, headland/wazero, where there is one: the first Subsetter on a
// machine takes a second or so to make, later ones some hundredths. A
// Subsetter may be used by several goroutines, each call having a sandbox to
// itself. Close it when done.
type Subsetter struct {
	runtime wazero.Runtime
	cache   wazero.CompilationCache // nil where there is no cache folder
	code    wazero.CompiledModule
	once    sync.Once
}

// NewSubsetter compiles the subsetter, or takes it from the user's cache
// folder. It fails only where the program itself is damaged.
func NewSubsetter() (*Subsetter, error) {
	return newSubsetter(cacheFolder())
}

// newSubsetter keeps compiled code in folder, which holds nothing else, or
// nowhere if folder is empty or can't be written to. Kept code that turns out
// to be damaged is thrown away and made again.
func newSubsetter(folder string) (*Subsetter, error) {
	s, err := compile(openCache(folder))
	if err != nil && folder != "" {
		_ = os.RemoveAll(folder) // if it can't go, the next line does without it
		s, err = compile(nil)
	}
	if err != nil {
		return nil, fmt.Errorf("the font subsetter inside the program is damaged; install the program again: %w", err)
	}
	return s, nil
}

// compile makes a Subsetter that owns the cache, which may be nil.
func compile(cache wazero.CompilationCache) (*Subsetter, error) {
	ctx := context.Background()
	config := wazero.NewRuntimeConfig().WithMemoryLimitPages(subsetterMemoryPages)
	if cache != nil {
		config = config.WithCompilationCache(cache)
	}
	s := &Subsetter{runtime: wazero.NewRuntimeWithConfig(ctx, config), cache: cache}
	code, err := s.runtime.CompileModule(ctx, assets.SubsetterWASM())
	if err != nil {
		return nil, errors.Join(err, s.Close())
	}
	s.code = code
	return s, nil
}

// Close frees the sandbox's memory and code; the code in the cache folder
// stays. Closing twice is harmless.
func (s *Subsetter) Close() error {
	var err error
	s.once.Do(func() {
		ctx := context.Background()
		err = s.runtime.Close(ctx)
		if s.cache != nil {
			err = errors.Join(err, s.cache.Close(ctx))
		}
	})
	return err
}

// cacheFolder is where compiled code is kept, or empty where the system names
// no cache folder for this user.
func cacheFolder() string {
	base, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	return filepath.Join(base, "headland", "wazero")
}

// openCache opens the cache of compiled code in folder. It gives nil where
// that can't be done: a missing cache costs time and nothing else.
func openCache(folder string) wazero.CompilationCache {
	if folder == "" {
		return nil
	}
	cache, err := wazero.NewCompilationCacheWithDir(folder)
	if err != nil {
		return nil
	}
	return cache
}

// Subset returns a font that has the outlines of the glyphs in gids, of the
// parts they are made of and of glyph 0, and no others. Glyph ids stay what
// they were. Layout, naming and character tables are left out, since a PDF
// chooses glyphs by id; a variable font is fixed at its default. The font
// given is only read; the one returned is the caller's.
//
// It fails where the bytes are no TrueType or OpenType font that HarfBuzz can
// read.
func (s *Subsetter) Subset(font []byte, gids []uint32) ([]byte, error) {
	box, err := s.openSandbox()
	if err != nil {
		return nil, fmt.Errorf("the font subsetter did not start; free some memory and try again: %w", err)
	}
	defer box.close()
	subset := box.subset(font, gids)
	if box.err != nil {
		return nil, fmt.Errorf("the font could not be subset; check that the font file is whole: %w", box.err)
	}
	return subset, nil
}
