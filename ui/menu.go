package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// command is one item of the menus.
type command struct {
	words string
	key   fyne.Shortcut
	act   func()
	book  bool          // only while a book lies on the desk
	order bool          // also while it is held by its order; else the pages are gone back to
	is    func() bool   // whether what it says is so now, or nil; asked while a book is open
	says  func() string // its words now, where they change; likewise
	item  *fyne.MenuItem
}

// menus are the main menu and what in it changes with the book.
type menus struct {
	main       *fyne.MainMenu
	commands   []*command
	undo, redo *fyne.MenuItem
	recent     *fyne.MenuItem
	light      *fyne.MenuItem
}

const ctrl = fyne.KeyModifierShortcutDefault
const ctrlShift = fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift

func key(mod fyne.KeyModifier, name fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: name, Modifier: mod}
}

// makeMenus makes the main menu. Every command of the window is in it: the
// toolkit asks the menu for a shortcut before anything else.
func (w *Window) makeMenus() *fyne.MainMenu {
	w.menus.recent = fyne.NewMenuItem("Open Recent", nil)
	w.menus.main = fyne.NewMainMenu(w.bookMenu(), w.editMenu(), w.lineMenu(), w.poemMenu(), w.pageMenu(), w.goMenu(), w.roundMenu(), w.orderMenu(), w.readingMenu(), w.viewMenu())
	return w.menus.main
}

func (w *Window) bookMenu() *fyne.Menu {
	items := w.items(
		&command{words: "New…", key: key(ctrl, fyne.KeyN), act: w.askNew},
		&command{words: "Open…", key: key(ctrl, fyne.KeyO), act: w.askOpen},
	)
	items = append(items, w.menus.recent, fyne.NewMenuItemSeparator())
	items = append(items, w.items(
		&command{words: "Add Manuscript…", key: key(ctrl, fyne.KeyI), act: w.askImport},
		&command{words: "Save a Copy…", key: key(ctrlShift, fyne.KeyS), act: w.askCopy, book: true},
		nil,
	)...)
	items = append(items, w.designItems()...)
	items = append(items, w.items(
		nil,
		&command{words: "Export PDF…", key: key(ctrl, fyne.KeyE), act: w.askPDF, book: true},
		&command{words: "Export PDF with Crop Marks…", act: w.askPDFMarks, book: true},
		&command{words: "Export PDF of Spreads…", act: w.askPDFSpreads, book: true},
		&command{words: "Export a Dummy to Fold…", act: w.askDummy, book: true},
		&command{words: "Export Pictures…", act: w.askPictures, book: true},
		&command{words: "Export Manuscript…", act: w.askManuscript, book: true},
		&command{words: "Export Manuscript with This Edition’s Breaks…", act: w.askEdition, book: true},
		nil,
	)...)
	quit := fyne.NewMenuItem("Quit", w.leave)
	quit.IsQuit, quit.Shortcut = true, key(ctrl, fyne.KeyQ)
	return fyne.NewMenu("Book", append(items, quit)...)
}

// designItems are what is done to the whole book's looks.
func (w *Window) designItems() []*fyne.MenuItem {
	return w.items(
		&command{words: "Design…", key: key(ctrl, fyne.KeyD), act: w.askDesign, book: true},
		&command{words: "Two Designs…", key: key(ctrlShift, fyne.KeyD), act: w.askTwoDesigns, book: true},
		&command{words: "Kept Designs…", act: w.askKept, book: true},
		&command{words: "Set in a Face…", act: w.askFace, book: true},
		&command{words: "Prelims and End Matter…", key: key(ctrlShift, fyne.KeyM), act: w.askMatter, book: true},
	)
}

func (w *Window) editMenu() *fyne.Menu {
	d := w.desk
	items := w.items(
		&command{words: "Undo", key: &fyne.ShortcutUndo{}, act: d.undo, book: true},
		&command{words: "Redo", key: &fyne.ShortcutRedo{}, act: d.redo, book: true},
		nil,
		&command{words: "Paste", key: &fyne.ShortcutPaste{}, act: w.paste, book: true},
		&command{words: "Retype the Line (Enter)", act: d.beginTyping, book: true},
	)
	w.menus.undo, w.menus.redo = items[0], items[1]
	return fyne.NewMenu("Edit", items...)
}

func (w *Window) lineMenu() *fyne.Menu {
	d := w.desk
	const alt = fyne.KeyModifierAlt
	return fyne.NewMenu("Line", w.items(
		&command{words: "Shed a Word", key: key(alt, fyne.KeyLeft), act: d.shedWord, book: true},
		&command{words: "Draw a Word Up", key: key(alt, fyne.KeyRight), act: d.drawWordUp, book: true},
		&command{words: "Shed Words Are a Line of Their Own", key: key(alt, fyne.KeyUp), act: d.landOwn, book: true},
		&command{words: "Shed Words Join the Line Below", key: key(alt, fyne.KeyDown), act: d.landNext, book: true},
		nil,
		&command{words: "Break Here in the Poem", key: key(ctrl, fyne.KeyReturn), act: d.breakInPoem, book: true},
		&command{words: "Break Here in This Edition", key: key(ctrlShift, fyne.KeyReturn), act: d.breakInEdition, book: true},
		&command{words: "Join the Line Below", key: key(ctrl, fyne.KeyJ), act: d.joinLine, book: true},
		&command{words: "Open or Close the Stanza Break", key: key(ctrlShift, fyne.KeyJ), act: d.stanzaBreak, book: true},
		nil,
		&command{words: "Choices…", key: key(ctrlShift, fyne.KeyC), act: w.askChoices, book: true},
		&command{words: "Let It Turn", key: key(ctrl, fyne.KeyK), act: d.keepLine, book: true},
		&command{words: "Turn Here", key: key(ctrl, fyne.KeyT), act: d.turnHere, book: true},
		&command{words: "Unsettle", key: key(ctrl, fyne.KeyU), act: d.unsettle, book: true},
		&command{words: "Note a Reason…", key: key(ctrlShift, fyne.KeyN), act: w.askReason, book: true},
		nil,
		&command{words: "Widen the Gap or Indent", key: key(ctrlShift, fyne.KeyRight), act: d.widenGap, book: true},
		&command{words: "Narrow the Gap or Indent", key: key(ctrlShift, fyne.KeyLeft), act: d.narrowGap, book: true},
		&command{words: "Indent by an Em", key: key(ctrl, fyne.KeyRight), act: d.indentMore, book: true},
		&command{words: "Indent by an Em Less", key: key(ctrl, fyne.KeyLeft), act: d.indentLess, book: true},
		&command{words: "Begin Where the Line Above Ended, or Not", key: key(ctrl, fyne.KeyEnd), act: d.dropLine, book: true},
		&command{words: "White Above: a Line More", key: key(ctrl, fyne.KeyPageDown), act: d.whiteMore, book: true},
		&command{words: "White Above: a Line Less", key: key(ctrl, fyne.KeyPageUp), act: d.whiteLess, book: true},
		nil,
		&command{words: "Say How a Word Goes…", key: key(ctrlShift, fyne.KeyH), act: w.askSay, book: true},
	)...)
}

func (w *Window) goMenu() *fyne.Menu {
	d := w.desk
	return fyne.NewMenu("Go", w.items(
		&command{words: "To a Poem…", key: key(ctrl, fyne.KeyG), act: w.askPoem, book: true},
		nil,
		&command{words: "Next Line Unsettled", key: key(ctrl, fyne.KeyDown), act: d.nextUnsettled, book: true},
		&command{words: "Line Unsettled Before", key: key(ctrl, fyne.KeyUp), act: d.unsettledBefore, book: true},
		nil,
		&command{words: "To a Fault…", key: key(ctrlShift, fyne.KeyG), act: w.askFault, book: true},
		&command{words: "Next Fault", key: key(ctrlShift, fyne.KeyDown), act: d.nextFault, book: true},
		&command{words: "Fault Before", key: key(ctrlShift, fyne.KeyUp), act: d.faultBefore, book: true},
		nil,
		&command{words: "To a Decision…", key: key(ctrlShift, fyne.KeyL), act: w.askDecision, book: true},
		nil,
		&command{words: "Next Leaf (Page Down)", act: d.nextLeaf, book: true},
		&command{words: "Leaf Before (Page Up)", act: d.leafBefore, book: true},
	)...)
}

func (w *Window) viewMenu() *fyne.Menu {
	d := w.desk
	items := w.items(
		&command{words: "Spread", key: key(ctrl, fyne.Key1), act: d.leaveOrder, book: true},
		&command{words: "Order", key: key(ctrl, fyne.Key2), act: w.askOrder, book: true},
		&command{words: "Aloud", key: key(ctrl, fyne.Key3), act: w.askAloud, book: true},
		nil,
		&command{words: "Nearer", key: key(ctrl, fyne.KeyEqual), act: d.nearer, book: true},
		&command{words: "Farther", key: key(ctrl, fyne.KeyMinus), act: d.farther, book: true},
		&command{words: "Fit the Window", key: key(ctrl, fyne.Key0), act: d.fitWindow, book: true},
		nil,
		&command{words: "Lamp", key: key(ctrl, fyne.KeyL), act: w.otherLight, order: true},
	)
	w.menus.light = items[len(items)-1]
	return fyne.NewMenu("View", items...)
}

// items makes menu items of commands; nil is a separator.
func (w *Window) items(commands ...*command) []*fyne.MenuItem {
	items := make([]*fyne.MenuItem, len(commands))
	for i, c := range commands {
		if c == nil {
			items[i] = fyne.NewMenuItemSeparator()
			continue
		}
		c.item = fyne.NewMenuItem(c.words, func() { w.run(c) })
		c.item.Shortcut = c.key
		w.menus.commands = append(w.menus.commands, c)
		items[i] = c.item
	}
	return items
}

// run does a command, if it can be done now. The toolkit sends shortcuts here
// though a dialog is open, and though the item is disabled: then the shortcut
// belongs to the field that is typed in, or to nobody.
func (w *Window) run(c *command) {
	if len(w.win.Canvas().Overlays().List()) > 0 {
		if field, ok := w.win.Canvas().Focused().(fyne.Shortcutable); ok && c.key != nil {
			field.TypedShortcut(withClipboard(c.key, w.app.Clipboard()))
		}
		return
	}
	if c.book && w.session == nil || !w.desk.order.lets(c) {
		return
	}
	c.act()
	if len(w.win.Canvas().Overlays().List()) == 0 {
		w.desk.takeKeys()
	}
}

// withClipboard is a shortcut as a field wants it.
func withClipboard(s fyne.Shortcut, c fyne.Clipboard) fyne.Shortcut {
	if _, ok := s.(*fyne.ShortcutPaste); ok {
		return &fyne.ShortcutPaste{Clipboard: c}
	}
	return s
}

// paste types the clipboard's words into the line that is being retyped.
func (w *Window) paste() { w.desk.paste(w.app.Clipboard().Content()) }
