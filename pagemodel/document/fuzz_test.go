package document

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"headland/pagemodel"
)

// FuzzText holds that any text comes out of both files character by character, as
// far as XML has it, whatever stands before and after.
func FuzzText(f *testing.F) {
	f.Add(hostile, "  ")
	for i := range pieces {
		f.Add(pieces[i], pieces[len(pieces)-1-i])
	}
	f.Add("\t \t", " \u2003\r\n")
	f.Fuzz(func(t *testing.T, first, second string) {
		d := Document{Title: first, Author: second, Language: first}
		d.Add(Paragraph{Style: Verse, Runs: []Run{
			{Text: first, Look: pagemodel.Italic}, {Text: second}, {Mark: LineEnd}, {Text: second, Look: pagemodel.Bold}, {Mark: Tab}, {Text: first},
		}})
		want := writable(first) + writable(second) + "\n" + writable(second) + "\t" + writable(first)
		for ending, part := range map[string]string{"docx": "word/document.xml", "odt": "content.xml"} {
			all := files(t, d, ending)
			if got := charactersOf(t, all[part]); got != want {
				t.Fatalf("%s holds %q, want %q", ending, got, want)
			}
			for name, data := range all {
				if name != "mimetype" {
					wellFormed(t, name, data)
				}
			}
		}
	})
}

// charactersOf is the text in a file, as its format says that it is to be read: of a
// .odt, white that follows white, an end of line or nothing is none.
func charactersOf(t *testing.T, data []byte) string {
	t.Helper()
	var out strings.Builder
	decoder := xml.NewDecoder(bytes.NewReader(data))
	for odt := bytes.Contains(data, []byte("office:text")); ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return out.String()
		} else if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			if e.Name.Local == "t" && (len(e.Attr) != 1 || e.Attr[0].Value != "preserve") {
				t.Fatalf("the white at the ends of a w:t would be lost: %v", e.Attr)
			}
			out.WriteString(map[string]string{"br": "\n", "line-break": "\n", "tab": "\t", "s": " "}[e.Name.Local])
		case xml.CharData:
			text := string(e)
			last := out.String()
			if odt && strings.HasPrefix(text, " ") && (last == "" || strings.ContainsAny(last[len(last)-1:], " \n\t")) {
				t.Fatalf("a space after %q would be lost", last)
			}
			if odt && (strings.Contains(text, "  ") || strings.Contains(text, "\t")) {
				t.Fatalf("white in %q would be lost", text)
			}
			out.WriteString(text)
		}
	}
}
