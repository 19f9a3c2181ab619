// Package pdf writes pages as a PDF file for a printer or a reader: glyphs
// where the setting put them, in subset faces that travel in the file, in
// black ink only, with text that can be searched and copied out exactly as it
// was written.
//
// It lays nothing out, shapes nothing and chooses no glyph: that is typeset's.
// It reads no PDF (headland/typeset/proof does) and draws no pixels
// (headland/typeset/raster does). The same document gives the same bytes every
// time and on every machine.
//
// Rules are from ISO 32000-1 (PDF 1.7) and cited as "ISO" and a clause or
// table beside the code.
package pdf
