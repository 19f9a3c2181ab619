package pagemodel

import (
	"fmt"
	"slices"
	"strings"
)

// Echo is something that the poet marks to see where in the book it comes back: a
// word, an image, a form.
type Echo struct {
	Name  string    `json:"name"`
	Words []string  `json:"words,omitempty"` // in whatever form they stand: "oven" is also "ovens"
	Lines []LineRef `json:"lines,omitempty"` // marked by hand
	Poems []PoemID  `json:"poems,omitempty"` // likewise
}

// Echoes are what the poet has marked, in the order in which it was marked. Not to
// be changed.
func (c *Collection) Echoes() []Echo { return c.echoes }

// SetEcho marks something, in place of what was marked under that name; nothing
// marked takes it away.
type SetEcho struct {
	Echo Echo `json:"echo"`
}

// Kind is "echo".
func (SetEcho) Kind() string { return "echo" }

// Label names it.
func (e SetEcho) Label() string { return "mark the echo " + e.Echo.Name }

// Apply marks it.
func (e SetEcho) Apply(c *Collection) (*Collection, error) {
	e.Echo.Name = strings.Join(strings.Fields(e.Echo.Name), " ")
	if e.Echo.Name == "" {
		return nil, fmt.Errorf("an echo needs a name: write the word, or what it is")
	}
	i := slices.IndexFunc(c.echoes, func(o Echo) bool { return strings.EqualFold(o.Name, e.Echo.Name) })
	none := len(e.Echo.Words)+len(e.Echo.Lines)+len(e.Echo.Poems) == 0
	echoes := slices.Clone(c.echoes)
	switch {
	case none && i < 0, i >= 0 && string(encode(echoes[i])) == string(encode(e.Echo)):
		return c, nil
	case none:
		echoes = slices.Delete(echoes, i, i+1)
	case i < 0:
		echoes = append(echoes, e.Echo)
	default:
		echoes[i] = e.Echo
	}
	return c.with(func(d *Collection) { d.echoes = emptyIsNil(echoes) }), nil
}
