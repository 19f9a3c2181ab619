package onscreen

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/jezek/xgb"
	"github.com/jezek/xgb/xproto"
	"github.com/jezek/xgb/xtest"
)

// screen is the hand and the eye at an X server: it moves the pointer, presses
// buttons and keys through the XTEST extension, and reads pixels.
type screen struct {
	conn   *xgb.Conn
	root   xproto.Window
	size   image.Point
	codes  map[xproto.Keysym]xproto.Keycode
	window xproto.Window // of the program
}

// The keys that the tests press, by their X keysyms (X11's keysymdef.h).
const (
	keyEscape = 0xff1b
	keyReturn = 0xff0d
	keyLeft   = 0xff51
	keyRight  = 0xff53
	keyShift  = 0xffe1
	keyCtrl   = 0xffe3
	keyAlt    = 0xffe9
	keyZ      = 'z'
)

// openScreen connects to the screen that .ci/screen has started.
func openScreen(t testing.TB) *screen {
	t.Helper()
	if os.Getenv("HEADLAND_ONSCREEN") == "" {
		t.Fatal("this drives a real window and takes over the screen that it is given: run it with make onscreen or make bench")
	}
	xgb.Logger.SetOutput(io.Discard) // it tells of a missing .Xauthority, which is no trouble here
	conn, err := xgb.NewConn()
	if err != nil {
		t.Fatalf("the screen %q can't be reached: %v", os.Getenv("DISPLAY"), err)
	}
	t.Cleanup(conn.Close)
	if err := xtest.Init(conn); err != nil {
		t.Fatalf("the screen has no XTEST extension: %v", err)
	}
	setup := xproto.Setup(conn)
	root := setup.DefaultScreen(conn)
	s := &screen{conn: conn, root: root.Root, size: image.Pt(int(root.WidthInPixels), int(root.HeightInPixels))}
	s.readKeys(t, setup)
	t.Cleanup(s.release) // a test that fails in mid-drag leaves no button down for the next
	return s
}

// readKeys finds which key bears which sign.
func (s *screen) readKeys(t testing.TB, setup *xproto.SetupInfo) {
	t.Helper()
	n := byte(setup.MaxKeycode - setup.MinKeycode + 1)
	m, err := xproto.GetKeyboardMapping(s.conn, setup.MinKeycode, n).Reply()
	if err != nil {
		t.Fatalf("the keyboard can't be read: %v", err)
	}
	s.codes = map[xproto.Keysym]xproto.Keycode{}
	for i, sym := range m.Keysyms {
		if _, taken := s.codes[sym]; !taken {
			s.codes[sym] = setup.MinKeycode + xproto.Keycode(i/int(m.KeysymsPerKeycode))
		}
	}
}

// fake sends one event as if it came from the mouse or the keyboard.
func (s *screen) fake(kind, detail byte, at image.Point) {
	xtest.FakeInput(s.conn, kind, detail, 0, s.root, int16(at.X), int16(at.Y), 0)
}

func (s *screen) move(at image.Point) { s.fake(xproto.MotionNotify, 0, at); s.sync() }
func (s *screen) press()              { s.fake(xproto.ButtonPress, 1, image.Point{}); s.sync() }
func (s *screen) release()            { s.fake(xproto.ButtonRelease, 1, image.Point{}); s.sync() }

// sync waits until the server has taken what was sent.
func (s *screen) sync() { _, _ = xproto.GetInputFocus(s.conn).Reply() }

// drag takes what is under the hand from one place to another and does not let
// go.
func (s *screen) drag(from, to image.Point) {
	s.move(from)
	s.press()
	for i := 1; i <= 6; i++ {
		s.move(image.Pt(from.X+(to.X-from.X)*i/6, from.Y+(to.Y-from.Y)*i/6))
	}
}

// key presses a key with others held down.
func (s *screen) key(t testing.TB, sym xproto.Keysym, held ...xproto.Keysym) {
	t.Helper()
	for _, h := range held {
		s.keyEvent(t, xproto.KeyPress, h)
	}
	s.keyEvent(t, xproto.KeyPress, sym)
	s.keyEvent(t, xproto.KeyRelease, sym)
	for _, h := range held {
		s.keyEvent(t, xproto.KeyRelease, h)
	}
	s.sync()
	time.Sleep(betweenKeys)
}

// betweenKeys is how long a hand needs between two keys. The toolkit takes two
// presses of one key in the same millisecond for one.
const betweenKeys = 20 * time.Millisecond

func (s *screen) keyEvent(t testing.TB, kind byte, sym xproto.Keysym) {
	t.Helper()
	code, ok := s.codes[sym]
	if !ok {
		t.Fatalf("the keyboard has no key %#x", sym)
	}
	s.fake(kind, byte(code), image.Point{})
}

// findWindow waits for a window of the process, and gives it the keys: there is
// no window manager here to do it.
func (s *screen) findWindow(t testing.TB, pid int) {
	t.Helper()
	eventually(t, "the program's window", func() bool {
		s.window = s.windowOf(pid)
		return s.window != 0
	})
	eventually(t, "the window to take the keys", func() bool {
		return xproto.SetInputFocusChecked(s.conn, xproto.InputFocusPointerRoot, s.window, xproto.TimeCurrentTime).Check() == nil
	})
}

// windowOf is a window on the screen that names the process, or 0.
func (s *screen) windowOf(pid int) xproto.Window {
	tree, err := xproto.QueryTree(s.conn, s.root).Reply()
	if err != nil {
		return 0
	}
	for _, w := range tree.Children {
		reply, err := xproto.GetProperty(s.conn, false, w, s.atom("_NET_WM_PID"), xproto.AtomCardinal, 0, 1).Reply()
		if err != nil || len(reply.Value) < 4 || int(xgb.Get32(reply.Value)) != pid {
			continue
		}
		if a, err := xproto.GetWindowAttributes(s.conn, w).Reply(); err == nil && a.MapState == xproto.MapStateViewable {
			return w
		}
	}
	return 0
}

func (s *screen) atom(name string) xproto.Atom {
	reply, err := xproto.InternAtom(s.conn, false, uint16(len(name)), name).Reply()
	if err != nil {
		return 0
	}
	return reply.Atom
}

// title is the window's.
func (s *screen) title() string {
	reply, err := xproto.GetProperty(s.conn, false, s.window, s.atom("_NET_WM_NAME"), s.atom("UTF8_STRING"), 0, 256).Reply()
	if err != nil {
		return ""
	}
	return string(reply.Value)
}

// message sends the window a client message, as a window manager or another
// program would.
func (s *screen) message(kind string, data ...uint32) error {
	all := make([]uint32, 5)
	copy(all, data)
	event := xproto.ClientMessageEvent{
		Format: 32, Window: s.window, Type: s.atom(kind), Data: xproto.ClientMessageDataUnionData32New(all),
	}
	return xproto.SendEventChecked(s.conn, false, s.window, xproto.EventMaskNoEvent, string(event.Bytes())).Check()
}

// closeWindow asks the program to close its window, as a press on a window's
// close button does.
func (s *screen) closeWindow(t testing.TB) {
	t.Helper()
	if err := s.message("WM_PROTOCOLS", uint32(s.atom("WM_DELETE_WINDOW"))); err != nil {
		t.Fatalf("the window can't be asked to close: %v", err)
	}
}

// pixels are the bytes of a part of the screen, four to a pixel: blue, green,
// red and one unused.
func (s *screen) pixels(r image.Rectangle) ([]byte, error) {
	reply, err := xproto.GetImage(s.conn, xproto.ImageFormatZPixmap, xproto.Drawable(s.root),
		int16(r.Min.X), int16(r.Min.Y), uint16(r.Dx()), uint16(r.Dy()), 0xffffffff).Reply()
	if err != nil {
		return nil, err
	}
	if len(reply.Data) != 4*r.Dx()*r.Dy() {
		return nil, fmt.Errorf("the screen gave %d bytes for %v", len(reply.Data), r)
	}
	return reply.Data, nil
}

// rgba is a pixel as the screen gives it.
func rgba(b []byte) color.RGBA { return color.RGBA{b[2], b[1], b[0], 255} }

// look is a part of the screen as a value to compare.
func (s *screen) look(r image.Rectangle) string {
	data, err := s.pixels(r)
	if err != nil {
		return err.Error()
	}
	return string(data)
}

// settle waits until a part of the screen has not changed for a while.
func (s *screen) settle(t testing.TB, r image.Rectangle) string {
	t.Helper()
	last, same := s.look(r), 0
	eventually(t, "the screen to come to rest", func() bool {
		now := s.look(r)
		if now == last {
			same++
		} else {
			last, same = now, 0
		}
		return same > 40
	})
	return last
}

// keepOnFailure writes the screen to testdata/failed if the test has failed.
func (s *screen) keepOnFailure(t testing.TB) {
	t.Cleanup(func() {
		if !t.Failed() {
			return
		}
		path := filepath.Join("testdata", "failed", filepath.Base(t.Name())+".png")
		if err := s.writePicture(path); err == nil {
			t.Logf("the screen as it was: ui/onscreen/%s", path)
		}
	})
}

// writePicture writes the whole screen as a PNG.
func (s *screen) writePicture(path string) error {
	data, err := s.pixels(image.Rectangle{Max: s.size})
	if err != nil {
		return err
	}
	img := image.NewRGBA(image.Rectangle{Max: s.size})
	for i := 0; i < len(data); i += 4 {
		img.Pix[i], img.Pix[i+1], img.Pix[i+2], img.Pix[i+3] = data[i+2], data[i+1], data[i], 255
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	if err := png.Encode(f, img); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

// patience is how long anything may take before a test gives up on it.
const patience = 20 * time.Second

// eventually waits until something is so.
func eventually(t testing.TB, what string, so func() bool) {
	t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if so() {
			return
		}
	}
	t.Fatalf("waited %v in vain for %s", patience, what)
}
