// Package typeset decides where every glyph of a book goes. It takes a
// [pagemodel.Collection] and gives a [Setting], whose pages are runs of glyphs
// at exact places, each knowing the line that it came from.
//
// The work runs one way: shape → fit → blocks → pages → spreads. Nothing here
// draws: ink is made by the rooms below (raster, pdf, record), and nothing here
// knows a window. HarfBuzz's advances, in font units, decide every width;
// golang.org/x/image gives the outlines.
package typeset
