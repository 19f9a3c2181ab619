package pagemodel

// Margins are the white round the text, named as the trade names them: inner
// at the gutter, outer at the fore-edge. They are the same for both pages of a
// spread; which side of the sheet each falls on is the page's [Side].
type Margins struct {
	Inner, Outer, Head, Foot Length
}

// Canon fills in the margins of the canon of page construction (van de Graaf,
// Tschichold): inner a ninth of the width, outer two ninths, head a ninth of
// the height, foot two ninths. The text then has the shape of the page and
// 4/9 of its area, and on a 2:3 page the margins stand as 2:3:4:6. (J.
// Tschichold, The Form of the Book, "Consistent Correlation Between Book Page
// and Type Area": from memory.)
func Canon(t Trim) Margins {
	w, h := t.Width/9, t.Height/9
	return Margins{Inner: w, Head: h, Outer: 2 * w, Foot: 2 * h}
}

// Left is the margin at the left edge of the sheet on the given side: the
// inner one on a recto, the outer one on a verso.
func (m Margins) Left(s Side) Length {
	if s == Recto {
		return m.Inner
	}
	return m.Outer
}

// Right is the margin at the right edge of the sheet on the given side.
func (m Margins) Right(s Side) Length { return m.Left(s.Facing()) }
