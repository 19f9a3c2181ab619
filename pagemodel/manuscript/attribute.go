package manuscript

import (
	"fmt"
	"strconv"
	"strings"

	"headland/pagemodel"
)

// attribute is something that is said below a poem's heading, as in
// "[start: recto]": either words, several lines of which are lines of it, or a
// value, the last of which counts.
type attribute struct {
	key   string
	words func(*pagemodel.PoemHead) *string
	read  func(*pagemodel.PoemHead, string) error // the error says in words what is wrong with the value
	said  func(pagemodel.PoemHead) string         // the value, or "" where it is the usual one
}

// attributes are all of them, in the order in which they are written.
var attributes = []attribute{
	{key: "short_title", words: func(h *pagemodel.PoemHead) *string { return &h.Short }},
	{key: "subtitle", words: func(h *pagemodel.PoemHead) *string { return &h.Subtitle }},
	{key: "dedication", words: func(h *pagemodel.PoemHead) *string { return &h.Dedication }},
	{key: "form", read: readForm, said: func(h pagemodel.PoemHead) string { return string(h.Form) }},
	{key: "start", read: readStartOn, said: func(h pagemodel.PoemHead) string { return unlessUsual(h.Start) }},
	{key: "blank", read: readBlank, said: saidBlank},
	{key: "run", read: readRun, said: saidRun},
	{key: "size", read: readSize, said: saidSize},
	{key: "edge", read: readEdge, said: func(h pagemodel.PoemHead) string { return unlessUsual(h.Edge) }},
	{key: "lie", read: readLie, said: func(h pagemodel.PoemHead) string { return unlessUsual(h.Lie) }},
	{key: "note", words: func(h *pagemodel.PoemHead) *string { return &h.Note }},
}

// headAttribute is the attribute of that key, or nil.
func headAttribute(key string) *attribute {
	for i := range attributes {
		if attributes[i].key == key {
			return &attributes[i]
		}
	}
	return nil
}

// headKeys are the keys in words.
func headKeys() string {
	keys := make([]string, len(attributes))
	for i, a := range attributes {
		keys[i] = a.key
	}
	last := len(keys) - 1
	return strings.Join(keys[:last], ", ") + " and " + keys[last]
}

// take takes what is said of an attribute into the head; seen says that it is not
// the first of its key.
func (a *attribute) take(h *pagemodel.PoemHead, value string, seen bool) error {
	switch {
	case a.words == nil:
		return a.read(h, value)
	case seen:
		*a.words(h) += "\n" + value
	default:
		*a.words(h) = value
	}
	return nil
}

// lines are what is to be written of the attribute, one for each time that it is
// said.
func (a *attribute) lines(h pagemodel.PoemHead) []string {
	if a.words == nil {
		if value := a.said(h); value != "" {
			return []string{value}
		}
		return nil
	}
	if words := *a.words(&h); words != "" {
		return strings.Split(words, "\n")
	}
	return nil
}

// unlessUsual is a value in words, "" for the zero one.
func unlessUsual[T interface {
	~int
	String() string
}](v T) string {
	if v == 0 {
		return ""
	}
	return v.String()
}

func readForm(h *pagemodel.PoemHead, s string) error {
	h.Form = pagemodel.ParseForm(s)
	return nil
}

func readStartOn(h *pagemodel.PoemHead, s string) error {
	return parsed(&h.Start, s, pagemodel.ParseStart)
}

func readEdge(h *pagemodel.PoemHead, s string) error {
	return parsed(&h.Edge, s, pagemodel.ParseEdge)
}

func readLie(h *pagemodel.PoemHead, s string) error {
	return parsed(&h.Lie, s, pagemodel.ParseLie)
}

// parsed reads a value into its place, which is left as it is where it can't be
// read.
func parsed[T any](place *T, s string, parse func(string) (T, error)) error {
	v, err := parse(s)
	if err == nil {
		*place = v
	}
	return err
}

// blankBefore is what is said of a blank page before a poem.
const blankBefore = "before"

func readBlank(h *pagemodel.PoemHead, s string) error {
	if s != blankBefore {
		return fmt.Errorf("%q is no place for a blank page: write %s", s, blankBefore)
	}
	h.Blank = true
	return nil
}

func saidBlank(h pagemodel.PoemHead) string {
	if h.Blank {
		return blankBefore
	}
	return ""
}

func readRun(h *pagemodel.PoemHead, s string) error {
	lines, err := strconv.Atoi(s)
	if err != nil || lines < -2 || lines > 2 {
		return fmt.Errorf("%q is no number of lines that pages can run long or short: write one from -2 to 2", s)
	}
	h.Run = lines
	return nil
}

func saidRun(h pagemodel.PoemHead) string {
	if h.Run == 0 {
		return ""
	}
	return strconv.Itoa(h.Run)
}

func readSize(h *pagemodel.PoemHead, s string) error {
	size, err := pagemodel.ParseLength(s)
	if err == nil && (size < pagemodel.Pt(4) || size > pagemodel.Pt(72)) {
		err = fmt.Errorf("type of %v can't be set: write a size from 4pt to 72pt", size)
	}
	if err == nil {
		h.Size = size
	}
	return err
}

func saidSize(h pagemodel.PoemHead) string {
	if h.Size == 0 {
		return ""
	}
	return h.Size.String()
}
