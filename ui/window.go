package ui

import (
	"fmt"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"

	"headland/assets"
	"headland/pagemodel"
	"headland/ui/session"
)

// Window is the one window, with a desk in it. It owns the session that lies
// on the desk and closes it when another takes its place.
type Window struct {
	app      fyne.App
	win      fyne.Window
	desk     *desk
	stage    *fyne.Container // the desk, and what lies over all of it
	session  *session.Session
	settings *settings
	theme    *deskTheme
	menus    menus
	worker   worker
	chooser  *chooser            // while one is open
	orders   ordersAsked         // of an order that is looked for
	reading  pagemodel.ReadingID // the running order looked at last; 0 for none
}

// Opened is a book that was opened for the window, or why it could not be. The
// session is nil where no book was asked for.
type Opened struct {
	Session *session.Session
	Err     error
}

// Run shows the window with the book that opening gives on the desk, and
// returns when the window has been closed; or with the error that opening gave.
// The book may be opened on another goroutine while the window is made. post
// hands a function to the window's goroutine from another.
func Run(a fyne.App, opening <-chan Opened, post func(func())) error {
	folder, err := os.UserConfigDir()
	if err != nil {
		folder = os.TempDir()
	}
	w := NewWindow(a, nil, post, filepath.Join(folder, "headland"))
	var failed error
	w.desk.awaited = func() {
		opened := <-opening
		if failed = opened.Err; failed != nil {
			post(a.Quit)
			return
		}
		w.show(opened.Session)
	}
	w.win.ShowAndRun()
	w.close()
	return failed
}

// NewWindow makes the window without showing it. Its settings are kept in the
// folder.
func NewWindow(a fyne.App, s *session.Session, post func(func()), folder string) *Window {
	w := &Window{app: a, settings: readSettings(folder), worker: worker{post: post}}
	l := w.lightNow()
	w.theme = newDeskTheme(l)
	a.Settings().SetTheme(w.theme)
	w.desk = newDesk(l, &modifiers{source: modifierSource(a)})
	w.desk.ask = w.askAbout
	w.desk.choose = w.askChoices
	w.desk.round.lay, w.desk.round.count = w.laySheet, w.countCorrections
	w.desk.decide, w.desk.reason, w.desk.sayWord = w.askDecision, w.askReason, w.askSay
	w.win = a.NewWindow("Headland")
	w.win.SetIcon(fyne.NewStaticResource("headland.png", assets.Icon()))
	w.win.SetPadded(false)
	w.win.Resize(fyne.NewSize(1400, 900))
	w.win.SetMainMenu(w.makeMenus())
	w.stage = container.NewStack(w.desk)
	w.win.SetContent(w.stage)
	w.win.SetOnDropped(w.dropped)
	w.win.SetCloseIntercept(w.leave)
	w.win.SetMaster()
	a.Settings().AddListener(w.settingsChanged)
	w.show(s)
	return w
}

// modifierSource asks the driver for the modifier keys that are down.
func modifierSource(a fyne.App) func() fyne.KeyModifier {
	if d, ok := a.Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers
	}
	return nil
}

// show lays a session's book on the desk in place of what lay there.
func (w *Window) show(s *session.Session) {
	if w.session != nil && w.session != s {
		w.desk.try(w.session.Close())
	}
	w.session = s
	w.desk.lay(s)
	if s != nil {
		s.OnChange(w.changed)
		w.settings.opened(s.Path())
		w.desk.try(w.settings.write())
		if _, only := s.ReadOnly(); only {
			w.desk.tell(readOnlyWords)
		}
	}
	w.mirror()
	w.win.Canvas().Focus(w.desk)
}

// changed hears of every change of what is to be shown.
func (w *Window) changed() {
	w.desk.changed()
	if !w.session.Previewing() {
		w.mirror()
	}
}

// mirror has the title and the menus say what is so.
func (w *Window) mirror() {
	w.mirrorTitle()
	w.menus.mirror(w)
}

func (w *Window) mirrorTitle() {
	title := "Headland"
	if w.session != nil {
		title = fmt.Sprintf("%s — %s", bookTitle(w.session), unsettledWords(w.session.Setting().Unsettled()))
	}
	if w.win.Title() != title {
		w.win.SetTitle(title)
	}
}

// bookTitle is what the collection is called: its title, or its file.
func bookTitle(s *session.Session) string {
	if title := s.Collection().About().Title; title != "" {
		return title
	}
	return s.Name()
}

// lightNow is the light that the poet chose, or the system's.
func (w *Window) lightNow() light {
	switch {
	case w.settings.Light == lamp.String():
		return lamp
	case w.settings.Light == "" && w.app.Settings().ThemeVariant() == 0:
		return lamp
	}
	return day
}

// settingsChanged follows the system's light unless the poet chose one.
func (w *Window) settingsChanged(fyne.Settings) {
	if l := w.lightNow(); l != w.desk.light {
		w.setLight(l)
	}
}

// otherLight lights the lamp, or lets in the day.
func (w *Window) otherLight() {
	l := lamp
	if w.desk.light == lamp {
		l = day
	}
	w.settings.Light = l.String()
	w.desk.try(w.settings.write())
	w.setLight(l)
}

func (w *Window) setLight(l light) {
	w.desk.setLight(l)
	w.theme = newDeskTheme(l)
	w.app.Settings().SetTheme(w.theme)
	w.menus.mirror(w)
}

// leave is the window's close button: what is being typed is kept, what is
// only held is put back, and there is nothing to ask.
func (w *Window) leave() {
	if w.session != nil {
		w.desk.settleHand()
	}
	w.worker.stop()
	w.win.Close()
}

// close ends the session once the window is gone.
func (w *Window) close() {
	w.worker.stop()
	if w.session == nil {
		return
	}
	if err := w.session.Close(); err != nil {
		fmt.Fprintf(os.Stderr, "headland: %v\n", err)
	}
	w.session = nil
}
