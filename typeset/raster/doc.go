// Package raster inks pages as pixels, at any scale, for the screen and for
// PNG files.
//
// It places nothing: where a glyph stands was settled by typeset, in 1/64 pt,
// and is only brought to device pixels here. One rule does that ([Pen.X] and
// [Pen.Y]), so whatever shares a length shares a pixel. Across, glyphs stand on
// quarters of a pixel, so that their spacing is even; down, baselines stand on
// whole pixels, so that every row of a page is equally sharp. Nothing is
// hinted.
//
// Colours are premultiplied, and laid over what is there (Porter and Duff's
// source over), in the values as they are, without a change of gamma.
//
// Its siblings are pdf, which writes the same pages for a printer, and record,
// which writes them as text.
package raster
