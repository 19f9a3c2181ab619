package onscreen

import (
	"image"
	"image/color"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

// book is a collection's file and how it is set: where every line stands.
type book struct {
	path string
	set  *typeset.Setting
}

// demoBook makes the demo collection in a folder.
func demoBook(t testing.TB, folder string) *book {
	t.Helper()
	path := filepath.Join(folder, "demo.headland")
	s, err := session.Demo(path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	return &book{path: path, set: s.Committed()}
}

// lineEnding is the demo's overlong line that ends with some words.
func (b *book) lineEnding(t testing.TB, words string) typeset.Overlong {
	t.Helper()
	for _, o := range b.set.Turnovers() {
		if strings.HasSuffix(o.Text, words) {
			return o
		}
	}
	t.Fatalf("no overlong line of the demo ends with %q", words)
	return typeset.Overlong{}
}

// rows are the rows of a page that show a line.
func (b *book) rows(page int, ref pagemodel.LineRef) []typeset.Row {
	var rows []typeset.Row
	for _, r := range b.set.Page(page).Rows {
		if r.Line != 0 && r.Ref() == ref {
			rows = append(rows, r)
		}
	}
	return rows
}

// lie is where the open book lies on the screen, found by looking at it: the
// gutter is in the middle of the window, and the height of the paper says how
// large a point is.
type lie struct {
	gutter, top int
	scale       float64 // pixels to a point
	trim        pagemodel.Trim
}

// find looks for the paper of the recto, in its inner margin, where nothing is
// printed.
func (b *book) find(t testing.TB, s *screen) lie {
	t.Helper()
	l := lie{gutter: s.size.X / 2, trim: b.set.Collection().Design().Trim}
	eventually(t, "the open book", func() bool {
		top, bottom := paperRun(s, l.gutter+s.size.X/44)
		l.top, l.scale = top, float64(bottom-top)/l.trim.Height.Points()
		return bottom-top > s.size.Y/2
	})
	return l
}

// paperRun is the longest run of paper in a column of the screen.
func paperRun(s *screen, x int) (top, bottom int) {
	data, err := s.pixels(image.Rect(x, 0, x+1, s.size.Y))
	if err != nil {
		return 0, 0
	}
	start := -1
	for y := 0; y <= s.size.Y; y++ {
		paper := y < s.size.Y && isPaper(rgba(data[4*y:]))
		if paper && start < 0 {
			start = y
		}
		if !paper && start >= 0 {
			if y-start > bottom-top {
				top, bottom = start, y
			}
			start = -1
		}
	}
	return top, bottom
}

// isPaper says that a pixel is the page's paper in either light.
func isPaper(c color.RGBA) bool {
	return c == color.RGBA{0xFC, 0xF9, 0xF2, 255} || c == color.RGBA{0xF2, 0xEB, 0xDC, 255}
}

// at is the pixel at a point of a page.
func (l lie) at(page int, x, y typeset.Length) image.Point {
	left := l.gutter
	if pagemodel.SideOf(page) == pagemodel.Verso {
		left -= int(math.Round(l.trim.Width.Points() * l.scale))
	}
	return image.Pt(left+int(math.Round(x.Points()*l.scale)), l.top+int(math.Round(y.Points()*l.scale)))
}

// rule is where the hand takes the setting rule of a line: a little right of
// its end, at half the height of its letters.
func (l lie) rule(page int, r typeset.Row) image.Point {
	return l.at(page, r.X+r.Width+5*pagemodel.Point, r.Baseline-3*pagemodel.Point)
}

// about is a part of the recto about a place: some lines of the text.
func (l lie) about(at image.Point) image.Rectangle {
	line := int(14 * l.scale)
	return image.Rect(l.gutter+40, at.Y-3*line, l.gutter+int(l.trim.Width.Points()*l.scale)-4, at.Y+3*line)
}
