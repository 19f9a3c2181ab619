// Package ui is what a person touches: the window, in which the book lies open
// on a desk. It is the only room that imports Fyne, and it imports no driver:
// main makes the application and hands it in.
//
// It keeps no state of the book. [headland/ui/session] holds the one state;
// what is here asks it what to show, and tells it what the hand and the keys
// do. Every glyph on the desk is ink from [headland/typeset], drawn by
// [headland/typeset/raster]; the toolkit sets type in menus and dialogs only.
//
// The window has one goroutine. Work that takes long is begun in worker.go and
// comes back by a function that main hands in.
package ui
