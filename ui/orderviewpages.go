package ui

import (
	"hash/maphash"
	"image"
	"image/color"
	"time"

	"headland/typeset"
	"headland/typeset/raster"
)

const (
	smallLimit = 48 << 20              // bytes of small pages that are kept
	smallShare = 2 * time.Millisecond  // of a frame, for drawing small pages
	smallEvery = 16 * time.Millisecond // a frame
)

// smallPages are the small pages that have been drawn, by what is printed on
// them: a poem that moves to other pages takes its own along. Folios and running
// heads are left off, and a page stands where a verso would, so that one picture
// serves both sides.
type smallPages struct {
	seed   maphash.Seed
	size   image.Point
	light  light
	ink    map[uint64]*smallPage
	bytes  int
	turn   uint64 // goes up whenever something is looked for
	of     [2]*typeset.Setting
	looks  [2]map[int]smallLook // of pages, by whether they are left out
	wanted map[uint64]*typeset.Page
	queue  []uint64 // the wanted ones in the order in which they were, so that row after row fills in
}

// smallPage is one drawn page.
type smallPage struct {
	img  *image.RGBA
	used uint64
}

// smallLook is what a page of a setting looks like: its key, and by how much its
// text stands to the right of where the picture has it.
type smallLook struct {
	key  uint64
	page *typeset.Page
}

func newSmallPages() smallPages {
	return smallPages{seed: maphash.MakeSeed(), ink: map[uint64]*smallPage{}, wanted: map[uint64]*typeset.Page{}}
}

// at has all pages be drawn at a size and in a light; what was drawn otherwise is
// forgotten.
func (s *smallPages) at(size image.Point, l light) {
	if s.size != size || s.light != l {
		s.size, s.light, s.bytes = size, l, 0
		s.ink, s.wanted, s.queue = map[uint64]*smallPage{}, map[uint64]*typeset.Page{}, nil
	}
}

// show has the pages of these settings be looked for: the book's, and what is
// left out of it.
func (s *smallPages) show(book, aside *typeset.Setting) {
	for i, set := range [...]*typeset.Setting{book, aside} {
		if s.of[i] != set {
			s.of[i], s.looks[i] = set, map[int]smallLook{}
		}
	}
	clear(s.wanted)
	s.queue = nil
}

// look is what a page looks like.
func (s *smallPages) look(out bool, number int) smallLook {
	i := 0
	if out {
		i = 1
	}
	look, known := s.looks[i][number]
	if !known && s.of[i] != nil {
		page := s.of[i].Page(number)
		look = smallLook{s.key(page), page}
		s.looks[i][number] = look
	}
	return look
}

// key tells pages apart by what is printed on them, wherever in the book they
// are.
func (s *smallPages) key(page *typeset.Page) uint64 {
	var h maphash.Hash
	h.SetSeed(s.seed)
	number := func(n typeset.Length) {
		h.Write([]byte{byte(n), byte(n >> 8), byte(n >> 16), byte(n >> 24)})
	}
	printed := false
	for i := range page.Rows {
		r := &page.Rows[i]
		if !seenSmall(r) {
			continue
		}
		printed = true
		x := r.X - page.Text.X
		if r.Turned {
			x = r.X + page.Text.X<<8
		}
		number(x)
		number(r.Baseline)
		for k := range r.Runs {
			run := &r.Runs[k]
			number(run.X)
			number(run.Size)
			id := run.Face.ID()
			h.Write(id[:4])
			h.WriteString(run.Text)
		}
	}
	if !printed {
		return 0
	}
	return h.Sum64()
}

// seenSmall says that a row is drawn on a small page.
func seenSmall(r *typeset.Row) bool {
	return r.Role != typeset.RoleFolio && r.Role != typeset.RoleRunning
}

// picture is a page's picture; nil where it has none yet, which is then wanted,
// or where nothing is printed on it.
func (s *smallPages) picture(look smallLook) *image.RGBA {
	if look.key == 0 {
		return nil
	}
	if p := s.ink[look.key]; p != nil {
		s.turn++
		p.used = s.turn
		return p.img
	}
	if s.wanted[look.key] == nil {
		s.wanted[look.key] = look.page
		s.queue = append(s.queue, look.key)
	}
	return nil
}

// fill draws wanted pages for a share of a frame, and says whether any are
// still wanted. k and scale are what they are drawn with.
func (s *smallPages) fill(k *inker, scale float64) (more bool) {
	began := time.Now()
	for len(s.queue) > 0 {
		key := s.queue[0]
		s.queue = s.queue[1:]
		s.keep(key, s.draw(k, scale, s.wanted[key]))
		delete(s.wanted, key)
		if time.Since(began) > smallShare {
			break
		}
	}
	return len(s.wanted) > 0
}

// keep keeps a picture, in place of those that have gone unused for longest.
func (s *smallPages) keep(key uint64, img *image.RGBA) {
	s.turn++
	s.ink[key] = &smallPage{img, s.turn}
	s.bytes += len(img.Pix)
	for s.bytes > smallLimit && len(s.ink) > 1 {
		oldest := key
		for k, p := range s.ink {
			if p.used < s.ink[oldest].used {
				oldest = k
			}
		}
		s.bytes -= len(s.ink[oldest].img.Pix)
		delete(s.ink, oldest)
	}
}

// draw draws a page as if its text began at the left edge of the picture; one
// that has rows on their side, as it stands.
func (s *smallPages) draw(k *inker, scale float64, page *typeset.Page) *image.RGBA {
	colors := s.light.palette()
	img := image.NewRGBA(image.Rectangle{Max: s.size})
	fill(img, img.Rect, colors.paper)
	pen := k.masks.On(img, scale, image.Point{})
	for i := range page.Rows {
		if r := &page.Rows[i]; seenSmall(r) {
			inkSmall(pen, page, r, colors.ink)
			inkSmall(pen, page, r, colors.ink)
		}
	}
	return img
}

// inkSmall inks a row. Its strokes are far thinner than a pixel, so it is done
// twice: once would leave a page of verse too pale to tell one from another.
func inkSmall(pen *raster.Pen, page *typeset.Page, r *typeset.Row, ink color.RGBA) {
	for j := range r.Runs {
		run := &r.Runs[j]
		if r.Turned {
			pen.TurnedRun(run, r.X+run.X, r.Baseline, page.Trim.Height, ink)
			continue
		}
		pen.Run(run, r.X-smallEdge(page)+run.X, r.Baseline, ink)
	}
}

// smallEdge is how much nearer to the left edge a picture has a page's text than
// the page has: all but a little of its left margin, so that what hangs there or
// runs out of the measure is still seen.
func smallEdge(page *typeset.Page) typeset.Length {
	for i := range page.Rows {
		if page.Rows[i].Turned {
			return 0
		}
	}
	return page.Text.X - page.Trim.Width/16
}
