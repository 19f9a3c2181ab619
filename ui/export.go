package ui

import (
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"headland/ui/session"
)

func (w *Window) askPDF() { w.askPDFAs("Export a PDF of single pages", session.PDFOptions{}) }

func (w *Window) askPDFSpreads() {
	w.askPDFAs("Export a PDF of spreads", session.PDFOptions{Spreads: true})
}

func (w *Window) askPDFMarks() {
	w.askPDFAs("Export a PDF of single pages with crop marks", session.PDFOptions{Marks: true})
}

func (w *Window) askPDFAs(heading string, o session.PDFOptions) {
	w.desk.settleHand()
	w.choose(asking{
		heading: heading, verb: "Export", kinds: []string{".pdf"}, write: true, replace: true, name: w.stem(),
		done: func(path string) {
			w.export(path, func(x *session.Export, p progress) error { return x.PDF(path, o, p) })
		},
	})
}

// pictureScale is how fine exported pictures are: pixels a point.
const pictureScale = 3

func (w *Window) askPictures() {
	w.desk.settleHand()
	w.choose(asking{
		heading: "Export a picture of every page: into which folder?", verb: "Export", folder: true, write: true, name: w.stem() + " pages",
		done: func(path string) {
			w.export(path, func(x *session.Export, p progress) error { return x.PNG(path, pictureScale, false, p) })
		},
	})
}

func (w *Window) askManuscript() { w.askText("Export the manuscript", false) }

func (w *Window) askEdition() { w.askText("Export the manuscript with this edition’s breaks", true) }

func (w *Window) askText(heading string, edition bool) {
	w.desk.settleHand()
	w.choose(asking{
		heading: heading, verb: "Export", kinds: writtenKinds, write: true, replace: true, name: w.stem(),
		done: func(path string) { w.exportText(path, edition) },
	})
}

// writtenKinds are the endings of the files that a manuscript can be written to.
var writtenKinds = append([]string{".md", ".docx", ".odt"}, manuscriptKinds[1:]...)

func (w *Window) exportText(path string, edition bool) {
	notices, err := w.session.ExportManuscript(path, edition)
	if err != nil {
		w.fail("It could not be exported", err)
		return
	}
	w.desk.tell("Exported " + filepath.Base(path))
	w.report("What that kind of file can’t hold", notices)
}

// stem is the name that exports are suggested under.
func (w *Window) stem() string { return strings.TrimSuffix(w.session.Name(), bookKind) }

// exporting is an export under way, and the panel that shows how far it is.
type exporting struct {
	w     *Window
	path  string
	bar   *widget.ProgressBar
	panel *panel
	over  bool
	after func() // once it is done
}

// barAfter is how long an export may take before its progress is shown.
const barAfter = time.Second / 2

// export writes the book out beside the window.
func (w *Window) export(path string, write func(*session.Export, progress) error) {
	x, err := w.session.Export()
	if err != nil {
		w.fail("It could not be exported", err)
		return
	}
	w.exportBy(path, func(p progress) error { return write(x, p) }, func() {})
}

// exportBy has a job write to path beside the window.
func (w *Window) exportBy(path string, write func(progress) error, after func()) {
	e := &exporting{w: w, path: path, bar: widget.NewProgressBar(), after: after}
	if !w.worker.begin(write, e.tell, e.end) {
		w.desk.tell("One export is under way: wait until it is done")
		return
	}
	w.worker.after(barAfter, e.showBar)
}

func (e *exporting) showBar() {
	if e.over || len(e.w.win.Canvas().Overlays().List()) > 0 {
		return
	}
	stop := newButton("Stop", e.w.worker.cancel, e.w.worker.cancel)
	e.panel = e.w.layPanel("Exporting "+filepath.Base(e.path), stop, container.New(&wide{440}, e.bar), container.NewHBox(stop))
}

func (e *exporting) tell(done, of int) { e.bar.SetValue(float64(done) / float64(max(1, of))) }

func (e *exporting) end(err error) {
	e.over = true
	if e.panel != nil {
		e.panel.lift()
	}
	switch {
	case errors.Is(err, session.ErrCancelled):
		e.w.desk.tell("Stopped: nothing was exported")
	case err != nil:
		e.w.fail("It could not be exported", err)
	default:
		e.w.desk.tell(fmt.Sprintf("Exported %s", filepath.Base(e.path)))
		e.after()
	}
}
