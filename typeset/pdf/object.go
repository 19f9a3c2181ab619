package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
)

// A ref is the number of an object in the file; 0 is none.
type ref int

// String is the object as others refer to it (ISO 7.3.10).
func (r ref) String() string { return fmt.Sprintf("%d 0 R", int(r)) }

// A file is a PDF being built in memory. Objects may refer to others that are
// written later: reserve gives a number, and put fills it.
type file struct {
	buf     bytes.Buffer
	offsets []int        // byte offset of object i+1; 0 until written
	zip     *zlib.Writer // compresses streams, one after the other
}

// newFile starts a file. The second line tells programs that move files about
// that this one is not text (ISO 7.5.2).
func newFile() *file {
	zip, _ := zlib.NewWriterLevel(nil, zlib.BestCompression) // fails for unknown levels only
	f := &file{zip: zip}
	f.buf.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	return f
}

// reserve takes the next object number.
func (f *file) reserve() ref {
	f.offsets = append(f.offsets, 0)
	return ref(len(f.offsets))
}

// put writes the object r.
func (f *file) put(r ref, body string) {
	f.offsets[r-1] = f.buf.Len()
	fmt.Fprintf(&f.buf, "%d 0 obj\n%s\nendobj\n", int(r), body)
}

// add writes a new object.
func (f *file) add(body string) ref {
	r := f.reserve()
	f.put(r, body)
	return r
}

// addStream writes a new stream, compressed; entries are the further entries
// of its dictionary.
func (f *file) addStream(entries string, data []byte) ref {
	return f.addRaw("/Filter /FlateDecode "+entries, f.deflate(data))
}

// addRaw writes a new stream as it is.
func (f *file) addRaw(entries string, data []byte) ref {
	return f.add(fmt.Sprintf("<< /Length %d %s>>\nstream\n%s\nendstream", len(data), entries, data))
}

// finish writes the cross-reference table and the trailer and gives the whole
// file. The file's identifier is the hash of all that comes before, so that
// equal documents make equal files (ISO 14.4).
func (f *file) finish(root, info ref) []byte {
	sum := sha256.Sum256(f.buf.Bytes())
	start := f.buf.Len()
	fmt.Fprintf(&f.buf, "xref\n0 %d\n0000000000 65535 f \n", len(f.offsets)+1)
	for _, at := range f.offsets {
		fmt.Fprintf(&f.buf, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&f.buf, "trailer\n<< /Size %d /Root %v /Info %v /ID [<%X> <%X>] >>\nstartxref\n%d\n%%%%EOF\n",
		len(f.offsets)+1, root, info, sum[:16], sum[:16], start)
	return f.buf.Bytes()
}

// deflate compresses data as the FlateDecode filter expects it (ISO 7.4.4).
func (f *file) deflate(data []byte) []byte {
	var out bytes.Buffer
	f.zip.Reset(&out)
	_, _ = f.zip.Write(data) // a bytes.Buffer takes everything
	_ = f.zip.Close()
	return out.Bytes()
}
