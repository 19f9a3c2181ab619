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
	script, name, err := c.script(words[1], "script")
	if err != nil {
		return err
	}
	s, err := session.Open(words[0])
	if err != nil {
		return err
	}
	defer closing(s, &err)
	done, err := c.runScript(s, name, script)
	if err != nil {
		return fmt.Errorf("%w. %s", err, doneBefore(done))
	}
	c.out.printf("%s: %s done\n", words[0], counted(done, "edit"))
	return nil
}

// script reads the whole script, or whatever is read as one, before anything is
// done.
func (c *call) script(name, what string) (script []byte, called string, err error) {
	if name == "-" {
		if script, err = io.ReadAll(c.in); err != nil {
			return nil, "", fmt.Errorf("the %s could not be read from the input: %w", what, err)
		}
		return script, "the input", nil
	}
	if script, err = os.ReadFile(name); err != nil {
		return nil, "", fmt.Errorf("the %s could not be read: %w", what, err)
	}
	return script, name, nil
}

// runScript does a script's edits until one can't be done.
func (c *call) runScript(s *session.Session, name string, script []byte) (done int, err error) {
	err = eachLine(script, func(n int, line []byte) error {
		notice, err := runLine(s, line)
		if err != nil {
			return fmt.Errorf("%s, line %d: %w", name, n, err)
		}
		if notice != "" {
			c.errs.printf("%s, line %d: %s\n", name, n, notice)
		}
		done++
		return nil
	})
	return done, err
}

// eachLine gives do a text's lines, numbered from 1, until one can't be done. Lines
// with nothing on them are passed over.
func eachLine(text []byte, do func(n int, line []byte) error) error {
	text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))
	lines := bufio.NewScanner(bytes.NewReader(text))
	lines.Buffer(nil, len(text)+1)
	for n := 1; lines.Scan(); n++ {
		if len(bytes.TrimSpace(lines.Bytes())) == 0 {
			continue
		}
		if err := do(n, lines.Bytes()); err != nil {
			return err
		}
	}
	return lines.Err()
}

// runLine does one line. The notice says what else came of it.
func runLine(s *session.Session, line []byte) (notice string, err error) {
	f, err := readFields(line)
	if err != nil {
		return "", err
	}
	switch f.kind {
	case "undo", "redo":
		if err := f.only(); err != nil {
			return "", err
		}
		if f.kind == "undo" {
			return "", s.Undo()
		}
		return "", s.Redo()
	}
	e, err := f.edit(s)
	if err != nil {
		return "", err
	}
	notice = cameInSince(s.Collection(), e)
	return notice, s.Do(e)
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
