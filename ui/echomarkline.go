package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
)

// lineMark asks under which echo the line at hand is marked, or its poem, or the
// word at hand.
type lineMark struct {
	w     *Window
	ref   pagemodel.LineRef
	word  string // at hand; or ""
	panel *panel
	what  *wordRow
	field *field
	list  *listing
	shown []pagemodel.Echo
}

// markedPart is what is marked: each has its place in the row of words.
type markedPart int

const (
	markedLine markedPart = iota
	markedPoem
	markedWord
)

// askMarkLine asks for the name of an echo for the line at hand.
func (w *Window) askMarkLine() {
	ref, line, ok := w.desk.toAsk()
	if !ok {
		return
	}
	d := w.desk
	m := &lineMark{w: w, ref: ref, word: d.wordAtCaret(line)}
	m.field = newField("", "what comes back here: an image, a form", m.key)
	m.field.tabs = true
	m.field.OnChanged = func(string) { m.narrow() }
	m.what = newWordRow(d.k, d.light.palette(), m.parts(), int(markedLine), m.as)
	m.list = newListing(d.k, d.light.palette(), fyne.NewSize(w.panelWidth(askWidth), 8*rowDepth), m.take)
	help := w.paragraph("Enter marks it under the name typed or chosen, or takes that mark off · Tab: the line, the whole poem or the word at hand · Esc leaves")
	m.panel = w.layPanel("Mark it under an echo", m.field, w.lineInInk(line.Text(), ""), m.what, m.field, m.list, help)
	m.narrow()
}

// parts are what can be marked, in words.
func (m *lineMark) parts() []string {
	parts := []string{markedLine: "the line", markedPoem: "the whole poem"}
	if m.word != "" {
		parts = append(parts, "the word "+quoted(m.word))
	}
	return parts
}

// as has another part be marked.
func (m *lineMark) as(i int) {
	m.what.choose(i)
	m.narrow()
	m.w.win.Canvas().Focus(m.field)
}

// narrow lists the echoes whose names go with what is typed; none is chosen until
// one of that name is.
func (m *lineMark) narrow() {
	typed := strings.ToLower(strings.TrimSpace(m.field.Text))
	m.shown = nil
	var rows []listRow
	chosen := -1
	for _, e := range m.w.session.Collection().Echoes() {
		if !strings.Contains(strings.ToLower(e.Name), typed) {
			continue
		}
		if strings.EqualFold(e.Name, typed) {
			chosen = len(m.shown)
		}
		m.shown = append(m.shown, e)
		row := listRow{words: e.Name, under: strings.Join(e.Words, ", ")}
		if m.in(&e) {
			row.aside = "marked: Enter takes it off"
		}
		rows = append(rows, row)
	}
	m.list.set(rows, chosen)
}

// in says that what is to be marked is marked under an echo.
func (m *lineMark) in(e *pagemodel.Echo) bool {
	switch markedPart(m.what.chosen) {
	case markedPoem:
		return slices.Contains(e.Poems, m.ref.Poem)
	case markedWord:
		return slices.Contains(e.Words, m.word)
	}
	return slices.Contains(e.Lines, m.ref)
}

func (m *lineMark) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		m.panel.lift()
	case fyne.KeyTab:
		m.as((m.what.chosen + 1) % len(m.what.words))
	case fyne.KeyReturn, fyne.KeyEnter:
		if m.list.chosen >= 0 {
			m.take(m.list.chosen)
		} else if name := strings.Join(strings.Fields(m.field.Text), " "); name != "" {
			m.mark(pagemodel.Echo{Name: name})
		}
	default:
		return m.list.walk(k)
	}
	return true
}

// take marks under one of those listed.
func (m *lineMark) take(i int) { m.mark(m.shown[i]) }

// mark marks the part under an echo, or takes that mark off.
func (m *lineMark) mark(e pagemodel.Echo) {
	part := sentence(m.what.words[m.what.chosen])
	words := part + " is marked under " + quoted(e.Name) + " · Ctrl F shows where it comes back"
	if m.in(&e) {
		words = part + " is no longer marked under " + quoted(e.Name)
	}
	switch markedPart(m.what.chosen) {
	case markedPoem:
		e.Poems = toggled(e.Poems, m.ref.Poem)
	case markedWord:
		e.Words = toggled(e.Words, m.word)
	default:
		e.Lines = toggled(e.Lines, m.ref)
	}
	m.panel.lift()
	m.w.desk.do(pagemodel.SetEcho{Echo: e})
	m.w.desk.tellDone(words)
}
