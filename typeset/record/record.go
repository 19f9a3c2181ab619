// Package record writes pages as text, for tests and for reviews: every number
// exact, and nothing left to a machine, a clock or a map. Equal pages give equal
// bytes. It draws nothing; its siblings raster and pdf do.
//
// [Page] and [Pages] give a line for each row, with a check number for the
// glyphs in it, so that any difference of placement shows; [Glyphs] writes the
// glyphs themselves, and so shows where it is.
//
// Lengths are in points, from the trim's top left corner, y down. Texts are
// quoted as in Go: what can't be seen, such as a no-break space, is escaped.
package record

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"hash/crc32"
	"io"
	"strconv"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
)

// Page writes a page: a line for the page, and one for each row of type. The
// only errors are w's.
func Page(w io.Writer, p *typeset.Page) error { return Pages(w, p) }

// Pages writes pages one after another, with an empty line between two. A nil
// page is written as "no page". The only errors are w's.
func Pages(w io.Writer, pages ...*typeset.Page) error { return write(w, false, pages) }

// Glyphs is Pages with, under each row, its runs: face (the start of its ID),
// size, place and text, and every glyph as id@x+advance:cluster, or
// id@x,y+advance:cluster where it is off the baseline. X counts from the run's
// origin; cluster is a byte offset in the run's text.
func Glyphs(w io.Writer, pages ...*typeset.Page) error { return write(w, true, pages) }

func write(w io.Writer, glyphs bool, pages []*typeset.Page) error {
	var b bytes.Buffer
	for i, p := range pages {
		if i > 0 {
			b.WriteByte('\n')
		}
		page(&b, p, glyphs)
	}
	if _, err := w.Write(b.Bytes()); err != nil {
		return fmt.Errorf("the pages could not be written: %w", err)
	}
	return nil
}

func page(b *bytes.Buffer, p *typeset.Page, glyphs bool) {
	if p == nil {
		b.WriteString("no page\n")
		return
	}
	t := p.Text
	fmt.Fprintf(b, "page %d  folio %q  %v  trim %s × %s  text %s × %s at %s, %s\n", p.Number, p.Folio, p.Side,
		pts(p.Trim.Width), pts(p.Trim.Height), pts(t.W), pts(t.H), pts(t.X), pts(t.Y))
	for i := range p.Rows {
		row(b, &p.Rows[i])
		if glyphs {
			runs(b, &p.Rows[i])
		}
	}
}

// row writes a row: its line of the grid; its number; what it is; whose it is,
// as poem and line; where it is, and whether it lies on its side; its text; and
// the check number.
func row(b *bytes.Buffer, r *typeset.Row) {
	fmt.Fprintf(b, "%3d  %s  %v  %v  %s  x %s  y %s  width %s of %s", r.Grid, number(r.Number), r.Role, r.Turn, ids(r),
		pts(r.X), pts(r.Baseline), pts(r.Width), pts(r.Room))
	if r.Turned {
		b.WriteString("  turned")
	}
	if r.Overrun != 0 {
		fmt.Fprintf(b, "  over %s", pts(r.Overrun))
	}
	fmt.Fprintf(b, "  bytes %d–%d  ", r.Start, r.End)
	if r.Last {
		b.WriteString("end  ")
	}
	fmt.Fprintf(b, "%s  ✓%08x\n", strconv.Quote(text(r)), check(r))
}

// number is the number of a row of the poet's, or a dash.
func number(n int) string {
	if n == 0 {
		return " –"
	}
	return fmt.Sprintf("%2d", n)
}

// ids are the poem's and the line's, a dash for what there isn't.
func ids(r *typeset.Row) string {
	return "poem " + id(int64(r.Poem)) + "  line " + id(int64(r.Line))
}

func id(n int64) string {
	if n == 0 {
		return "–"
	}
	return strconv.FormatInt(n, 10)
}

// pts is a length in points, exactly: 1/64 pt has at most six decimals.
func pts(l pagemodel.Length) string { return strconv.FormatFloat(l.Points(), 'f', -1, 64) }

// text is the characters of a row's runs.
func text(r *typeset.Row) string {
	var s strings.Builder
	for i := range r.Runs {
		s.WriteString(r.Runs[i].Text)
	}
	return s.String()
}

func runs(b *bytes.Buffer, r *typeset.Row) {
	for i := range r.Runs {
		run := &r.Runs[i]
		fmt.Fprintf(b, "       run  face %s  size %s  x %s  width %s  from byte %d  %s\n",
			face(run.Face, 4), pts(run.Size), pts(run.X), pts(run.Width), run.Start, strconv.Quote(run.Text))
		glyphs(b, run.Glyphs)
	}
}

// glyphsInLine is how many glyphs stand in a line, so that a difference is seen
// near its place.
const glyphsInLine = 8

func glyphs(b *bytes.Buffer, all []typeset.Glyph) {
	for i, g := range all {
		if i%glyphsInLine == 0 {
			b.WriteString("           ")
		}
		fmt.Fprintf(b, "  %d@%s", g.ID, pts(g.X))
		if g.Y != 0 {
			b.WriteString("," + pts(g.Y))
		}
		fmt.Fprintf(b, "+%s:%d", pts(g.Advance), g.Cluster)
		if i%glyphsInLine == glyphsInLine-1 || i == len(all)-1 {
			b.WriteByte('\n')
		}
	}
}

// face is so many bytes of a face's ID.
func face(f *typeset.Face, n int) string {
	if f == nil {
		return "none"
	}
	id := f.ID()
	return hex.EncodeToString(id[:n])
}

// check is a number for all that the runs of a row hold.
func check(r *typeset.Row) uint32 {
	var b []byte
	put := func(n int) { b = binary.LittleEndian.AppendUint64(b, uint64(n)) }
	for i := range r.Runs {
		run := &r.Runs[i]
		b = append(b, face(run.Face, 32)...)
		b = append(b, run.Text...)
		for _, n := range []int{len(run.Text), int(run.Size), int(run.X), int(run.Width), run.Start, len(run.Glyphs)} {
			put(n)
		}
		for _, g := range run.Glyphs {
			for _, n := range []int{int(g.ID), int(g.X), int(g.Y), int(g.Advance), g.Cluster} {
				put(n)
			}
		}
	}
	return crc32.ChecksumIEEE(b)
}
