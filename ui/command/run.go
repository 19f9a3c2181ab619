package command

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Version is the program's, as FyneApp.toml has it too.
const Version = "0.1.0"

// The exit statuses.
const (
	Done      = 0 // it was done
	Forbidden = 1 // done, and something was found that --strict forbids
	Misuse    = 2 // there is no such verb, flag or field of the command line
	CouldNot  = 3 // it could not be done
)

// Run does what the command line asks for, and gives the exit status. handled
// is false where it asks for a window: no arguments, a file, or --demo. args are
// without the program's name; in is what a script may be read from; out gets
// what was asked for, errs what went wrong.
func Run(args []string, in io.Reader, out, errs io.Writer) (status int, handled bool) {
	if forWindow(args) {
		return Done, false
	}
	c := &call{in: in, out: &printer{w: out}, errs: &printer{w: errs}}
	err := c.dispatch(args[0], args[1:])
	if err == nil && c.out.err != nil {
		err = fmt.Errorf("what was done could not be printed: %w", c.out.err)
	}
	return c.close(err), true
}

// forWindow says that the arguments ask for a window.
func forWindow(args []string) bool {
	switch {
	case len(args) == 0:
		return true
	case len(args) > 1:
		return false
	case args[0] == "--demo" || args[0] == "-demo":
		return true
	}
	return looksLikeFile(args[0])
}

// looksLikeFile tells a file's name from a verb: it has a dot or a folder in it.
func looksLikeFile(arg string) bool {
	if strings.HasPrefix(arg, "-") || isVerb(arg) {
		return false
	}
	return strings.ContainsAny(arg, `./\`)
}

func isVerb(name string) bool {
	return slices.ContainsFunc(verbs(), func(v verb) bool { return v.name == name })
}

// dispatch finds the verb and does it.
func (c *call) dispatch(name string, args []string) error {
	switch name {
	case "--version", "-version":
		c.out.printf("headland %s\n", Version)
		return nil
	case "--help", "-help", "-h":
		return c.help(args)
	}
	for _, v := range verbs() {
		if v.name == name {
			return c.do(v, args)
		}
	}
	switch {
	case doubled(name) == "--demo":
		return misuse("--demo stands alone: nothing can follow it, and %q does", strings.Join(args, " "))
	case strings.HasPrefix(name, "-"):
		return misuse("there is no flag %s: write headland help for what there is", doubled(name))
	case looksLikeFile(name):
		return misuse("headland opens one file at a time: %s has %q after it", name, strings.Join(args, " "))
	}
	return misuse("there is no verb %q: it is one of %s", name, verbNames())
}

// call is one use of the command line.
type call struct {
	in        io.Reader
	out, errs *printer
	found     bool // something that --strict forbids
}

// close says what went wrong, if anything, and gives the exit status.
func (c *call) close(err error) int {
	var wrong *misuseError
	switch {
	case err == nil && c.found:
		return Forbidden
	case err == nil:
		return Done
	}
	c.errs.printf("headland: %v\n", err)
	if errors.As(err, &wrong) {
		return Misuse
	}
	return CouldNot
}

// misuseError says that the command line itself is wrong.
type misuseError struct{ words string }

func (e *misuseError) Error() string { return e.words }

func misuse(format string, args ...any) error {
	return &misuseError{fmt.Sprintf(format, args...)}
}

// printer prints and remembers the first error, which is looked at once, at the
// end.
type printer struct {
	w   io.Writer
	err error
}

func (p *printer) printf(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, args...)
	}
}

// Write prints bytes.
func (p *printer) Write(b []byte) (int, error) {
	if p.err != nil {
		return 0, p.err
	}
	var n int
	n, p.err = p.w.Write(b)
	return n, p.err
}

// counted is a number with its noun: "1 poem", "3 poems".
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// json prints a value for other programs.
func (c *call) json(v any) error {
	encoder := json.NewEncoder(c.out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(v)
}
