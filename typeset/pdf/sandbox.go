package pdf

import (
	"context"
	"errors"
	"fmt"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
)

// Numbers of HarfBuzz's C interface, from hb.h and hb-subset.h.
const (
	hbMemoryModeReadonly = 1 // HB_MEMORY_MODE_READONLY
	hbFlagRetainGIDs     = 2 // HB_SUBSET_FLAGS_RETAIN_GIDS
	hbSetDropTable       = 3 // HB_SUBSET_SETS_DROP_TABLE_TAG
)

// droppedTables are the tables that a font inside a PDF has no use for. What
// is left is what ISO 32000-1, table 126 asks of an embedded font: outlines,
// their metrics and their hints.
var droppedTables = []string{
	"GSUB", "GPOS", "GDEF", "BASE", "JSTF", "MATH", "kern", "morx", "kerx",
	"cmap", "name", "post", "OS/2", "STAT", "DSIG", "VORG", "meta", "gasp",
	"LTSH", "hdmx", "VDMX", "PCLT", "FFTM", "TSI0", "TSI1", "TSI2", "TSI3",
	"TSI5", "Feat", "Glat", "Gloc", "Silf", "Sill", "SVG ", "COLR", "CPAL",
	"CBDT", "CBLC", "sbix", "EBDT", "EBLC", "EBSC",
}

// A sandbox is one instance of the subsetter, with memory of its own. The
// first call that fails is kept in err, and later calls do nothing.
type sandbox struct {
	module api.Module
	err    error
}

// openSandbox starts an instance that sees no files.
func (s *Subsetter) openSandbox() (*sandbox, error) {
	config := wazero.NewModuleConfig().WithName("").
		WithFSConfig(wazero.NewFSConfig()).
		WithStartFunctions("_initialize")
	module, err := s.runtime.InstantiateModule(context.Background(), s.code, config)
	if err != nil {
		return nil, err
	}
	return &sandbox{module: module}, nil
}

// close gives the instance's memory back, and with it all that was allocated
// inside; so nothing in here is freed one by one.
func (b *sandbox) close() { _ = b.module.Close(context.Background()) }

// subset runs hb_subset_or_fail on font, keeping gids.
func (b *sandbox) subset(font []byte, gids []uint32) []byte {
	face := b.face(font)
	input := b.handle("hb_subset_input_create_or_fail")
	b.call("hb_subset_input_set_flags", input, hbFlagRetainGIDs)
	b.call("hb_subset_input_pin_all_axes_to_default", input, face)
	b.fill(b.call("hb_subset_input_set", input, hbSetDropTable), tableTags(droppedTables))
	b.fill(b.call("hb_subset_input_glyph_set", input), gids)
	return b.bytesOf(b.handle("hb_subset_or_fail", face, input))
}

// face copies font into the sandbox and opens its first face.
func (b *sandbox) face(font []byte) uint64 {
	at := b.handle("malloc", uint64(len(font)))
	if b.err == nil && !b.module.Memory().Write(uint32(at), font) {
		b.err = errors.New("the font is larger than the sandbox")
	}
	blob := b.handle("hb_blob_create", at, uint64(len(font)), hbMemoryModeReadonly, 0, 0)
	return b.handle("hb_face_create", blob, 0)
}

// fill puts values into a set of HarfBuzz's.
func (b *sandbox) fill(set uint64, values []uint32) {
	for _, v := range values {
		b.call("hb_set_add", set, uint64(v))
	}
}

// bytesOf copies a face's font file out of the sandbox.
func (b *sandbox) bytesOf(face uint64) []byte {
	blob := b.handle("hb_face_reference_blob", face)
	size := b.call("hb_blob_get_length", blob)
	at := b.handle("hb_blob_get_data", blob, 0)
	if b.err != nil {
		return nil
	}
	view, ok := b.module.Memory().Read(uint32(at), uint32(size))
	if !ok {
		b.err = errors.New("the subset lies outside the sandbox")
		return nil
	}
	return append([]byte(nil), view...)
}

// handle calls a function whose answer is never 0 unless it failed.
func (b *sandbox) handle(name string, args ...uint64) uint64 {
	answer := b.call(name, args...)
	if b.err == nil && answer == 0 {
		b.err = fmt.Errorf("%s gave nothing", name)
	}
	return answer
}

// call calls one of the subsetter's functions; what it answers is 0 where it
// answers nothing or an earlier call failed.
func (b *sandbox) call(name string, args ...uint64) uint64 {
	if b.err != nil {
		return 0
	}
	answers, err := b.module.ExportedFunction(name).Call(context.Background(), args...)
	if err != nil {
		b.err = fmt.Errorf("%s: %w", name, err)
		return 0
	}
	if len(answers) == 0 {
		return 0
	}
	return answers[0]
}

// tableTags turns table names into HarfBuzz's numbers for them.
func tableTags(names []string) []uint32 {
	tags := make([]uint32, len(names))
	for i, n := range names {
		tags[i] = uint32(n[0])<<24 | uint32(n[1])<<16 | uint32(n[2])<<8 | uint32(n[3])
	}
	return tags
}
