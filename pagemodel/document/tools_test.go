package document

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// The outside programs that read back what is written here: pandoc (.docx and
// .odt) and python-docx (.docx). One that is missing fails its tests: on Debian they
// are in the packages pandoc and python3-docx; .ci/setup test installs them.

// letter is a character with its style: italic 1, bold 2, small capitals 4.
type letter struct {
	char  rune
	style int
}

// readLine is a line of a paragraph as a reader gives it.
type readLine []letter

// block is a paragraph as a reader gives it.
type block struct {
	style string // "" where the reader does not say
	level int    // of a heading; 0 for none
	lines []readLine
}

// add adds characters to a block; an end of line begins another.
func (b *block) add(text string, style int) {
	for _, r := range text {
		if len(b.lines) == 0 {
			b.lines = []readLine{nil}
		}
		last := &b.lines[len(b.lines)-1]
		if r == '\n' {
			b.lines = append(b.lines, nil)
			continue
		}
		*last = append(*last, letter{r, style})
	}
}

// saved is the path of a file with the document: .docx or .odt.
func saved(t testing.TB, d Document, ending string) string {
	t.Helper()
	var b bytes.Buffer
	write := d.WriteDOCX
	if ending == "odt" {
		write = d.WriteODT
	}
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "book."+ending)
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// run runs a program and gives what it prints; anything it complains of fails the
// test.
func run(t testing.TB, name string, args ...string) []byte {
	t.Helper()
	var out, complaints bytes.Buffer
	command := exec.Command(name, args...)
	command.Stdout, command.Stderr = &out, &complaints
	if err := command.Run(); err != nil || complaints.Len() > 0 {
		t.Fatalf("%s %s: %v\n%s\nIs it installed? .ci/setup test sees to it.", name, strings.Join(args, " "), err, complaints.String())
	}
	return out.Bytes()
}

// pandocNode is an element of pandoc's tree.
type pandocNode struct {
	T string
	C json.RawMessage
}

// pandoc is what pandoc reads in a file: its blocks, and its metadata as text.
func pandoc(t testing.TB, path string) (blocks []block, meta map[string]string) {
	t.Helper()
	var doc struct {
		Blocks []pandocNode
		Meta   map[string]pandocNode
	}
	decode(t, run(t, "pandoc", "--to=json", path), &doc)
	for _, n := range doc.Blocks {
		blocks = append(blocks, pandocBlocks(t, n)...)
	}
	meta = map[string]string{}
	for name, n := range doc.Meta {
		var b block
		pandocInlines(t, &b, n.C, 0)
		meta[name] = plainText(b)
	}
	return blocks, meta
}

func decode(t testing.TB, data []byte, to any) {
	t.Helper()
	if err := json.Unmarshal(data, to); err != nil {
		t.Fatalf("%v: %.200s", err, data)
	}
}

// parts are the elements of a node that has several.
func parts(t testing.TB, raw json.RawMessage) []json.RawMessage {
	t.Helper()
	var list []json.RawMessage
	decode(t, raw, &list)
	return list
}

func pandocBlocks(t testing.TB, n pandocNode) []block {
	t.Helper()
	var b block
	switch n.T {
	case "Para", "Plain":
		pandocInlines(t, &b, n.C, 0)
	case "Header":
		list := parts(t, n.C)
		decode(t, list[0], &b.level)
		pandocInlines(t, &b, list[2], 0)
	case "BlockQuote":
		var blocks []block
		for _, raw := range parts(t, n.C) {
			var inside pandocNode
			decode(t, raw, &inside)
			blocks = append(blocks, pandocBlocks(t, inside)...)
		}
		return blocks
	default:
		t.Fatalf("pandoc reads a %s, which nobody wrote", n.T)
	}
	return []block{b}
}

func pandocInlines(t testing.TB, b *block, raw json.RawMessage, style int) {
	t.Helper()
	for _, raw := range parts(t, raw) {
		var n pandocNode
		decode(t, raw, &n)
		switch n.T {
		case "Str":
			var text string
			decode(t, n.C, &text)
			b.add(text, style)
		case "Space", "SoftBreak":
			b.add(" ", style)
		case "LineBreak":
			b.add("\n", style)
		case "Emph":
			pandocInlines(t, b, n.C, style|1)
		case "Strong":
			pandocInlines(t, b, n.C, style|2)
		case "SmallCaps":
			pandocInlines(t, b, n.C, style|4)
		case "Span":
			pandocInlines(t, b, parts(t, n.C)[1], style)
		default:
			t.Fatalf("pandoc reads a %s, which nobody wrote", n.T)
		}
	}
}

// wordsInPython prints what python-docx reads in a file.
const wordsInPython = `
import json, sys, docx
def blocks(paragraphs):
    return [[p.style.name, [[r.text, int(bool(r.italic)) + 2 * int(bool(r.bold)) + 4 * int(bool(r.font.small_caps))] for r in p.runs]] for p in paragraphs]
d = docx.Document(sys.argv[1])
c = d.core_properties
json.dump({"blocks": blocks(d.paragraphs), "core": [c.title, c.author, c.language],
    "tables": [[[blocks(cell.paragraphs) for cell in row.cells] for row in t.rows] for t in d.tables]}, sys.stdout)
`

// pythonFile is a file as python-docx reads it.
type pythonFile struct {
	Blocks [][2]json.RawMessage
	Core   []string
	Tables [][][][][2]json.RawMessage
}

// python is a Python that has python-docx: the one in the path, or the system's
// own, for which Debian's package is; "" where there is none.
var python = sync.OnceValue(func() string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import docx").Run() == nil {
			return name
		}
	}
	return ""
})

func pythonDocx(t testing.TB, path string) pythonFile {
	t.Helper()
	var f pythonFile
	if python() == "" {
		t.Fatal("there is no Python with the module docx: .ci/setup test installs it (Debian: python3-docx)")
	}
	decode(t, run(t, python(), "-c", wordsInPython, path), &f)
	return f
}

// blocksOf are paragraphs as python-docx reads them.
func blocksOf(t testing.TB, list [][2]json.RawMessage) []block {
	t.Helper()
	var blocks []block
	for _, p := range list {
		var b block
		decode(t, p[0], &b.style)
		for _, raw := range parts(t, p[1]) {
			var text string
			var style int
			decode(t, raw, &[]any{&text, &style})
			b.add(text, style)
		}
		blocks = append(blocks, b)
	}
	return blocks
}

func plainText(b block) string {
	var out strings.Builder
	for i, l := range b.lines {
		if i > 0 {
			out.WriteByte('\n')
		}
		for _, c := range l {
			out.WriteRune(c.char)
		}
	}
	return out.String()
}
