package command

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"

	"headland/ui/session"
)

func runEdit(c *call, _ any, words []string) (err error) {
	if len(words) != 2 {
		return misuse("edit: name the collection's file and the script, or - to read the script from the input")
	}
	script, name, err := c.script(words[1])
	if err != nil {
		return err
	}
	s, err := session.Open(words[0])
	if err != nil {
		return err
	}
	defer closing(s, &err)
	done, err := runScript(s, name, script)
	if err != nil {
		return fmt.Errorf("%w. %s", err, doneBefore(done))
	}
	c.out.printf("%s: %s done\n", words[0], counted(done, "edit"))
	return nil
}

// script reads the whole script before anything is done.
func (c *call) script(name string) (script []byte, called string, err error) {
	if name == "-" {
		if script, err = io.ReadAll(c.in); err != nil {
			return nil, "", fmt.Errorf("the script could not be read from the input: %w", err)
		}
		return script, "the input", nil
	}
	if script, err = os.ReadFile(name); err != nil {
		return nil, "", fmt.Errorf("the script could not be read: %w", err)
	}
	return script, name, nil
}

// runScript does a script's edits until one can't be done. Lines with nothing on
// them are passed over.
func runScript(s *session.Session, name string, script []byte) (done int, err error) {
	script = bytes.TrimPrefix(script, []byte("\xef\xbb\xbf"))
	lines := bufio.NewScanner(bytes.NewReader(script))
	lines.Buffer(nil, len(script)+1)
	for n := 1; lines.Scan(); n++ {
		if len(bytes.TrimSpace(lines.Bytes())) == 0 {
			continue
		}
		if err := runLine(s, lines.Bytes()); err != nil {
			return done, fmt.Errorf("%s, line %d: %w", name, n, err)
		}
		done++
	}
	return done, lines.Err()
}

func runLine(s *session.Session, line []byte) error {
	f, err := readFields(line)
	if err != nil {
		return err
	}
	switch f.kind {
	case "undo", "redo":
		if err := f.only(); err != nil {
			return err
		}
		if f.kind == "undo" {
			return s.Undo()
		}
		return s.Redo()
	}
	e, err := f.edit(s)
	if err != nil {
		return err
	}
	return s.Do(e)
}

func doneBefore(done int) string {
	switch done {
	case 0:
		return "Nothing was done"
	case 1:
		return "The edit before it is done"
	}
	return fmt.Sprintf("The %d edits before it are done", done)
}

var errNoEdit = errors.New(`every line of a script says what it does, as in {"edit":"undo"}`)
