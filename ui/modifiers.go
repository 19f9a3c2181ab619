package ui

import "fyne.io/fyne/v2"

// modifiers is the one source of the modifier keys that are held. A window that
// loses the keyboard never hears of a key let go, so losing it lets go of all.
type modifiers struct {
	source func() fyne.KeyModifier
	away   bool
}

// held is what is held down now.
func (m *modifiers) held() keysDown {
	if m.away || m.source == nil {
		return keysDown{}
	}
	now := m.source()
	return keysDown{shift: now&fyne.KeyModifierShift != 0, ctrl: now&fyne.KeyModifierShortcutDefault != 0}
}

// leave lets go of all until come.
func (m *modifiers) leave() { m.away = true }

// come listens again.
func (m *modifiers) come() { m.away = false }
