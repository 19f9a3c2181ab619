package command

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"

	"headland/ui/session"
)

// HasDisplay says that a window can be opened: anywhere but where X or Wayland
// would show it, and neither is there.
func HasDisplay() bool {
	switch runtime.GOOS {
	case "windows", "darwin", "ios", "android":
		return true
	}
	return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}

// OpenForWindow opens what a window was asked for with: see [Run]. A manuscript
// is imported beside itself, and what was guessed about it goes to errs. The
// session is nil, without an error, where nothing was named.
func OpenForWindow(args []string, errs io.Writer) (*session.Session, error) {
	if len(args) == 0 {
		return nil, nil
	}
	if doubled(args[0]) == "--demo" {
		return openDemo()
	}
	s, notices, err := session.OpenOrImport(args[0])
	c := &call{errs: &printer{w: errs}}
	c.say(notices)
	return s, err
}

func openDemo() (*session.Session, error) {
	path, err := session.DemoPath()
	if err != nil {
		return nil, err
	}
	return session.Demo(path)
}

// WithoutWindow is what becomes of a window that was asked for where there is no
// display: the demo is set and written out, for anything else it is said what to
// do. It gives the exit status.
func WithoutWindow(args []string, out, errs io.Writer) (status int) {
	c := &call{out: &printer{w: out}, errs: &printer{w: errs}}
	if len(args) == 1 && doubled(args[0]) == "--demo" {
		return c.close(c.demo("out"))
	}
	file := "FILE"
	if len(args) == 1 {
		file = args[0]
	}
	return c.close(noDisplay(file))
}

func noDisplay(file string) error {
	return fmt.Errorf("there is no display to open a window on. Start a desktop, or set DISPLAY; or do without a window: headland report %s, or headland help for what else there is", file)
}

// demo sets the demo collection, reports on it, and writes its spreads into a
// folder, as pictures and as a PDF.
func (c *call) demo(folder string) (err error) {
	c.out.printf("There is no display to open a window on, so the demo is set without one.\n\n")
	s, err := openDemo()
	if err != nil {
		return err
	}
	defer closing(s, &err)
	c.prose(reportOf(s))
	c.out.printf("\nThe collection is kept in %s\n", s.Path())
	if err := s.ExportPNG(folder, usualDPI/float64(pointsPerInch), true, c.progress); err != nil {
		return err
	}
	c.out.printf("The spreads are in %s\n", filepath.Join(folder, "spread-*.png"))
	c.out.printf("Writing the PDF …\n")
	pdf := filepath.Join(folder, "demo.pdf")
	if err := s.ExportPDF(pdf, session.PDFOptions{Spreads: true}, nil); err != nil {
		return err
	}
	c.out.printf("All of them in one file: %s\n", pdf)
	return nil
}

// progress says now and then how far the pictures are.
func (c *call) progress(done, of int) bool {
	const often = 10
	if done%often == 0 || done == of {
		c.out.printf("%d of %d spreads written …\n", done, of)
	}
	return true
}
