// Package order is about the sheets that a book's pages are printed on: which
// pages share a side of a sheet, so that the sheets fold into the book
// (imposition), and where the two pages of a side lie on a printer's paper.
//
// It sets nothing and draws nothing: pages come from typeset by their numbers,
// and headland/typeset/pdf puts them on the paper.
package order
