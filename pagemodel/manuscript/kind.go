package manuscript

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
)

// Kind is the way that a manuscript is written.
type Kind int

// The kinds of manuscript.
const (
	Markdown Kind = iota // *italic*, **bold** and [caps]small capitals[/caps] are read
	Text                 // every sign of emphasis is a character
)

// String is the kind in words.
func (k Kind) String() string {
	if k == Text {
		return "text"
	}
	return "Markdown"
}

var markdownExtensions = []string{".md", ".markdown", ".mdown", ".mkd"}

// processorExtensions and processorStarts are of files that hold text in a way
// that nobody types: by name, and by their first bytes.
var (
	processorExtensions = []string{".docx", ".doc", ".docm", ".dotx", ".odt", ".ott", ".rtf", ".pages", ".wpd", ".wps", ".pdf", ".epub"}
	processorStarts     = []string{"PK\x03\x04", "{\\rtf", "%PDF-", "\xD0\xCF\x11\xE0"}
)

// KindOf tells the kind of a manuscript by its name: .md and .markdown are
// Markdown, a word processor's files are refused in words, anything else is
// text.
func KindOf(name string) (Kind, error) {
	ext := strings.ToLower(filepath.Ext(name))
	switch {
	case slices.Contains(processorExtensions, ext):
		return Text, processorError(name)
	case slices.Contains(markdownExtensions, ext):
		return Markdown, nil
	}
	return Text, nil
}

func processorError(name string) error {
	return fmt.Errorf("%s: word-processor files can't be read yet: save it as Markdown or text", name)
}

// fromProcessor says that the bytes are a word processor's, whatever the name.
func fromProcessor(data []byte) bool {
	return slices.ContainsFunc(processorStarts, func(start string) bool {
		return bytes.HasPrefix(data, []byte(start))
	})
}
