package ui

import (
	"strings"
	"unicode"

	"fyne.io/fyne/v2"
	"github.com/clipperhouse/uax29/v2/graphemes"

	"headland/pagemodel"
)

// typing is a line being retyped in place. It is a text and a caret, with a
// history of its own that ends when the line is left.
type typing struct {
	ref    pagemodel.LineRef
	was    string // the text when it began
	text   string
	caret  int // a byte offset into text, between two characters as a reader sees them
	undone []typed
	done   []typed
}

// typed is a state that retyping can go back to.
type typed struct {
	text  string
	caret int
}

func newTyping(ref pagemodel.LineRef, text string, caret int) *typing {
	return &typing{ref: ref, was: text, text: text, caret: max(0, min(caret, len(text)))}
}

// insert types text at the caret. Of several lines only the first is taken,
// and no control characters.
func (t *typing) insert(text string) {
	if end := strings.IndexAny(text, "\r\n\u2028\u2029\u0085"); end >= 0 {
		text = text[:end]
	}
	text = strings.Map(printable, text)
	t.replace(t.caret, t.caret, text)
}

func printable(r rune) rune {
	if r == '\t' {
		return ' '
	}
	if unicode.IsControl(r) || r == unicode.ReplacementChar {
		return -1
	}
	return r
}

// replace puts text in place of what stands from start to end.
func (t *typing) replace(start, end int, text string) {
	if start == end && text == "" {
		return
	}
	t.done, t.undone = append(t.done, typed{t.text, t.caret}), nil
	t.text = t.text[:start] + text + t.text[end:]
	t.caret = start + len(text)
}

// backspace takes away the character before the caret, as a reader sees it.
func (t *typing) backspace() { t.replace(t.before(), t.caret, "") }

// remove takes away the character after the caret.
func (t *typing) remove() {
	t.replace(t.caret, t.after(), "")
}

// step moves the caret one character on (1) or back (-1).
func (t *typing) step(by int) {
	if by < 0 {
		t.caret = t.before()
		return
	}
	t.caret = t.after()
}

// before is where the character before the caret begins.
func (t *typing) before() int {
	at := 0
	for each := graphemes.FromString(t.text[:t.caret]); each.Next(); {
		at = each.Start()
	}
	return at
}

// after is where the character after the caret ends.
func (t *typing) after() int {
	if each := graphemes.FromString(t.text[t.caret:]); each.Next() {
		return t.caret + each.End()
	}
	return t.caret
}

// undo goes back one step; false where there is none.
func (t *typing) undo() bool { return t.back(&t.done, &t.undone) }

// redo goes forward again.
func (t *typing) redo() bool { return t.back(&t.undone, &t.done) }

func (t *typing) back(from, to *[]typed) bool {
	n := len(*from)
	if n == 0 {
		return false
	}
	*to = append(*to, typed{t.text, t.caret})
	t.text, t.caret = (*from)[n-1].text, (*from)[n-1].caret
	*from = (*from)[:n-1]
	return true
}

// edit is what keeping the line would do; nil for nothing.
func (t *typing) edit() pagemodel.Edit {
	if t.text == t.was {
		return nil
	}
	return pagemodel.Retype{LineRef: t.ref, Text: t.text}
}

// key moves the caret or takes characters away; false for any other key.
func (t *typing) key(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyBackspace:
		t.backspace()
	case fyne.KeyDelete:
		t.remove()
	case fyne.KeyLeft:
		t.step(-1)
	case fyne.KeyRight:
		t.step(1)
	case fyne.KeyHome:
		t.caret = 0
	case fyne.KeyEnd:
		t.caret = len(t.text)
	default:
		return false
	}
	return true
}
