package pagemodel

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Length is a distance on the page in 1/64 of a point. It is the scale of
// fixed.Int26_6, so the two convert by a cast. A point is 1/72 inch (the
// desktop-publishing point; PDF, ISO 32000-1, 8.3.2.3).
//
// Where millimetres do not land on 1/64 pt each length is rounded on its own,
// so a sum may be out by 1/64 pt (0.0055 mm). On a page the measure takes the
// remainder: trim and margins are as said, and the text has what is left.
type Length int32

// One point and one inch as lengths.
const (
	Point Length = 64
	Inch  Length = 72 * Point
)

const millimetresPerInch = 25.4

// Pt gives a length in points, rounded to the nearest 1/64 pt.
func Pt(points float64) Length { return Length(math.Round(points * float64(Point))) }

// MM gives a length in millimetres, rounded to the nearest 1/64 pt.
func MM(mm float64) Length { return Length(math.Round(mm * float64(Inch) / millimetresPerInch)) }

// Points is the length in points.
func (l Length) Points() float64 { return float64(l) / float64(Point) }

// Millimetres is the length in millimetres.
func (l Length) Millimetres() float64 { return float64(l) * millimetresPerInch / float64(Inch) }

// String gives the length in points, as "4.5pt", exactly.
func (l Length) String() string {
	return strconv.FormatFloat(l.Points(), 'f', -1, 64) + "pt"
}

var lengthUnits = []struct {
	suffix string
	length func(float64) Length
}{
	{"pt", Pt},
	{"mm", MM},
	{"cm", func(v float64) Length { return MM(10 * v) }},
	{"in", func(v float64) Length { return Pt(72 * v) }},
}

// ParseLength reads a number with its unit: "4.5pt", "129 mm", "0.5in". The
// error says what was read and which units there are.
func ParseLength(s string) (Length, error) {
	t := strings.TrimSpace(s)
	for _, u := range lengthUnits {
		number, ok := strings.CutSuffix(t, u.suffix)
		if !ok {
			continue
		}
		v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if err != nil || math.Abs(v) > 10000 || math.IsNaN(v) {
			break
		}
		return u.length(v), nil
	}
	return 0, fmt.Errorf("%q is not a length: write a number and pt, mm, cm or in, such as 11.5pt", s)
}

// Em is a distance in thousandths of an em, the type size of the line that it
// is used in: an indent or a gap keeps its proportion when the size changes.
type Em int32

// OneEm is the em itself.
const OneEm Em = 1000

// Ems gives a distance in ems, rounded to the nearest thousandth.
func Ems(ems float64) Em { return Em(math.Round(ems * float64(OneEm))) }

// Ems is the distance in ems.
func (e Em) Ems() float64 { return float64(e) / float64(OneEm) }

// At is the distance when the type size is size, rounded to the nearest
// 1/64 pt.
func (e Em) At(size Length) Length {
	return Length(math.Round(float64(e) * float64(size) / float64(OneEm)))
}

// String gives the distance in ems, as "1.5em".
func (e Em) String() string { return strconv.FormatFloat(e.Ems(), 'f', -1, 64) + "em" }
