package marks

// A shape is a mark as it stands in the margin, on a baseline, in ems.
type shape struct {
	width  float64
	curves []curve
}

// The marks of the margin. Each is like the mark that stands in the text for the
// same thing.
var (
	caretShape = shape{0.5, []curve{line(knot{0.06, 0}, knot{0.25, 0.42}, knot{0.44, 0})}}

	// the German current d of "deleatur": down, round anticlockwise, and away
	deleShape = shape{0.72, []curve{line(knot{0.5, 0.86}).
			bent(knot{0.53, 0.5}, knot{0.47, 0}, knot{0.22, 0}).
			bent(knot{0.02, 0}, knot{0.02, 0.4}, knot{0.24, 0.4}).
			bent(knot{0.46, 0.4}, knot{0.46, -0.06}, knot{0.7, -0.1})}}

	newLineShape = shape{0.6, []curve{line(knot{0.02, -0.06}, knot{0.3, -0.06}, knot{0.3, 0.74}, knot{0.58, 0.74})}}

	runOnShape = shape{0.9, []curve{line(knot{0.04, 0.28}).
			bent(knot{0.04, 0.72}, knot{0.36, 0.62}, knot{0.45, 0.34}).
			bent(knot{0.54, 0.06}, knot{0.86, -0.04}, knot{0.86, 0.4})}}

	takeOverShape = shape{0.84, []curve{line(knot{0.05, -0.06}, knot{0.05, 0.74}, knot{0.79, 0.74}, knot{0.79, 0.44})}}
	takeBackShape = shape{0.84, []curve{line(knot{0.79, -0.06}, knot{0.79, 0.74}, knot{0.05, 0.74}, knot{0.05, 0.44})}}

	indentShape = shape{0.6, []curve{line(knot{0.06, 0.68}, knot{0.54, 0.68}, knot{0.54, 0}, knot{0.06, 0})}}

	cancelIndentShape = shape{0.66, []curve{line(knot{0.06, 0}, knot{0.06, 0.7}), line(knot{0.06, 0.35}, knot{0.62, 0.35})}}

	openShape = shape{0.86, []curve{
		line(knot{0.04, 0.3}, knot{0.66, 0.3}),
		line(knot{0.66, 0.68}).bent(knot{0.84, 0.5}, knot{0.84, 0.1}, knot{0.66, -0.08})}}

	closeShape = shape{0.66, []curve{
		line(knot{0.2, 0.7}).bent(knot{0.02, 0.5}, knot{0.02, 0.14}, knot{0.2, -0.06}),
		line(knot{0.46, 0.7}).bent(knot{0.64, 0.5}, knot{0.64, 0.14}, knot{0.46, -0.06})}}

	transposeShape = shape{0.9, []curve{line(
		knot{0.05, 0.36}, knot{0.05, 0.68}, knot{0.45, 0.68}, knot{0.45, 0}, knot{0.85, 0}, knot{0.85, 0.32})}}

	italicShape = shape{0.66, []curve{line(knot{0.05, 0.36}, knot{0.05, 0.1}, knot{0.61, 0.1}, knot{0.61, 0.36})}}

	romanShape = shape{0.66, append(italicShape.curves[:1:1], line(knot{0.16, -0.16}, knot{0.52, 0.66}))}

	boldShape         = shape{0.86, []curve{wave(0.04, 0.82, 0.22)}}
	notBoldShape      = shape{0.86, append(boldShape.curves[:1:1], line(knot{0.25, -0.12}, knot{0.61, 0.6}))}
	smallCapsShape    = shape{0.66, []curve{line(knot{0.05, 0.36}, knot{0.61, 0.36}), line(knot{0.05, 0.16}, knot{0.61, 0.16})}}
	notSmallCapsShape = shape{0.66, append(smallCapsShape.curves[:2:2], line(knot{0.16, -0.1}, knot{0.5, 0.62}))}

	spaceShape = shape{0.6, []curve{
		line(knot{0.06, 0.7}, knot{0.3, 0.34}, knot{0.3, -0.06}), line(knot{0.54, 0.7}, knot{0.3, 0.34})}}
	lessSpaceShape = shape{0.6, []curve{
		line(knot{0.06, -0.06}, knot{0.3, 0.3}, knot{0.3, 0.7}), line(knot{0.54, -0.06}, knot{0.3, 0.3})}}
	// an arrow up to the stop at which the words go on
	tabShape = shape{0.9, []curve{line(knot{0.82, -0.06}, knot{0.82, 0.72}),
		line(knot{0.06, 0.33}, knot{0.76, 0.33}), line(knot{0.54, 0.51}, knot{0.76, 0.33}, knot{0.54, 0.15})}}
	closeUpShape = shape{0.7, []curve{
		line(knot{0.06, 0.42}).bent(knot{0.2, 0.64}, knot{0.5, 0.64}, knot{0.64, 0.42}),
		line(knot{0.06, 0.2}).bent(knot{0.2, -0.02}, knot{0.5, -0.02}, knot{0.64, 0.2})}}

	endShape   = shape{0.36, []curve{line(knot{0.03, -0.16}, knot{0.33, 0.76})}}
	queryShape = shape{0.94, []curve{circle(knot{0.47, 0.32}, 0.43),
		line(knot{0.33, 0.42}).bent(knot{0.33, 0.64}, knot{0.63, 0.64}, knot{0.63, 0.44}).
			bent(knot{0.63, 0.32}, knot{0.47, 0.34}, knot{0.47, 0.18}),
		line(knot{0.47, 0.05}, knot{0.47, 0.05})}}
)

// wave is a wavy line of that length from an x on, about a height.
func wave(from, to, y float64) curve {
	c := line(knot{from, y})
	n := max(1, int((to-from)/0.4+0.5))
	step := (to - from) / float64(2*n)
	for i := range 2 * n {
		x, up := from+float64(i)*step, 0.13
		if i%2 == 1 {
			up = -up
		}
		c = c.bent(knot{x + step/3, y + up}, knot{x + 2*step/3, y + up}, knot{x + step, y})
	}
	return c
}
