package session

import (
	"fmt"
	"image"
	"image/color"
	"io"
	"os"
	"path/filepath"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// The inks of an exported page.
var (
	paper = color.RGBA{0xff, 0xff, 0xff, 0xff}
	ink   = color.RGBA{0, 0, 0, 0xff}
)

// masksLimit is how many bytes of glyph shapes an export keeps.
const masksLimit = 16 << 20

// PNG writes a picture of every page, or spread, into dir, which is made if need
// be: page-001.png, or spread-002-003.png. scale is pixels a point. Pictures of
// those names are replaced, each once it is whole; no other file is touched.
// progress, which may be nil, is told after each picture; false from it stops
// the export with [ErrCancelled], and the pictures made so far stay.
func (x *Export) PNG(dir string, scale float64, spreads bool, progress func(done, of int) bool) error {
	if err := x.checkScale(scale); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("make the folder %s: %w: choose a place that you may write to", dir, cause(err))
	}
	masks, shots := raster.NewMasks(masksLimit), x.shots(spreads)
	for i, shot := range shots {
		img := x.picture(shot, spreads, scale, masks)
		err := writeWhole(filepath.Join(dir, shot.name(spreads)), func(w io.Writer) error {
			return raster.WritePNG(w, img, scale)
		})
		if err != nil {
			return err
		}
		if progress != nil && !progress(i+1, len(shots)) {
			return ErrCancelled
		}
	}
	return nil
}

// largestPicture is how many pixels a page may have: about 400 MB of them.
const largestPicture = 100e6

func (x *Export) checkScale(scale float64) error {
	trim := x.pages[0].Trim
	pixels := trim.Width.Points() * trim.Height.Points() * scale * scale
	if !(scale > 0) || pixels < 1 || pixels > largestPicture {
		return fmt.Errorf("pictures at %.4g pixels a point can't be made of pages of %.0f by %.0f mm: choose from 0.1 to 20", scale, trim.Width.Millimetres(), trim.Height.Millimetres())
	}
	return nil
}

// shot is what one picture shows: a page (as the recto), or what lies open.
type shot struct{ pagemodel.Spread }

func (x *Export) shots(spreads bool) []shot {
	var shots []shot
	extent := len(x.pages)
	if !spreads {
		for n := 1; n <= extent; n++ {
			shots = append(shots, shot{pagemodel.Spread{Recto: n}})
		}
		return shots
	}
	for n := 1; n <= extent; n = n/2*2 + 2 {
		shots = append(shots, shot{pagemodel.SpreadOf(n, extent)})
	}
	return shots
}

func (s shot) name(spreads bool) string {
	switch {
	case !spreads:
		return fmt.Sprintf("page-%03d.png", s.Recto)
	case s.Verso == 0:
		return fmt.Sprintf("spread-%03d.png", s.Recto)
	case s.Recto == 0:
		return fmt.Sprintf("spread-%03d.png", s.Verso)
	}
	return fmt.Sprintf("spread-%03d-%03d.png", s.Verso, s.Recto)
}

func (x *Export) picture(s shot, spreads bool, scale float64, masks *raster.Masks) image.Image {
	if spreads {
		return raster.Spread(x.page(s.Verso), x.page(s.Recto), scale, masks, paper, ink)
	}
	return raster.Image(x.page(s.Recto), scale, masks, paper, ink)
}

// page is a page of the book, or nil for none.
func (x *Export) page(n int) *typeset.Page {
	if n == 0 {
		return nil
	}
	return x.pages[n-1]
}
