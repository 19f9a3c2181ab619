package document

import (
	"archive/zip"
	"hash/crc32"
	"io"
	"time"
)

// madeOn is the time of every file in an archive: the same document gives the same
// bytes. It is the first day that such an archive can name.
var madeOn = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// file is a file of an archive.
type file struct {
	name string
	data []byte
}

// writeArchive writes the files in their order. The first of them is stored as it
// is and without a word about its time where plain says so: what a .odt is known by
// (ODF 1.2, part 3, 3.3).
func writeArchive(w io.Writer, plain bool, files ...file) error {
	z := zip.NewWriter(w)
	for i, f := range files {
		var out io.Writer
		var err error
		if plain && i == 0 {
			size := uint64(len(f.data))
			out, err = z.CreateRaw(&zip.FileHeader{Name: f.name, CRC32: crc32.ChecksumIEEE(f.data), CompressedSize64: size, UncompressedSize64: size})
		} else {
			out, err = z.CreateHeader(&zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: madeOn})
		}
		if err == nil {
			_, err = out.Write(f.data)
		}
		if err != nil {
			return err
		}
	}
	return z.Close()
}
