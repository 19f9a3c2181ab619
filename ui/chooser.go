package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// asking is what a chooser is to find.
type asking struct {
	heading string
	verb    string   // on the button
	kinds   []string // endings of the files that are listed; none lists all
	name    string   // suggested, where something is to be written
	write   bool     // a new name may be given
	folder  bool     // a folder is wanted
	replace bool     // what is there may be replaced, if the poet says so twice
	done    func(path string)
}

// chooser finds a file or a folder: a field to type a name or a path in, and
// below it what the folder holds, narrowed by what is typed.
type chooser struct {
	asking
	w       *Window
	panel   *panel
	folder  string
	where   *widget.Label
	field   *field
	list    *listing
	note    *widget.Label
	entries []os.DirEntry // what the rows stand for; before them the folder above
	sure    string        // the path that may be replaced, once it was asked
}

// choose lays a chooser on the desk.
func (w *Window) choose(a asking) {
	c := &chooser{asking: a, w: w, folder: w.startFolder()}
	c.where, c.note = widget.NewLabel(""), widget.NewLabel("")
	c.field = newField(a.name, "a name, or the whole path", c.key)
	c.field.OnChanged = func(string) { c.narrow() }
	c.list = newListing(w.desk.k, w.desk.light.palette(), fyne.NewSize(620, 10*rowDepth), c.press)
	buttons := container.NewHBox(newButton(a.verb, c.accept, c.leave), newButton("Leave it", c.leave, c.leave))
	c.panel = w.layPanel(a.heading, c.field, c.where, c.field, c.list, c.note, buttons)
	w.chooser = c
	c.enter(c.folder)
}

// startFolder is where files were last found.
func (w *Window) startFolder() string {
	if info, err := os.Stat(w.settings.Folder); err == nil && info.IsDir() {
		return w.settings.Folder
	}
	if home, err := os.UserHomeDir(); err == nil {
		return home
	}
	return "."
}

// enter goes into a folder.
func (c *chooser) enter(folder string) {
	if _, err := os.ReadDir(folder); err != nil {
		c.say(fmt.Sprintf("%s can’t be looked into: choose another folder", folder))
		return
	}
	c.folder = filepath.Clean(folder)
	c.where.SetText("in " + c.folder)
	if !c.write && c.field.Text != "" {
		c.field.SetText("")
	}
	c.narrow()
}

// narrow lists what in the folder goes with what is typed.
func (c *chooser) narrow() {
	c.sure = ""
	c.say("")
	all, err := os.ReadDir(c.folder)
	if err != nil {
		all = nil
	}
	typed := strings.ToLower(c.field.Text)
	if c.write {
		typed = ""
	}
	c.entries = slices.DeleteFunc(all, func(e os.DirEntry) bool { return !c.shown(e, typed) })
	slices.SortStableFunc(c.entries, foldersFirst)
	rows := []listRow{{words: "the folder above", quiet: true}}
	for _, e := range c.entries {
		rows = append(rows, rowOf(e))
	}
	chosen := -1
	if typed != "" && len(rows) > 1 {
		chosen = 1
	}
	c.list.set(rows, chosen)
}

func (c *chooser) shown(e os.DirEntry, typed string) bool {
	name := strings.ToLower(e.Name())
	if strings.HasPrefix(name, ".") || !strings.Contains(name, typed) {
		return false
	}
	return e.IsDir() || !c.asking.folder && hasKind(name, c.kinds)
}

func hasKind(name string, kinds []string) bool {
	return len(kinds) == 0 || slices.Contains(kinds, strings.ToLower(filepath.Ext(name)))
}

func foldersFirst(a, b os.DirEntry) int {
	switch {
	case a.IsDir() && !b.IsDir():
		return -1
	case b.IsDir() && !a.IsDir():
		return 1
	}
	return strings.Compare(strings.ToLower(a.Name()), strings.ToLower(b.Name()))
}

func rowOf(e os.DirEntry) listRow {
	if e.IsDir() {
		return listRow{words: e.Name(), aside: "folder"}
	}
	info, err := e.Info()
	if err != nil {
		return listRow{words: e.Name()}
	}
	return listRow{words: e.Name(), aside: info.ModTime().Format("2 January 2006")}
}

// key is a key in the field that is not for typing.
func (c *chooser) key(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyEscape:
		c.leave()
	case fyne.KeyReturn, fyne.KeyEnter:
		if c.list.chosen >= 0 {
			c.press(c.list.chosen)
		} else {
			c.accept()
		}
	default:
		return c.list.walk(k)
	}
	return true
}

// press takes a row: into a folder, or for the file.
func (c *chooser) press(row int) {
	if row == 0 {
		c.enter(filepath.Dir(c.folder))
		return
	}
	e := c.entries[row-1]
	path := filepath.Join(c.folder, e.Name())
	switch {
	case e.IsDir():
		c.enter(path)
	case c.write:
		c.field.SetText(e.Name())
	default:
		c.take(path)
	}
	c.w.win.Canvas().Focus(c.field)
}

// accept takes what is typed, as a name in the folder or as a path.
func (c *chooser) accept() {
	path := c.typedPath()
	info, err := os.Stat(path)
	there := err == nil
	switch {
	case c.asking.folder && (!there || info.IsDir()):
		c.take(path)
	case there && info.IsDir():
		c.field.SetText("")
		c.enter(path)
	case c.field.Text == "":
		c.say("Type a name, or choose one from the list")
	case !c.write && !there:
		c.say(fmt.Sprintf("There is no %s here: choose one from the list", filepath.Base(path)))
	case c.write:
		c.acceptNew(c.withKind(path))
	default:
		c.take(path)
	}
}

// typedPath is the path that the field means.
func (c *chooser) typedPath() string {
	typed := strings.TrimSpace(c.field.Text)
	if rest, ok := strings.CutPrefix(typed, "~"); ok {
		if home, err := os.UserHomeDir(); err == nil {
			return filepath.Join(home, rest)
		}
	}
	if filepath.IsAbs(typed) {
		return filepath.Clean(typed)
	}
	return filepath.Join(c.folder, typed)
}

// withKind is the path with the first kind's ending, if it has none of them.
func (c *chooser) withKind(path string) string {
	if len(c.kinds) == 0 || hasKind(path, c.kinds) {
		return path
	}
	return path + c.kinds[0]
}

// acceptNew takes the name of a file to write. One that is there is replaced
// only if that may be, and if the poet says so again.
func (c *chooser) acceptNew(path string) {
	_, err := os.Stat(path)
	switch {
	case err != nil || c.sure == path:
		c.take(path)
	case !c.replace:
		c.say(fmt.Sprintf("%s is there already: choose another name", filepath.Base(path)))
	default:
		c.sure = path
		c.say(fmt.Sprintf("%s is there already: press Enter again to replace it", filepath.Base(path)))
	}
}

func (c *chooser) say(words string) { c.note.SetText(words) }

// take is the end of it.
func (c *chooser) take(path string) {
	c.leave()
	c.w.settings.Folder = filepath.Dir(path)
	c.done(path)
}

// leave takes the chooser away.
func (c *chooser) leave() {
	c.panel.lift()
	c.w.chooser = nil
}
