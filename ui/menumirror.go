package ui

import (
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
)

// mirror has the menus say what can be done now, and draws them again if they
// said otherwise.
func (m *menus) mirror(w *Window) {
	before := m.said()
	for _, c := range m.commands {
		c.item.Disabled = c.book && w.session == nil
		if c.is != nil {
			c.item.Checked = w.session != nil && c.is()
		}
		if c.says != nil && w.session != nil {
			c.item.Label = c.says()
		}
	}
	m.mirrorHistory(w)
	m.light.Label = "Lamp"
	if w.desk.light == lamp {
		m.light.Label = "Day"
	}
	m.recent.ChildMenu = w.recentMenu()
	m.recent.Disabled = len(m.recent.ChildMenu.Items) == 0
	if m.said() != before {
		m.main.Refresh()
	}
}

func (m *menus) mirrorHistory(w *Window) {
	m.undo.Label, m.redo.Label = "Undo", "Redo"
	if w.session == nil {
		return
	}
	words, can := w.session.UndoLabel()
	m.undo.Label, m.undo.Disabled = strings.TrimSpace("Undo "+words), !can && w.desk.typing == nil
	words, can = w.session.RedoLabel()
	m.redo.Label, m.redo.Disabled = strings.TrimSpace("Redo "+words), !can && w.desk.typing == nil
}

// said is everything in the menus that changes, to see whether it has.
func (m *menus) said() string {
	var said strings.Builder
	for _, c := range m.commands {
		said.WriteString(c.item.Label)
		if c.item.Disabled {
			said.WriteByte('-')
		}
		if c.item.Checked {
			said.WriteByte('+')
		}
	}
	if m.recent.ChildMenu != nil {
		for _, item := range m.recent.ChildMenu.Items {
			said.WriteString(item.Label)
		}
	}
	return said.String()
}

// recentMenu lists the files opened last that are still there.
func (w *Window) recentMenu() *fyne.Menu {
	menu := fyne.NewMenu("")
	for _, path := range w.settings.here() {
		if w.session == nil || w.session.Path() != path {
			name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
			menu.Items = append(menu.Items, fyne.NewMenuItem(name, func() { w.openFile(path) }))
		}
	}
	return menu
}
