package manuscript

import (
	"encoding/binary"
	"strings"
	"testing"
	"unicode/utf16"

	"headland/pagemodel"
)

func utf16Bytes(s string, order binary.AppendByteOrder) []byte {
	b := order.AppendUint16(nil, 0xFEFF)
	for _, u := range utf16.Encode([]rune(s)) {
		b = order.AppendUint16(b, u)
	}
	return b
}

func TestEncodings(t *testing.T) {
	verse := "“né” — 🌊\nb\n"
	const old = "a.txt, line %s: this is not UTF-8: it was read as Windows-1252 (Latin-1); look at its accents and quotation marks, or save it as UTF-8"
	for _, tc := range []struct {
		name   string
		data   []byte
		want   string
		notice string
	}{
		{"UTF-8", []byte(verse), "{“né” — 🌊|b}", ""},
		{"UTF-8 with a mark", []byte(byteOrderMark + verse), "{“né” — 🌊|b}", ""},
		{"UTF-16 little-endian", utf16Bytes(verse, binary.LittleEndian), "{“né” — 🌊|b}", ""},
		{"UTF-16 big-endian", utf16Bytes(verse, binary.BigEndian), "{“né” — 🌊|b}", ""},
		{"UTF-16 cut short", append(utf16Bytes("a\nb", binary.LittleEndian), 'x'), "{a|b}", "a.txt, line 2: the file is damaged: what could not be read is shown as \uFFFD; save it again as UTF-8"},
		{"UTF-16 with half a character", []byte("\xfe\xff\x00a\x00\n\xd8\x00\x00b"), "{a|\uFFFDb}", "a.txt, line 2: the file is damaged: what could not be read is shown as \uFFFD; save it again as UTF-8"},
		{"Windows-1252", []byte("plain\n\x93caf\xe9\x94 \x97 it\x92s"), "{plain|“café” — it’s}", strings.ReplaceAll(old, "%s", "2")},
		{"Windows-1252 that looks like UTF-8 once", []byte("\x84Spa\xdf\x93 f\xfcr"), "{„Spaß“ für}", strings.ReplaceAll(old, "%s", "1")},
		{"UTF-8 with one bad byte", []byte("é\nè it\x92s ê"), "{é|è it’s ê}", strings.ReplaceAll(old, "%s", "2")},
		{"C1 controls", []byte("a\nit\u0092s"), "{a|it’s}", "a.txt, line 2: 1 character read as Windows-1252, the first here: look at its quotation marks and dashes"},
		{"controls", []byte("a\nb\x1b\x07"), "{a|b}", "a.txt, line 2: 2 control characters left out, the first here: they are no text"},
		{"CR LF", []byte("a\r\nb\r\n\r\nc"), "{a|b} {c}", ""},
		{"CR", []byte("a\rb\r\rc"), "{a|b} {c}", ""},
		{"line separators", []byte("a\u2028b\u0085c\vd\u2029e\ff"), "{a|b|c|d} {e} {f}", ""},
		{"format characters", []byte("a\u200db\u200f\ufeff"), "{a\u200db\u200f\ufeff}", ""},
	} {
		c, notices := read(t, "a.txt", string(tc.data))
		if got := sketch(c); got != "¶ "+tc.want {
			t.Errorf("%s: got %s, want %s", tc.name, got, tc.want)
		}
		if got := joinNotices(notices); got != tc.notice {
			t.Errorf("%s: notices %s, want %s", tc.name, got, tc.notice)
		}
	}
}

func joinNotices(notices []Notice) string {
	var all []string
	for _, n := range notices {
		all = append(all, n.String())
	}
	return strings.Join(all, "\n")
}

func TestRefused(t *testing.T) {
	const processor = ": word-processor files can't be read yet: save it as Markdown or text"
	const empty = " holds no poem: write a heading such as “## Title” with its lines below"
	long := "a\n\n" + strings.Repeat("x", 10<<20)
	for _, tc := range []struct{ name, data, want string }{
		{"a.docx", "", "a.docx" + processor},
		{"A.ODT", "", "A.ODT" + processor},
		{"a.txt", "PK\x03\x04…", "a.txt" + processor},
		{"a.md", "{\\rtf1 x", "a.md" + processor},
		{"a.md", "a\nb\nc\x00d", "a.md holds NUL bytes at line 3: it's not text; save it as UTF-8 text"},
		{"a.txt", "a\x00\n\x00", "a.txt holds NUL bytes at line 1: it's not text; save it as UTF-8 text"},
		{"a.md", long, "a.md, line 3 is longer than 64 KB: end lines where the verse does, and save it again"},
		{"a.md", "a\n" + strings.Repeat("x", maxLine+1), "a.md, line 2 is longer than 64 KB: end lines where the verse does, and save it again"},
		{"a.md", "[prose]\n" + strings.Repeat(strings.Repeat("x", 99)+"\n", 700), "a.md, line 2 is longer than 64 KB: end lines where the verse does, and save it again"},
		{"a.md", strings.Repeat("\n", maxFile+1), "a.md is larger than 64 MB: split it into several manuscripts"},
		{"a.md", "", "a.md" + empty},
		{"a.md", " \n\t\n\u00a0\n", "a.md" + empty},
		{"a.md", byteOrderMark, "a.md" + empty},
		{"a.md", "---\ntitle: T\n---\n", "a.md" + empty},
	} {
		_, _, err := Read(tc.name, []byte(tc.data), pagemodel.DefaultDesign())
		if err == nil || err.Error() != tc.want {
			t.Errorf("%s %.20q: got %v, want %s", tc.name, tc.data, err, tc.want)
		}
	}
}

func TestLongestLine(t *testing.T) {
	c, _ := read(t, "a.md", strings.Repeat(`\*`, maxLine))
	if got := len(c.Order()[0].Poem.Line(pagemodel.Place{}).Text()); got != maxLine {
		t.Errorf("got %d bytes", got)
	}
}

func TestKindOf(t *testing.T) {
	for name, want := range map[string]Kind{"a.md": Markdown, "a.MARKDOWN": Markdown, "a.txt": Text, "a": Text, "a.poem": Text} {
		if got, err := KindOf(name); got != want || err != nil {
			t.Errorf("%s: got %v, %v", name, got, err)
		}
	}
}
