// Package order is about the order of a book and the sheets that its pages are
// printed on: what an order costs in blanks, unfaced poems and pages ([TollOf]), and
// the search for a better one under conditions ([Search]); which pages share a side
// of a sheet, so that the sheets fold into the book (imposition), and where the two
// pages of a side lie on a printer's paper.
//
// It sets nothing, draws nothing and puts no book into another order: pages come
// from typeset by their numbers, and headland/typeset/pdf puts them on the paper.
package order
