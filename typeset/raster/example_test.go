package raster_test

import (
	"fmt"
	"image"
	"image/color"
	"log"
	"strings"

	"golang.org/x/image/font/sfnt"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/raster"
)

// One glyph, its origin at the left edge and its baseline one pixel above the
// foot.
func ExamplePen_Run() {
	data, _ := assets.FaceBytes(assets.GentiumBookPlus, false, false)
	face, err := typeset.ParseFace(data)
	if err != nil {
		log.Fatal(err)
	}
	id, err := face.Outlines().GlyphIndex(&sfnt.Buffer{}, 'R')
	if err != nil {
		log.Fatal(err)
	}
	run := typeset.Run{
		Face: face, Size: 24 * pagemodel.Point,
		Glyphs: []typeset.Glyph{{ID: uint32(id)}},
	}

	img := image.NewRGBA(image.Rect(0, 0, 17, 18))
	pen := raster.NewMasks(1<<20).On(img, 1, image.Point{})
	pen.Run(&run, 0, 17*pagemodel.Point, color.RGBA{A: 255})

	for y := range 18 {
		var row strings.Builder
		for x := range 17 {
			row.WriteByte(" .:-=+*%#@"[int(img.RGBAAt(x, y).A)*10/256])
		}
		fmt.Println("|" + row.String() + "|")
	}
	// Output:
	// |                 |
	// |     .           |
	// |:*#@@@@@%-       |
	// |.:#@=  -@@+      |
	// |  %@=   :@@.     |
	// |  %@=    @@:     |
	// |  %@=    @@.     |
	// |  %@=   -@%      |
	// |  %@+ .=@#.      |
	// |  %@@@@@+        |
	// |  %@= =@+        |
	// |  %@=  #@.       |
	// |  %@=  -@#       |
	// |  %@=   #@=      |
	// |  %@=   -@@.     |
	// |  #@+    %@#.    |
	// |:#@@@%   :@@#=   |
	// |                 |
}
