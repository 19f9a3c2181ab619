package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"headland/pagemodel"
	"headland/pagemodel/manuscript"
	"headland/ui/session"
)

// bookKind is the ending of a collection's file; manuscriptKinds are those of
// manuscripts that can be read.
const bookKind = ".headland"

var manuscriptKinds = []string{".md", ".txt", ".markdown", ".text"}

// openFile opens a collection's file in place of the one on the desk.
func (w *Window) openFile(path string) {
	if w.session != nil {
		w.desk.settleHand()
		if same(w.session.Path(), path) {
			w.desk.tell("It lies on the desk already")
			return
		}
	}
	s, err := session.Open(path)
	if err != nil {
		w.fail("It could not be opened", err)
		return
	}
	w.show(s)
}

func same(a, b string) bool {
	first, err := os.Stat(a)
	if err != nil {
		return false
	}
	second, err := os.Stat(b)
	return err == nil && os.SameFile(first, second)
}

func (w *Window) askOpen() {
	w.choose(asking{heading: "Open a collection", verb: "Open", kinds: []string{bookKind}, done: w.openFile})
}

// askNew asks for the title and the poet of a new collection, and then where
// it is to be kept.
func (w *Window) askNew() {
	var p *panel
	var title, poet *field
	on := func() {
		about := pagemodel.About{Title: strings.TrimSpace(title.Text), Poet: strings.TrimSpace(poet.Text)}
		p.lift()
		w.askNewPlace(about)
	}
	leave := func() { p.lift() }
	keys := func(k fyne.KeyName) bool { return enterOrLeave(k, on, leave) }
	title, poet = newField("", "Title", keys), newField("", "Poet", keys)
	form := container.New(&wide{520}, container.NewVBox(title, poet))
	p = w.layPanel("A new collection", title, form,
		container.NewHBox(newButton("Go on", on, leave), newButton("Leave it", leave, leave)))
}

// enterOrLeave does the one on Enter and the other on Escape.
func enterOrLeave(k fyne.KeyName, enter, leave func()) bool {
	switch k {
	case fyne.KeyReturn, fyne.KeyEnter:
		enter()
	case fyne.KeyEscape:
		leave()
	default:
		return false
	}
	return true
}

func (w *Window) askNewPlace(about pagemodel.About) {
	w.choose(asking{
		heading: "Where is it to be kept?", verb: "Begin", kinds: []string{bookKind}, write: true, name: fileName(about.Title),
		done: func(path string) { w.newFile(path, about) },
	})
}

// newFile begins a collection with the usual prelims. It has one empty line to
// begin typing in.
func (w *Window) newFile(path string, about pagemodel.About) {
	b := pagemodel.NewBuilder(about, pagemodel.DefaultDesign())
	if err := b.Matter(pagemodel.UsualMatter()); err != nil {
		w.fail("It could not be begun", err)
		return
	}
	line := b.Line("")
	b.Poem(pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", []pagemodel.Stanza{pagemodel.NewStanza(pagemodel.Verse, []pagemodel.Line{line})})})
	s, err := session.Create(path, b.Collection())
	if err != nil {
		w.fail("It could not be begun", err)
		return
	}
	w.show(s)
	w.desk.walkLine(1)
}

// fileName is a title as a file's name.
func fileName(title string) string {
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, title)
	return strings.Trim(name, " .")
}

// askImport adds a manuscript's poems to the book on the desk, or makes a book
// of them where none lies there.
func (w *Window) askImport() {
	w.choose(asking{
		heading: "Add a manuscript", verb: "Add", kinds: manuscriptKinds,
		done: func(path string) { w.addManuscripts([]string{path}) },
	})
}

func (w *Window) addManuscripts(paths []string) {
	if w.session == nil {
		w.bookOf(paths)
		return
	}
	w.desk.settleHand()
	notices, err := w.session.Add(paths)
	w.report("What the manuscript could not bring along", notices)
	w.fail("It could not be added", err)
}

// dropped takes files that were dropped on the window.
func (w *Window) dropped(_ fyne.Position, dropped []fyne.URI) {
	if len(w.win.Canvas().Overlays().List()) > 0 {
		return
	}
	var manuscripts []string
	for _, uri := range dropped {
		path := uri.Path()
		switch {
		case hasKind(path, []string{bookKind}):
			w.openFile(path)
			return
		case hasKind(path, manuscriptKinds):
			manuscripts = append(manuscripts, path)
		case hasKind(path, faceKinds) && w.session != nil:
			w.addFace(path)
			return
		default:
			w.desk.tell(fmt.Sprintf("%s is no collection, no manuscript in Markdown or plain text and no face of type", filepath.Base(path)))
		}
	}
	if len(manuscripts) > 0 {
		w.bookOf(manuscripts)
	}
}

// bookOf makes a book of manuscripts beside the first of them, under a name
// that is free, and lays it on the desk.
func (w *Window) bookOf(manuscripts []string) {
	slices.Sort(manuscripts)
	out, taken := freeName(manuscripts[0])
	s, notices, err := session.Import(out, manuscripts)
	if err != nil {
		w.fail("No book could be made of it", err)
		return
	}
	w.show(s)
	if taken {
		w.desk.tell(fmt.Sprintf("That name was taken, so the book is %s", filepath.Base(out)))
	}
	w.report("What the manuscript could not bring along", notices)
}

// freeName is the name of a book beside a manuscript, with a number where that
// is taken.
func freeName(manuscript string) (path string, taken bool) {
	stem := strings.TrimSuffix(manuscript, filepath.Ext(manuscript))
	path = stem + bookKind
	for n := 2; ; n++ {
		if _, err := os.Lstat(path); err != nil {
			return path, taken
		}
		taken = true
		path = stem + " " + strconv.Itoa(n) + bookKind
	}
}

// report shows what could not be taken over as it was.
func (w *Window) report(heading string, notices []manuscript.Notice) {
	const most = 12
	var lines []string
	for i, n := range notices {
		if i == most {
			lines = append(lines, fmt.Sprintf("and %d more", len(notices)-most))
			break
		}
		lines = append(lines, n.String())
	}
	if len(lines) > 0 {
		w.say(heading, strings.Join(lines, "\n"))
	}
}

func (w *Window) askCopy() {
	w.choose(asking{
		heading: "Save a copy", verb: "Save", kinds: []string{bookKind}, write: true, replace: true,
		name: strings.TrimSuffix(w.session.Name(), bookKind) + " copy", done: w.saveCopy,
	})
}

func (w *Window) saveCopy(path string) {
	w.desk.settleHand()
	err := w.session.SaveCopyOver(path)
	if err != nil {
		w.fail("The copy could not be saved", err)
		return
	}
	w.desk.tell("Saved a copy as " + filepath.Base(path))
}
