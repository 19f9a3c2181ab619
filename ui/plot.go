package ui

import (
	"image"
	"image/color"

	"headland/typeset"
)

// Sizes of the plots in the toolkit's units.
const (
	plotType = 13.5 // of the words on them
	plotFoot = 58   // below a plot: its axis
)

// plotRoom is where a plot is drawn: the whole of the sheet below its head.
func (a *aloudView) plotRoom() image.Rectangle {
	p := &a.place
	return image.Rect(p.list.Min.X, p.units(98), p.list.Max.X, p.sheet.Max.Y-p.units(plotFoot))
}

// minuteSteps are the steps between the marks of an axis of time, in seconds.
var minuteSteps = [...]int{15, 30, 60, 2 * 60, 5 * 60, 10 * 60, 15 * 60, 30 * 60, 60 * 60}

// minuteStep is the least step at which the marks stand apart, given the device
// pixels of a second.
func (a *aloudView) minuteStep(second float64) int {
	for _, step := range minuteSteps {
		if float64(step)*second >= float64(a.place.units(64)) {
			return step
		}
	}
	return minuteSteps[len(minuteSteps)-1]
}

// drawMinutes draws an axis of time at the foot of a plot: marks with their times,
// and what they are.
func (a *aloudView) drawMinutes(s *slate, room image.Rectangle, seconds, second float64) {
	p, colors := &a.place, a.w.desk.light.palette()
	thin := max(1, p.units(1))
	s.fill(image.Rect(room.Min.X, room.Max.Y, room.Max.X, room.Max.Y+thin), colors.aside)
	step := a.minuteStep(second)
	for at := 0; float64(at) <= seconds; at += step {
		x := room.Min.X + int(float64(at)*second+0.5)
		s.fill(image.Rect(x, room.Max.Y, x+thin, room.Max.Y+p.units(6)), colors.aside)
		run := a.w.desk.k.words(clock(float64(at)), plotType, false)
		s.write(run, max(room.Min.X, min(x-s.px(run.Width)/2, room.Max.X-s.px(run.Width))), room.Max.Y+p.units(21), colors.aside)
	}
	a.small(s, "minutes and seconds from the beginning", room.Min.X, room.Max.Y+p.units(41), false)
}

// drawUpright draws an upright line over a plot, with words above it.
func (a *aloudView) drawUpright(s *slate, x int, room image.Rectangle, words string) {
	p, colors := &a.place, a.w.desk.light.palette()
	s.fill(image.Rect(x, room.Min.Y, x+max(2, p.units(2)), room.Max.Y+p.units(6)), colors.ink)
	run := a.w.desk.k.words(words, plotType, true)
	s.write(run, min(x-s.px(run.Width)/2, room.Max.X-s.px(run.Width)), room.Min.Y-p.units(6), colors.ink)
}

// join draws a hairline between two device pixels.
func (s *slate) join(from, to image.Point, ink color.RGBA) {
	at := func(p image.Point) typeset.Point { return typeset.Point{X: s.unit(p.X), Y: s.unit(p.Y)} }
	s.pen.Stroke(at(from), at(to), max(1, s.density), ink)
}
