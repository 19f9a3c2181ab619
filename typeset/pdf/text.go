package pdf

import (
	"fmt"

	"headland/typeset"
)

// A text is the part of a content between BT and ET. It follows where the
// reader's pen is, so that each glyph lands where the setting put it however
// many stand before it on the line.
type text struct {
	*content
	foot   typeset.Length // of the page on the sheet, y up
	face   *face
	size   typeset.Length
	turned bool          // whether the row lies on its side
	origin typeset.Point // of the run, on the page

	clusters []cluster // of the run; its memory serves the next

	placed       bool          // whether the pen stands on a line at all
	line         typeset.Point // where that line began, on the page
	pen          int           // from there, in tenths of a thousandth of an em
	array, codes bool          // whether [ and < are open
}

// slack is how far a glyph may stand from its place before the pen is moved,
// in 1/64 pt times tenths of a thousandth of an em: 0.006 pt. With the
// rounding of the move itself an error stays under 0.01 pt up to 72 pt type;
// places are given to 0.016 pt.
const slack = 0.006 * 64 * 10000

// run shows the glyphs of a run of the row.
func (t *text) run(row *typeset.Row, run *typeset.Run) error {
	if len(run.Glyphs) == 0 {
		return nil
	}
	if err := t.use(run.Face, run.Size); err != nil {
		return err
	}
	t.turned = row.Turned
	t.placed, t.origin = false, typeset.Point{X: row.X + run.X, Y: row.Baseline}
	t.clusters = clusters(t.clusters[:0], run)
	for _, c := range t.clusters {
		if err := t.cluster(c); err != nil {
			return err
		}
	}
	t.close()
	return nil
}

// use makes a face and size the ones in force.
func (t *text) use(f *typeset.Face, size typeset.Length) error {
	if size <= 0 {
		return fmt.Errorf("type of %v can't be printed; give it a larger size", size)
	}
	name, fc, err := t.faces.of(f)
	if err != nil {
		return err
	}
	if fc != t.face || size != t.size {
		t.face, t.size = fc, size
		fmt.Fprintf(&t.b, "/%s %s Tf\n", name, number(size))
	}
	return nil
}

// cluster shows a cluster. Readers that know ActualText (ISO 14.9.4) copy the
// text it gives; others go glyph by glyph and come to the same.
func (t *text) cluster(c cluster) error {
	if c.spelled() {
		t.close()
		fmt.Fprintf(&t.b, "/Span << /ActualText %s >> BDC\n", textString(c.text))
	}
	left := c.text
	for i, g := range c.glyphs {
		var copied string
		copied, left = c.share(i, left)
		if err := t.glyph(g, copied); err != nil {
			return err
		}
	}
	if c.spelled() {
		t.close()
		t.b.WriteString("EMC\n")
	}
	return nil
}

// glyph shows one glyph at its place, with the text that copies out for it.
func (t *text) glyph(g typeset.Glyph, copied string) error {
	code, err := t.face.code(g.ID, copied)
	if err != nil {
		return err
	}
	at := typeset.Point{X: t.origin.X + g.X, Y: t.origin.Y + g.Y}
	if !t.placed || at.Y != t.line.Y {
		t.startLine(at)
	}
	if off := t.pen - t.tenthsTo(at.X); max(off, -off)*int(t.size) > slack {
		t.move(off)
	}
	t.show(code)
	t.pen += 10 * t.face.advance(g.ID)
	return nil
}

// startLine puts the pen at a place, exactly. A turned row's x runs up from the
// foot of the page and its y right from the left edge: see [typeset.Row].
func (t *text) startLine(at typeset.Point) {
	t.close()
	t.placed, t.line, t.pen = true, at, 0
	if t.turned {
		fmt.Fprintf(&t.b, "0 1 -1 0 %s %s Tm\n", number(t.left+at.Y), number(t.foot+at.X))
		return
	}
	fmt.Fprintf(&t.b, "1 0 0 1 %s %s Tm\n", number(t.left+at.X), number(t.head-at.Y))
}

// tenthsTo is how far x is from where the line began, in tenths of a
// thousandth of an em, rounded: ISO 9.4.4 counts a line's moves in thousandths.
func (t *text) tenthsTo(x typeset.Length) int {
	n, d := 2*10000*int(x-t.line.X)+int(t.size), 2*int(t.size)
	if n < 0 {
		n -= d - 1
	}
	return n / d
}

// move takes the pen back by so many tenths of a thousandth of an em.
func (t *text) move(by int) {
	t.open()
	if t.codes {
		t.b.WriteByte('>')
		t.codes = false
	}
	t.b.WriteString(tenths(by))
	t.pen -= by
}

// show writes a character code.
func (t *text) show(code int) {
	t.open()
	if !t.codes {
		t.b.WriteByte('<')
		t.codes = true
	}
	const digits = "0123456789ABCDEF"
	for shift := 12; shift >= 0; shift -= 4 {
		t.b.WriteByte(digits[code>>shift&15])
	}
}

// open starts an array of codes and moves, if none is open.
func (t *text) open() {
	if !t.array {
		t.b.WriteByte('[')
		t.array = true
	}
}

// close ends the array that is open, if any, and has it shown.
func (t *text) close() {
	if t.codes {
		t.b.WriteByte('>')
	}
	if t.array {
		t.b.WriteString("] TJ\n")
	}
	t.array, t.codes = false, false
}
