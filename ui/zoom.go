package ui

import "math"

// A step of the zoom is the fourth root of two: four of them double the page.
// Zero steps fit the spread in the window.
const (
	nearest  = 12
	farthest = -4
)

// zoomBy lays the book so many steps nearer.
func (d *desk) zoomBy(by int) {
	now := int(math.Round(4 * math.Log2(d.zoom)))
	d.zoomTo(max(farthest, min(nearest, now+by)))
}

// zoomTo lays the book so many steps nearer than where it fits the window.
func (d *desk) zoomTo(step int) {
	was := d.zoom
	d.zoom = math.Pow(2, float64(step)/4)
	if was == d.zoom {
		return
	}
	d.moved.X = int(float64(d.moved.X) * d.zoom / was)
	d.moved.Y = int(float64(d.moved.Y) * d.zoom / was)
	d.arrange()
	d.refresh(allParts)
}
