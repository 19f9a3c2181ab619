package pdf

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf16"

	"headland/typeset"
)

// number writes a length in points, exactly: 1/64 has six decimals.
func number(l typeset.Length) string {
	return strconv.FormatFloat(l.Points(), 'f', -1, 64)
}

// tenths writes n tenths.
func tenths(n int) string {
	return strconv.FormatFloat(float64(n)/10, 'f', -1, 64)
}

// box writes a rectangle as PDF wants it: left, foot, right, head, y up.
func box(left, foot, right, head typeset.Length) string {
	return fmt.Sprintf("[%s %s %s %s]", number(left), number(foot), number(right), number(head))
}

// textString writes a text string, the kind that people read (ISO 7.9.2.2):
// plain ASCII as it is, all else in UTF-16 with its mark, in hexadecimal.
func textString(s string) string {
	if strings.IndexFunc(s, needsUTF16) < 0 {
		return "(" + s + ")"
	}
	return "<FEFF" + utf16Hex(s) + ">"
}

// needsUTF16 says whether a character can't stand as it is between the
// parentheses of a string.
func needsUTF16(r rune) bool { return r < ' ' || r > '~' || strings.ContainsRune(`()\`, r) }

// utf16Hex is s in big-endian UTF-16, in hexadecimal.
func utf16Hex(s string) string {
	var b strings.Builder
	for _, unit := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", unit)
	}
	return b.String()
}

// name writes a name object; what is not a plain letter, digit, hyphen or
// plus is written by its code (ISO 7.3.5).
func name(s string) string {
	var b strings.Builder
	b.WriteByte('/')
	for _, c := range []byte(s) {
		if plainInName(c) {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(&b, "#%02X", c)
		}
	}
	return b.String()
}

// plainInName says whether a byte may stand in a name as it is.
func plainInName(c byte) bool {
	letter := c|0x20 >= 'a' && c|0x20 <= 'z'
	return letter || c >= '0' && c <= '9' || c == '-' || c == '+' || c == '_' || c == '.'
}
