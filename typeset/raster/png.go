package raster

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"io"
	"math"
)

// pngHead is where the first chunk after IHDR begins: after a signature of 8
// bytes and an IHDR of 13, with length, type and CRC round it (Portable Network
// Graphics, Third Edition, 5.2, 5.3 and 11.2.1).
const pngHead = 8 + 4 + 4 + 13 + 4

const pointsPerMetre = 72 / 0.0254

// WritePNG writes an image as PNG, with its resolution in a pHYs chunk, so that
// it prints at the size of the page. Equal images give equal bytes. It is an
// error if the image is empty, if the resolution can't be said (not above 0, or
// too great), or if w fails.
func WritePNG(w io.Writer, img image.Image, pixelsPerPoint float64) error {
	perMetre := math.Round(pixelsPerPoint * pointsPerMetre)
	if !(perMetre >= 1 && perMetre <= math.MaxInt32) {
		return fmt.Errorf("%v pixels per point is no resolution that a PNG can have", pixelsPerPoint)
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		return fmt.Errorf("the page could not be made a PNG: %w", err)
	}
	file := b.Bytes()
	for _, part := range [][]byte{file[:pngHead], resolution(uint32(perMetre)), file[pngHead:]} {
		if _, err := w.Write(part); err != nil {
			return fmt.Errorf("the PNG could not be written: %w", err)
		}
	}
	return nil
}

// resolution is a pHYs chunk of as many pixels per metre across as down (the
// same, 11.3.4.3: two numbers of four bytes, then 1 for the metre).
func resolution(perMetre uint32) []byte {
	chunk := binary.BigEndian.AppendUint32(nil, 9)
	chunk = append(chunk, "pHYs"...)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = binary.BigEndian.AppendUint32(chunk, perMetre)
	chunk = append(chunk, 1)
	return binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
}
