package pdf

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"headland/typeset"
)

// A cluster is glyphs that were set for a piece of text together: one for
// one, several letters as a ligature, or a letter as several glyphs.
type cluster struct {
	glyphs []typeset.Glyph
	text   string
}

// clusters splits a run and appends its clusters to all, in the order of the
// glyphs: in a run of a script that is written from right to left the last of the
// text comes first. Characters that show nothing are copied out with what stands
// before them.
func clusters(all []cluster, run *typeset.Run) []cluster {
	for i := 0; i < len(run.Glyphs); {
		c := clusterAt(run, i)
		i += len(c.glyphs)
		if c.unseen() && len(all) > 0 {
			all[len(all)-1].text += c.text
		} else {
			all = append(all, c)
		}
	}
	return all
}

// clusterAt is the cluster that begins with glyph i. Its text ends where that of
// the glyphs beside it begins: the next ones, or, from right to left, those before.
func clusterAt(run *typeset.Run, i int) cluster {
	start, end, next := run.Glyphs[i].Cluster, len(run.Text), i+1
	for next < len(run.Glyphs) && run.Glyphs[next].Cluster == start {
		next++
	}
	switch {
	case next < len(run.Glyphs) && run.Glyphs[next].Cluster > start:
		end = run.Glyphs[next].Cluster
	case i > 0 && run.Glyphs[i-1].Cluster > start:
		end = run.Glyphs[i-1].Cluster
	}
	return cluster{run.Glyphs[i:next], run.Text[start:end]}
}

// unseen says whether the cluster is a soft hyphen, a joiner or the like. The
// shaper puts a space without advance in its place; shown, it would have the
// reader's pen step back, which some take for a new word.
func (c cluster) unseen() bool {
	for _, g := range c.glyphs {
		if g.Advance != 0 {
			return false
		}
	}
	return c.text != "" && strings.IndexFunc(c.text, seen) < 0
}

// seen says whether a character shows: whether it isn't one that Unicode's
// DerivedCoreProperties call Default_Ignorable_Code_Point.
func seen(r rune) bool {
	return !unicode.In(r, unicode.Cf, unicode.Variation_Selector, unicode.Other_Default_Ignorable_Code_Point)
}

// share parts a cluster's text among its glyphs: of what the glyphs before i
// left, it gives glyph i's text and the rest. One after the other the glyphs
// spell the cluster: a character to a glyph, and what is left over to the last.
// Where there are more glyphs than characters the last glyphs have no text.
func (c cluster) share(i int, left string) (text, rest string) {
	if i == len(c.glyphs)-1 {
		return left, ""
	}
	_, size := utf8.DecodeRuneInString(left)
	return left[:size], left[size:]
}

// spelled says whether the cluster's text should also be said once for all its
// glyphs. That is so where there are several: they may be fewer or more than
// the characters, and an accent that the font raises or sets back would look
// to a reader like the start of another word or line.
func (c cluster) spelled() bool { return len(c.glyphs) > 1 && c.text != "" }
