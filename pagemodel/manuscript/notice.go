package manuscript

import "fmt"

// Notice says what was guessed about a manuscript, or could not be kept.
type Notice struct {
	File string // as it was named to Read; "" from Write
	Line int    // of the file, from 1; 0 where it concerns no one line
	Text string
}

// String is the notice with its place before it.
func (n Notice) String() string {
	switch {
	case n.File == "":
		return n.Text
	case n.Line == 0:
		return n.File + ": " + n.Text
	}
	return fmt.Sprintf("%s, line %d: %s", n.File, n.Line, n.Text)
}

// counted is a number with its noun: "1 poem", "3 poems".
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
