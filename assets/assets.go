// Package assets carries the bytes that the program takes with it wherever it
// goes: the book faces, the demo collection, the icon and the font subsetter.
//
// It has no logic: it parses nothing, shapes nothing and opens no file, and it
// imports nothing of the project. What the bytes mean is for the packages that
// ask: typeset reads the faces, typeset/pdf runs the subsetter, ui shows the
// icon. Where each file comes from, and under which licence, is said beside it
// and in NOTICE.
package assets

import _ "embed"

var (
	//go:embed icon/window.png
	icon []byte

	//go:embed subset/harfbuzz-subset.wasm
	subsetter []byte
)

// Icon returns the program's icon for a window, a PNG of 96 by 96 pixels with a
// transparent ground. icon/icon.svg is what it is drawn from; icon/icon.png is
// the same at 512 by 512 for what packages the program. The bytes belong to this
// package and must not be written to.
func Icon() []byte { return icon }

// SubsetterWASM returns HarfBuzz's font subsetter as a WebAssembly module. It
// imports nothing, needs _initialize called once before all else, and exports
// malloc, free, memory and the hb_subset_* functions of HarfBuzz's C interface.
// The bytes belong to this package and must not be written to.
func SubsetterWASM() []byte { return subsetter }
