package command

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// The fields of this file hold lists.

// list is a field's values, unread.
func (f *fields) list(name, wants string) []json.RawMessage {
	var all []json.RawMessage
	f.take(name, &all, wants)
	return all
}

// poems are the poems of the book that a field names, each by number or title.
func (f *fields) poems(name string, s *session.Session) []pagemodel.PoemID {
	var ids []pagemodel.PoemID
	for _, raw := range f.list(name, "a list of poems, each by its number or its title") {
		one := &fields{kind: name, raw: map[string]json.RawMessage{name: raw}, err: f.err}
		ids = append(ids, one.poem(name, s).id())
		f.err = one.err
	}
	return ids
}

// objects has do read each object of a list, which may have just the fields
// named. What is wrong with one is said with its number in the list.
func (f *fields) objects(name, wants string, names []string, do func(*fields)) {
	for i, raw := range f.list(name, wants) {
		if f.err != nil {
			return
		}
		one := &fields{kind: name}
		if one.read(json.NewDecoder(bytes.NewReader(raw))) != nil {
			one.err = fmt.Errorf("%q must be %s, and holds %s", name, wants, raw)
		} else if one.err = one.only(names...); one.err == nil {
			do(one)
		}
		if one.err != nil {
			f.err = fmt.Errorf("%s %d: %w", strings.TrimSuffix(name, "s"), i+1, one.err)
		}
	}
}
