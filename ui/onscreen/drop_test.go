package onscreen

import (
	"image"
	"net/url"
	"testing"

	"github.com/jezek/xgb/xproto"
)

// drop drops a file on the window as a file manager does, by the XDND protocol
// (freedesktop.org's drag-and-drop protocol for the X window system, version 5).
func (s *screen) drop(t *testing.T, path string, at image.Point) {
	t.Helper()
	source := s.sourceWindow(t)
	list, selection := s.atom("text/uri-list"), s.atom("XdndSelection")
	own := xproto.SetSelectionOwnerChecked(s.conn, source, selection, xproto.TimeCurrentTime)
	if err := own.Check(); err != nil {
		t.Fatal(err)
	}
	const version = 5 << 24
	steps := []struct {
		kind string
		data []uint32
	}{
		{"XdndEnter", []uint32{uint32(source), version, uint32(list)}},
		{"XdndPosition", []uint32{uint32(source), 0, uint32(at.X)<<16 | uint32(at.Y), 0, uint32(s.atom("XdndActionCopy"))}},
		{"XdndDrop", []uint32{uint32(source), 0, 0}},
	}
	for _, step := range steps {
		if err := s.message(step.kind, step.data...); err != nil {
			t.Fatalf("%s: %v", step.kind, err)
		}
	}
	s.handOver(t, (&url.URL{Scheme: "file", Path: path}).String()+"\r\n")
}

// sourceWindow makes a window that nobody sees, to drop from.
func (s *screen) sourceWindow(t *testing.T) xproto.Window {
	t.Helper()
	id, err := xproto.NewWindowId(s.conn)
	if err != nil {
		t.Fatal(err)
	}
	create := xproto.CreateWindowChecked(s.conn, 0, id, s.root, -10, -10, 1, 1, 0, xproto.WindowClassInputOnly, 0, 0, nil)
	if err := create.Check(); err != nil {
		t.Fatal(err)
	}
	return id
}

// handOver waits until the window asks for what is dropped, gives it, and waits
// until it says that it has it.
func (s *screen) handOver(t *testing.T, data string) {
	t.Helper()
	finished := s.atom("XdndFinished")
	eventually(t, "the window to take what was dropped", func() bool {
		event, err := s.conn.PollForEvent()
		if err != nil {
			t.Fatal(err)
		}
		switch e := event.(type) {
		case xproto.SelectionRequestEvent:
			s.answer(t, e, data)
		case xproto.ClientMessageEvent:
			return e.Type == finished
		}
		return false
	})
}

func (s *screen) answer(t *testing.T, e xproto.SelectionRequestEvent, data string) {
	t.Helper()
	put := xproto.ChangePropertyChecked(s.conn, xproto.PropModeReplace, e.Requestor, e.Property, e.Target, 8, uint32(len(data)), []byte(data))
	if err := put.Check(); err != nil {
		t.Fatal(err)
	}
	told := xproto.SelectionNotifyEvent{Time: e.Time, Requestor: e.Requestor, Selection: e.Selection, Target: e.Target, Property: e.Property}
	if err := xproto.SendEventChecked(s.conn, false, e.Requestor, xproto.EventMaskNoEvent, string(told.Bytes())).Check(); err != nil {
		t.Fatal(err)
	}
}
