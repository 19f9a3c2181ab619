package ui

import (
	"image"

	"headland/pagemodel"
)

// Depths at a hinge in the toolkit's units.
const (
	hingeWordsDepth = 30 // of the words over it
	hingeApart      = 16 // below it
	hingeSlit       = 5  // between two pieces of paper, where the pages are not one
)

// arrange lays the picture over the book, and finds how large the strips are.
func (v *hingeView) arrange() {
	v.laidOver.arrange()
	v.strip = newStripPlan(&v.laidOver)
	v.keepInSight()
}

// keepInSight has the hinge at hand be seen whole, if it is not above those seen.
func (v *hingeView) keepInSight() {
	least := v.units(hingeWordsDepth+hingeApart) + v.strip.deep(1)
	v.first = max(v.first, v.at-v.view.Dy()/max(1, least))
	for v.first < v.at && !v.isSeen(v.at) {
		v.first++
	}
}

// hingeStrip is where a hinge is drawn, in device pixels of the picture.
type hingeStrip struct {
	whole image.Rectangle
	edges [2]image.Rectangle
}

// strips are the hinges that are seen, by their place among all.
func (v *hingeView) strips() map[int]hingeStrip {
	seen := map[int]hingeStrip{}
	for i, y := v.first, v.units(4); i < len(v.all) && y < v.view.Dy(); i++ {
		s := v.place(&v.all[i], y)
		seen[i] = s
		y = s.whole.Max.Y + v.units(hingeApart)
	}
	return seen
}

// place places a hinge below a height: edges that face each other beside each
// other, others one below the other, each on its page's side.
func (v *hingeView) place(h *hinge, y int) hingeStrip {
	var s hingeStrip
	top := y + v.units(hingeWordsDepth)
	deep := [2]int{v.edgeDepth(&h.edges[0]), v.edgeDepth(&h.edges[1])}
	if v.level(h) {
		deep[0] = max(deep[0], deep[1])
		deep[1] = deep[0]
	}
	for e := range h.edges {
		x := v.strip.x(pagemodel.SideOf(h.edges[e].page))
		s.edges[e] = image.Rect(x, top, x+v.strip.wide, top+deep[e])
		if !v.level(h) {
			top += deep[e]
			if e == 0 && h.way() != onOnePage {
				top += v.units(hingeSlit)
			}
		}
	}
	s.whole = image.Rect(v.strip.left, y, v.strip.end(), max(s.edges[0].Max.Y, s.edges[1].Max.Y))
	return s
}

// level says that the edges of a hinge are shown at one height, across the gutter:
// where they face each other and there is room for both.
func (v *hingeView) level(h *hinge) bool { return h.faces() && !v.strip.narrow }

// edgeDepth is how deep an edge is.
func (v *hingeView) edgeDepth(e *hingeEdge) int {
	return v.strip.deep(max(1, len(v.w.desk.hingeRows(e))))
}
