package command

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
)

// fields are the names and values of one line of a script. The first thing that
// is wrong with them is kept in err, so that a maker of an edit can ask for all
// that it needs and look once.
type fields struct {
	kind string
	raw  map[string]json.RawMessage
	err  error
}

// readFields reads a line of a script.
func readFields(line []byte) (*fields, error) {
	f := &fields{}
	decoder := json.NewDecoder(bytes.NewReader(line))
	if err := f.read(decoder); err != nil {
		return nil, err
	}
	if decoder.More() {
		return nil, fmt.Errorf("there is something after the edit: write each on a line of its own")
	}
	kind, ok := f.raw["edit"]
	if !ok || json.Unmarshal(kind, &f.kind) != nil {
		return nil, errNoEdit
	}
	return f, nil
}

// read takes an object apart by hand, as package json would let a name stand
// twice.
func (f *fields) read(decoder *json.Decoder) error {
	open, err := decoder.Token()
	if err != nil || open != json.Delim('{') {
		return notAnObject(err)
	}
	f.raw = map[string]json.RawMessage{}
	for decoder.More() {
		name, err := decoder.Token()
		if err != nil {
			return notAnObject(err)
		}
		var value json.RawMessage
		if err := decoder.Decode(&value); err != nil {
			return notAnObject(err)
		}
		if _, twice := f.raw[name.(string)]; twice {
			return fmt.Errorf("%q stands there twice", name)
		}
		f.raw[name.(string)] = value
	}
	_, err = decoder.Token()
	if err != nil {
		return notAnObject(err)
	}
	return nil
}

func notAnObject(err error) error {
	if err == nil {
		return errNoEdit
	}
	return fmt.Errorf("that is no JSON object: %w", err)
}

// only refuses every field but those named.
func (f *fields) only(names ...string) error {
	var extra []string
	for name := range f.raw {
		if name != "edit" && !slices.Contains(names, name) {
			extra = append(extra, name)
		}
	}
	if len(extra) == 0 {
		return nil
	}
	slices.Sort(extra)
	if len(names) == 0 {
		return fmt.Errorf("%q takes no field %q", f.kind, extra[0])
	}
	return fmt.Errorf("%q takes no field %q: it takes %s", f.kind, extra[0], strings.Join(names, ", "))
}

func (f *fields) has(name string) bool { _, ok := f.raw[name]; return ok }

// take reads a field into value, which stays as it is where there is no such
// field. wants says in words what it should be.
func (f *fields) take(name string, value any, wants string) {
	raw, ok := f.raw[name]
	if !ok || f.err != nil {
		return
	}
	if string(raw) == "null" || json.Unmarshal(raw, value) != nil {
		f.err = fmt.Errorf("%q must be %s, and is %s", name, wants, raw)
	}
}

// need says that a field is missing, if it is.
func (f *fields) need(name string) {
	if !f.has(name) && f.err == nil {
		f.err = fmt.Errorf("%q needs %q", f.kind, name)
	}
}

func (f *fields) integer(name string) (n int) {
	f.take(name, &n, "a whole number")
	return n
}

// number is a number of a size that anything on a page can have.
func (f *fields) number(name string) (v float64) {
	f.take(name, &v, "a number")
	if math.Abs(v) > 10000 && f.err == nil {
		f.err = fmt.Errorf("%q is %g: that is too much", name, v)
	}
	return v
}

func (f *fields) text(name string) (s string) {
	f.take(name, &s, "words in quotation marks")
	return s
}

func (f *fields) yes(name string) (yes bool) {
	f.take(name, &yes, "true or false")
	return yes
}
