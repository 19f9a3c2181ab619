package pdf

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A proofSheet is a sheet as Poppler draws it, in grey, at perPoint pixels a point.
type proofSheet struct {
	w, h int
	pix  []byte
}

const perPoint = 4

// drawn has Poppler draw a sheet of a file.
func drawn(t testing.TB, path string, sheet int) proofSheet {
	t.Helper()
	out := filepath.Join(t.TempDir(), "sheet")
	n := fmt.Sprint(sheet)
	tool(t, "pdftoppm", "-gray", "-r", fmt.Sprint(72*perPoint), "-f", n, "-l", n, "-singlefile", path, out)
	data, err := os.ReadFile(out + ".pgm")
	if err != nil {
		t.Fatal(err)
	}
	var p proofSheet
	var most int
	if _, err := fmt.Fscanf(bytes.NewReader(data), "P5\n%d %d\n%d\n", &p.w, &p.h, &most); err != nil {
		t.Fatalf("pdftoppm: %v in %q", err, strings.ToValidUTF8(string(data[:20]), "?"))
	}
	p.pix = data[len(data)-p.w*p.h:]
	return p
}

// at is how dark a pixel is, from 0.
func (p *proofSheet) at(x, y int) int { return 255 - int(p.pix[y*p.w+x]) }

// inked says whether anything is inked from one x to another, in points, within
// an em's height of 24 pt type about the baseline.
func (p *proofSheet) inked(from, to, baseline float64) bool {
	for y := int((baseline - 18) * perPoint); y < int((baseline+6)*perPoint); y++ {
		for x := int(from * perPoint); x < int(to*perPoint); x++ {
			if p.at(x, y) > 128 {
				return true
			}
		}
	}
	return false
}
