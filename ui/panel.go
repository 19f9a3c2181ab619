package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// panel is a sheet of paper laid over the desk to ask something. While it lies
// there nothing else can be done.
type panel struct {
	w      *Window
	pop    *widget.PopUp
	first  fyne.Focusable
	closed bool
}

// layPanel lays a panel: a heading, and what it asks below. first gets the keys.
func (w *Window) layPanel(heading string, first fyne.Focusable, body ...fyne.CanvasObject) *panel {
	colors := w.desk.light.palette()
	title := canvas.NewText(heading, colors.panelInk)
	title.TextSize = 21
	rows := append([]fyne.CanvasObject{title}, body...)
	p := &panel{w: w, first: first}
	edge := canvas.NewRectangle(colors.panel)
	edge.StrokeColor, edge.StrokeWidth = colors.panelLine, 1
	inner := container.NewPadded(container.NewPadded(container.NewPadded(container.NewVBox(rows...))))
	p.pop = widget.NewModalPopUp(container.NewStack(edge, inner), w.win.Canvas())
	p.pop.Show()
	if first != nil {
		w.win.Canvas().Focus(first)
	}
	return p
}

// lift takes the panel away.
func (p *panel) lift() {
	if p.closed {
		return
	}
	p.closed = true
	p.pop.Hide()
	p.w.win.Canvas().Focus(p.w.desk)
}

// field is a line to type in that hands on the keys which are not for typing.
type field struct {
	widget.Entry
	onKey func(fyne.KeyName) bool // true where the key was meant for something else
	tabs  bool                    // the tab key is one of these
}

func newField(text, hint string, onKey func(fyne.KeyName) bool) *field {
	f := &field{onKey: onKey}
	f.ExtendBaseWidget(f)
	f.SetPlaceHolder(hint)
	f.SetText(text)
	f.CursorColumn = len([]rune(text))
	return f
}

// TypedKey asks onKey first.
func (f *field) TypedKey(e *fyne.KeyEvent) {
	if f.onKey == nil || !f.onKey(e.Name) {
		f.Entry.TypedKey(e)
	}
}

// AcceptsTab says whether the tab key is for onKey, or goes to the next thing.
func (f *field) AcceptsTab() bool { return f.tabs }

// button is a button that Enter presses and Escape leaves.
type button struct {
	widget.Button
	leave func()
}

func newButton(words string, act, leave func()) *button {
	b := &button{leave: leave}
	b.Text, b.OnTapped = words, act
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey presses or leaves.
func (b *button) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		b.OnTapped()
	case fyne.KeyEscape:
		b.leave()
	}
}

// wordsOf is a paragraph on a panel.
func wordsOf(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// say lays a panel that says something, until it is read.
func (w *Window) say(heading, text string) {
	var p *panel
	lift := func() { p.lift() }
	ok := newButton("All right", lift, lift)
	body := container.New(&wide{w.panelWidth(560)}, wordsOf(text))
	p = w.layPanel(heading, ok, body, container.NewHBox(ok))
}

// fail says why something could not be done.
func (w *Window) fail(heading string, err error) {
	if err != nil {
		w.say(heading, sentence(err.Error())+".")
	}
}

// wide lays one object out at a width of its own.
type wide struct{ width float32 }

// MinSize is that wide, and as deep as the object then is.
func (l *wide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	deep := float32(0)
	for _, o := range objects {
		o.Resize(fyne.NewSize(l.width, o.MinSize().Height))
		deep = max(deep, o.MinSize().Height)
	}
	return fyne.NewSize(l.width, deep)
}

// Layout gives each object all the room.
func (l *wide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
		o.Move(fyne.Position{})
	}
}
