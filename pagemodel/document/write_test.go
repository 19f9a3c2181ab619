package document

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"
	"unicode/utf8"

	"headland/pagemodel"
)

// hostile is every kind of character that XML has a rule about.
const hostile = "a\x00b\x01\x08c\x0bd\x0ce\x1bf\rg\nh\x7fi\u0085j\ufffek\uffffl\xffm\xed\xa0\x80n\u2028o<&>\"']]>p\tq  r "

// TestHostileCharacters: whatever is in a text, the files are well-formed, all that
// XML can hold is in them, and what it can't is said.
func TestHostileCharacters(t *testing.T) {
	d := Document{Title: hostile, Author: "x", Language: hostile}
	d.Add(Plain(Poem, hostile), Paragraph{Style: Verse, Runs: []Run{{Text: hostile, Look: 7}}})
	d.Blocks = append(d.Blocks, Block{Table: &Table{Widths: []int{100}, Rows: [][]Cell{{{Plain(CellText, hostile)}}}}})
	if got := d.Notices(); len(got) != 1 || !strings.HasPrefix(got[0], "4 texts held control characters") {
		t.Errorf("the notices are %q", got)
	}
	for _, ending := range []string{"docx", "odt"} {
		for name, data := range files(t, d, ending) {
			if ending == "odt" && name == "mimetype" {
				continue
			}
			wellFormed(t, name, data)
		}
	}
	const kept = "abc d ef g h\x7fi\u0085jkl\ufffdm\ufffdn\u2028o<&>\"']]>p\tq  r "
	got := pythonDocx(t, saved(t, d, "docx"))
	if text := plainText(blocksOf(t, got.Blocks)[1]); text != kept {
		t.Errorf("read as %q, want %q", text, kept)
	}
	if d := (Document{Title: "fine"}); d.Notices() != nil {
		t.Errorf("nothing is lost, and yet %q", d.Notices())
	}
}

// wellFormed holds that every character is one that XML has and every element is
// closed.
func wellFormed(t *testing.T, name string, data []byte) {
	t.Helper()
	if !utf8.Valid(data) {
		t.Errorf("%s is not UTF-8", name)
	}
	decoder := xml.NewDecoder(bytes.NewReader(data))
	for {
		if _, err := decoder.Token(); errors.Is(err, io.EOF) {
			return
		} else if err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
	}
}

// files are the files of an archive.
func files(t *testing.T, d Document, ending string) map[string][]byte {
	t.Helper()
	z, err := zip.OpenReader(saved(t, d, ending))
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	list := map[string][]byte{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if list[f.Name], err = io.ReadAll(r); err != nil {
			t.Fatal(err)
		}
	}
	return list
}

// TestSameBytes: the same document gives the same bytes, and a .odt says at its very
// head what it is, as ODF 1.2, part 3, 3.3 asks.
func TestSameBytes(t *testing.T) {
	d := FromCollection(demo(t), Options{})
	for name, write := range map[string]func(io.Writer) error{"docx": d.WriteDOCX, "odt": d.WriteODT} {
		var first, second bytes.Buffer
		if err := errors.Join(write(&first), write(&second)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first.Bytes(), second.Bytes()) {
			t.Errorf("%s: written twice, it differs", name)
		}
		if name == "odt" && string(first.Bytes()[30:30+8+len(odtType)]) != "mimetype"+odtType {
			t.Errorf("it begins %q", first.Bytes()[:90])
		}
	}
}

// TestTables: both readers read a table's cells, the heading's too.
func TestTables(t *testing.T) {
	cell := func(texts ...string) Cell {
		var c Cell
		for _, text := range texts {
			c = append(c, Plain(CellText, text))
		}
		return c
	}
	d := Document{Title: "T", Author: "A"}
	d.Blocks = append(d.Blocks, Block{Table: &Table{Widths: []int{10, 90}, Rows: [][]Cell{
		{cell("No."), cell("What")}, {cell("1"), cell("was “a|b”", "is “c”")}, {cell("2"), cell("")},
	}}})
	got := pythonDocx(t, saved(t, d, "docx"))
	if len(got.Tables) != 1 || len(got.Tables[0]) != 3 {
		t.Fatalf("python-docx reads %d tables", len(got.Tables))
	}
	if b := blocksOf(t, got.Tables[0][1][1]); len(b) != 2 || plainText(b[0]) != "was “a|b”" || plainText(b[1]) != "is “c”" {
		t.Errorf("the cell is %v", b)
	}
	for _, ending := range []string{"docx", "odt"} {
		html := string(run(t, "pandoc", "--to=html", saved(t, d, ending)))
		for _, s := range []string{"No.", "was “a|b”", "is “c”"} {
			if !strings.Contains(html, s) {
				t.Errorf("%s: there is no %s in %s", ending, s, html)
			}
		}
	}
}

type brokenWriter struct{}

var errFull = errors.New("the disk is full")

func (brokenWriter) Write([]byte) (int, error) { return 0, errFull }

func TestWriterFails(t *testing.T) {
	d := Document{}
	d.Add(Plain(Verse, "a"))
	if err := d.WriteDOCX(brokenWriter{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
	if err := d.WriteODT(brokenWriter{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}

// TestMatter: what the poet wrote for the prelims stands before the poems, for the
// end matter behind them, and what the book makes of itself in neither.
func TestMatter(t *testing.T) {
	b := pagemodel.NewBuilder(pagemodel.About{Title: "T"}, pagemodel.DefaultDesign())
	if err := b.Matter(pagemodel.Matter{Pages: []pagemodel.MatterPage{
		{Kind: pagemodel.HalfTitle}, {Kind: pagemodel.Imprint, Text: []string{"c", "", "d"}},
		{Kind: pagemodel.ContentsPage}, {Kind: pagemodel.Acknowledgements, Title: "Thanks", Text: []string{"e"}},
	}}); err != nil {
		t.Fatal(err)
	}
	b.Poem(pagemodel.PoemHead{Title: "P"}, []pagemodel.Part{pagemodel.NewPart("", nil)})
	got := pythonDocx(t, saved(t, FromCollection(b.Collection(), Options{Name: "after first proofs"}), "docx"))
	want := []string{"T", "after first proofs", "[page of the book: imprint]", "c\n\u00a0\nd", "P", "[page of the book: acknowledgements]", "Thanks", "e"}
	blocks := blocksOf(t, got.Blocks)
	for i := range max(len(blocks), len(want)) {
		if i >= len(blocks) || i >= len(want) || plainText(blocks[i]) != want[i] {
			t.Fatalf("paragraph %d is not as it should be: %q", i+1, exact(blocks))
		}
	}
}
