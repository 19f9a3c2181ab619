package pagemodel

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
)

// What is kept beside the text: rounds, replies, variants, how words are said,
// running orders, the voice, orders of the book and echoes. A
// file holds such a thing only where there is one, so files from before it was
// known are read as having none.

var beside = map[string]bool{
	kindRounds: true, kindReplies: true, kindSpoken: true, kindVariants: true,
	kindReadings: true, kindVoice: true, kindOrders: true, kindEchoes: true,
}

// besides compares what is kept beside the text. What the two share costs a
// comparison of pointers.
func (d *differ) besides(old, new *Collection) {
	if !sharedSlice(old.rounds, new.rounds) {
		d.optional(kindRounds, "", encodeSome(old.rounds), encodeSome(new.rounds))
	}
	if !sharedSlice(old.replies, new.replies) {
		d.optional(kindReplies, "", encodeSome(old.replies), encodeSome(new.replies))
	}
	if !maps.Equal(old.spoken, new.spoken) {
		d.optional(kindSpoken, "", encodeSpoken(old.spoken), encodeSpoken(new.spoken))
	}
	if !sharedSlice(old.readings, new.readings) {
		d.optional(kindReadings, "", encodeSome(old.readings), encodeSome(new.readings))
	}
	if old.voice != new.voice {
		d.optional(kindVoice, "", encodeVoice(old.voice), encodeVoice(new.voice))
	}
	if !sharedSlice(old.orders, new.orders) {
		d.optional(kindOrders, "", encodeSome(old.orders), encodeSome(new.orders))
	}
	if !sharedSlice(old.echoes, new.echoes) {
		d.optional(kindEchoes, "", encodeSome(old.echoes), encodeSome(new.echoes))
	}
	for _, id := range poemsWithVersions(old, new) {
		if a, b := old.versions[id], new.versions[id]; !a.same(b) {
			d.optional(kindVariants, strconv.FormatInt(int64(id), 10), a.encode(), b.encode())
		}
	}
}

func (d *differ) optional(kind, key string, old, new []byte) {
	if string(old) != string(new) {
		d.changes = append(d.changes, Change{kind, key, old, new})
	}
}

// sharedSlice says that two slices are one.
func sharedSlice[T any](a, b []T) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

func encodeSome[T any](s []T) []byte {
	if len(s) == 0 {
		return nil
	}
	return encode(s)
}

func encodeSpoken(m map[string]string) []byte {
	if len(m) == 0 {
		return nil
	}
	return encode(m)
}

func encodeVoice(v Voice) []byte {
	if v == (Voice{}) {
		return nil
	}
	return encode(v)
}

func poemsWithVersions(old, new *Collection) []PoemID {
	ids := slices.AppendSeq(slices.Collect(maps.Keys(old.versions)), maps.Keys(new.versions))
	slices.Sort(ids)
	return slices.Compact(ids)
}

// versionsBody is how the versions of a poem are written in a file.
type versionsBody struct {
	Current string        `json:"current,omitempty"`
	Kept    []variantBody `json:"kept,omitempty"`
}

type variantBody struct {
	Name string          `json:"name"`
	On   string          `json:"on,omitempty"`
	Poem json.RawMessage `json:"poem"`
}

func (v versions) same(other versions) bool {
	return v.current == other.current && slices.Equal(v.kept, other.kept)
}

func (v versions) encode() []byte {
	if v.current == "" && len(v.kept) == 0 {
		return nil
	}
	body := versionsBody{Current: v.current}
	for _, k := range v.kept {
		body.Kept = append(body.Kept, variantBody{k.Name, k.On, encodePoem(k.Poem)})
	}
	return encode(body)
}

func decodeVersions(b []byte) (versions, error) {
	var body versionsBody
	if err := json.Unmarshal(b, &body); err != nil {
		return versions{}, err
	}
	v := versions{current: body.Current}
	for _, k := range body.Kept {
		p, err := decodePoem(k.Poem)
		if err != nil {
			return versions{}, fmt.Errorf("the variant %q: %w", k.Name, err)
		}
		v.kept = append(v.kept, Variant{k.Name, k.On, p})
	}
	return v, nil
}

// takeBeside reads something kept beside the text; no bytes are nothing kept.
func (c *Collection) takeBeside(ch Change) error {
	if !beside[ch.Kind] {
		return fmt.Errorf("this version knows no such thing")
	}
	if ch.Kind == kindVariants {
		return c.takeVersions(ch)
	}
	body := ch.New
	if body == nil {
		body = []byte("null")
	}
	switch ch.Kind {
	case kindRounds:
		return decodeInto(body, &c.rounds)
	case kindReplies:
		return decodeInto(body, &c.replies)
	case kindReadings:
		return decodeInto(body, &c.readings)
	case kindVoice:
		return decodeInto(body, &c.voice)
	case kindOrders:
		return decodeInto(body, &c.orders)
	case kindEchoes:
		return decodeInto(body, &c.echoes)
	}
	return decodeInto(body, &c.spoken)
}

// decodeInto reads bytes into a value of its own, which nothing shares.
func decodeInto[T any](body []byte, into *T) error {
	var value T
	err := json.Unmarshal(body, &value)
	*into = value
	return err
}

func (c *Collection) takeVersions(ch Change) error {
	id, err := strconv.ParseInt(ch.Key, 10, 64)
	if err != nil {
		return err
	}
	c.versions = maps.Clone(c.versions)
	if ch.New == nil {
		delete(c.versions, PoemID(id))
		return nil
	}
	if c.versions == nil {
		c.versions = map[PoemID]versions{}
	}
	c.versions[PoemID(id)], err = decodeVersions(ch.New)
	return err
}
