package manuscript

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// maxFile is how large a manuscript may be: a thousand thick books.
const maxFile = 64 << 20

const byteOrderMark = "\uFEFF"

// decode gives the characters of a manuscript, whatever they are encoded in:
// UTF-8 with or without a byte order mark, UTF-16 with one, else Windows-1252.
func decode(name string, data []byte) (string, []Notice, error) {
	switch {
	case len(data) > maxFile:
		return "", nil, fmt.Errorf("%s is larger than %d MB: split it into several manuscripts", name, maxFile>>20)
	case fromProcessor(data):
		return "", nil, processorError(name)
	}
	text, notices := characters(name, data)
	if i := strings.IndexByte(text, 0); i >= 0 {
		return "", nil, fmt.Errorf("%s holds NUL bytes at line %d: it's not text; save it as UTF-8 text", name, lineAt(text, i))
	}
	return text, notices, nil
}

func characters(name string, data []byte) (string, []Notice) {
	switch {
	case bytes.HasPrefix(data, []byte{0xFE, 0xFF}):
		return wide(name, data[2:], binary.BigEndian)
	case bytes.HasPrefix(data, []byte{0xFF, 0xFE}):
		return wide(name, data[2:], binary.LittleEndian)
	}
	text := strings.TrimPrefix(string(data), byteOrderMark)
	if utf8.ValidString(text) {
		return text, nil
	}
	return legacy(name, text)
}

// wide decodes UTF-16. What is not UTF-16 becomes U+FFFD, and is said.
func wide(name string, data []byte, order binary.ByteOrder) (string, []Notice) {
	units := make([]uint16, len(data)/2)
	for i := range units {
		units[i] = order.Uint16(data[2*i:])
	}
	var notices []Notice
	runes := utf16.Decode(units)
	if i := firstDamaged(units); i >= 0 || len(data)%2 != 0 {
		line := lineAt(string(runes), len(string(runes)))
		if i >= 0 {
			before := string(utf16.Decode(units[:i]))
			line = lineAt(before, len(before))
		}
		notices = append(notices, Notice{name, line, "the file is damaged: what could not be read is shown as \uFFFD; save it again as UTF-8"})
	}
	return string(runes), notices
}

// firstDamaged is the index of the first half of a character that lacks its
// other half, or -1.
func firstDamaged(units []uint16) int {
	for i := 0; i < len(units); i++ {
		if !utf16.IsSurrogate(rune(units[i])) {
			continue
		}
		if i+1 == len(units) || utf16.DecodeRune(rune(units[i]), rune(units[i+1])) == utf8.RuneError {
			return i
		}
		i++
	}
	return -1
}

// legacy reads bytes that are not UTF-8 as Windows-1252, the encoding of most
// old text files; it is Latin-1 with curly quotes. Where most of what is not
// ASCII is good UTF-8 only the bad bytes are read so, lest one of them spoil
// every accent of the file.
func legacy(name, text string) (string, []Notice) {
	bad, good, first := 0, 0, -1
	for i, n := 0, 0; i < len(text); i += n {
		var r rune
		r, n = utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			bad++
			if first < 0 {
				first = i
			}
		case n > 1:
			good++
		}
	}
	where := lineAt(text, first)
	note := "this is not UTF-8: it was read as Windows-1252 (Latin-1); look at its accents and quotation marks, or save it as UTF-8"
	return fromWindows(text, good >= bad), []Notice{{name, where, note}}
}

// fromWindows reads the bytes as Windows-1252, or, with keep, those of them
// that are not part of a good UTF-8 character.
func fromWindows(text string, keep bool) string {
	var b strings.Builder
	for i, n := 0, 0; i < len(text); i += n {
		var r rune
		r, n = utf8.DecodeRuneInString(text[i:])
		if n > 1 && keep {
			b.WriteRune(r)
			continue
		}
		n = 1
		b.WriteRune(windows(rune(text[i])))
	}
	return b.String()
}

// windows1252 are its characters from 0x80 to 0x9F; the rest is Latin-1. The
// five that it leaves undefined stay controls.
// https://www.unicode.org/Public/MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT
var windows1252 = [32]rune{
	'€', 0x81, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0x8D, 'Ž', 0x8F,
	0x90, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0x9D, 'ž', 'Ÿ',
}

func windows(r rune) rune {
	if r >= 0x80 && r < 0xA0 {
		return windows1252[r-0x80]
	}
	return r
}

// lineAt is the number, from 1, of the line that the byte offset stands in, as
// an editor counts them: by LF, CR LF and CR.
func lineAt(text string, at int) int {
	before := text[:at]
	return 1 + strings.Count(before, "\n") + strings.Count(before, "\r") - strings.Count(before, "\r\n")
}
