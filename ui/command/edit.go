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

const editMore = `SCRIPT is a file, or - for what is typed or piped in. Each line is one JSON
object, one edit and one step of the history. It stops at the first that can't be
done, and says which; those before it stay done. "poem" is a poem's number, or
its title where only one has it; "#7" is always the number. Stanzas are counted
through the poem, lines through the stanza, words through the line, all from 1.

  {"edit":"break","poem":P,"stanza":2,"line":3,"after":5}
      ends the line after its fifth word ("at":17: after 17 characters);
      "in":"edition" breaks it in this book only
  {"edit":"join","poem":P,"stanza":2,"line":3}
      runs the next line on; with "in":"edition" takes this edition's breaks back
  {"edit":"words","poem":P,"stanza":2,"line":3,"count":1}
      carries a word down over the line's end; -1 draws one up
  {"edit":"keep","poem":P,"stanza":2,"line":3,"turn_after":6,"reason":"a breath"}
      lets the line turn, there and for that reason if said
  {"edit":"unsettle","poem":P,"stanza":2,"line":3}
  {"edit":"indent","poem":P,"stanza":2,"line":3,"em":1.5}
  {"edit":"gap","poem":P,"stanza":2,"line":3,"after":4,"em":2}
  {"edit":"text","poem":P,"stanza":2,"line":3,"text":"the line, retyped"}
  {"edit":"stanza","poem":P,"stanza":2,"line":3,"open":true}
      opens a stanza break after the line; false closes the one that is there
  {"edit":"move","poem":P,"before":Q}
      moves a poem before another; to the end of the book without "before"
  {"edit":"design","trim_mm":[129,198],"margins_mm":{"inner":16},"size_pt":11}
      any of the values that report --json gives under "design"
  {"edit":"design","trim":"Demy octavo","margins":"canon"}
      a trim by its name; margins by the canon, or, with "binding", the inner
      one that the binding and the extent ask for
  {"edit":"undo"}, {"edit":"redo"}
`

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
