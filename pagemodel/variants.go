package pagemodel

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"
)

// Variant is another version of a poem, kept beside the one in the book. Its
// lines have the identities that they have there.
type Variant struct {
	Name string
	On   string // the day on which it was kept, ISO 8601
	Poem *Poem
}

// versions are all versions of one poem but the one in the book.
type versions struct {
	current string // what the one in the book is called; "" where it has no name
	kept    []Variant
}

// Variants are the versions kept beside a poem of the book, in the order in which
// they were kept. Not to be changed.
func (c *Collection) Variants(id PoemID) []Variant { return c.versions[id].kept }

// VariantName is what the version in the book is called; "" where it was given no
// name.
func (c *Collection) VariantName(id PoemID) string { return c.versions[id].current }

// variant is the index of a variant by its name.
func (v versions) variant(poem *Poem, name string) (int, error) {
	var names []string
	for i, kept := range v.kept {
		if strings.EqualFold(kept.Name, strings.TrimSpace(name)) {
			return i, nil
		}
		names = append(names, "“"+kept.Name+"”")
	}
	if len(names) == 0 {
		return 0, fmt.Errorf("no variant is kept beside %s: keep one first", poem.Name())
	}
	return 0, fmt.Errorf("no variant of %s is called %q: it is one of %s", poem.Name(), name, strings.Join(names, ", "))
}

// free says why a name can't be a variant's, or nil.
func (v versions) free(name string) error {
	taken := func(k Variant) bool { return strings.EqualFold(k.Name, name) }
	if n := utf8.RuneCountInString(name); n == 0 || n > longestName {
		return fmt.Errorf("a variant needs a name of 1 to %d characters, not %d: write a word or two", longestName, n)
	}
	if strings.EqualFold(v.current, name) || slices.ContainsFunc(v.kept, taken) {
		return fmt.Errorf("there is a version called %q already: give this one another name", name)
	}
	return nil
}

// unused is the name, with a number behind it where it is taken.
func (v versions) unused(name string) string {
	for n, try := 2, name; ; n++ {
		if v.free(try) == nil {
			return try
		}
		try = fmt.Sprintf("%s %d", name, n)
	}
}

// editVersions is the collection with the versions of a poem changed. What change
// is given is a copy; it may put another version into the book.
func (c *Collection) editVersions(id PoemID, change func(p *Poem, v *versions) (*Poem, error)) (*Collection, error) {
	p, _, ok := c.Poem(id)
	if !ok {
		return nil, fmt.Errorf("that poem is no longer in the book")
	}
	v := c.versions[id]
	v.kept = slices.Clone(v.kept)
	next, err := change(p, &v)
	if err != nil {
		return nil, err
	}
	d := c
	if next != p {
		d = c.withPoem(next)
	}
	return d.with(func(d *Collection) {
		d.versions = maps.Clone(c.versions)
		if d.versions == nil {
			d.versions = map[PoemID]versions{}
		}
		d.versions[id] = v
		if v.current == "" && len(v.kept) == 0 {
			delete(d.versions, id)
		}
	}), nil
}

// KeepVariant keeps a poem, as it stands, under a name beside the one in the book,
// which goes on as it is.
type KeepVariant struct {
	Poem PoemID `json:"poem"`
	Name string `json:"name"`
	On   string `json:"on,omitempty"` // the day, ISO 8601
}

// Kind is "keep-variant".
func (KeepVariant) Kind() string { return "keep-variant" }

// Label names it.
func (e KeepVariant) Label() string { return "keep the variant " + e.Name }

// OnDay is the variant kept on that day.
func (e KeepVariant) OnDay(day string) Edit { e.On = day; return e }

// Apply keeps it.
func (e KeepVariant) Apply(c *Collection) (*Collection, error) {
	return c.editVersions(e.Poem, func(p *Poem, v *versions) (*Poem, error) {
		name := strings.TrimSpace(e.Name)
		if err := v.free(name); err != nil {
			return nil, err
		}
		v.kept = append(v.kept, Variant{name, e.On, p})
		return p, nil
	})
}

// UseVariant puts a variant into the book in place of the version there, which is
// kept in its turn, under its own name or, where it has none, as "as it stood".
type UseVariant struct {
	Poem PoemID `json:"poem"`
	Name string `json:"name"`
	On   string `json:"on,omitempty"` // the day, ISO 8601
}

// Kind is "use-variant".
func (UseVariant) Kind() string { return "use-variant" }

// Label names it.
func (e UseVariant) Label() string { return "use the variant " + e.Name }

// OnDay is the exchange on that day.
func (e UseVariant) OnDay(day string) Edit { e.On = day; return e }

// Apply exchanges the two.
func (e UseVariant) Apply(c *Collection) (*Collection, error) {
	return c.editVersions(e.Poem, func(p *Poem, v *versions) (*Poem, error) {
		i, err := v.variant(p, e.Name)
		if err != nil {
			return nil, err
		}
		taken, was := v.kept[i], v.current
		if was == "" {
			was = v.unused("as it stood")
		}
		v.current, v.kept[i] = taken.Name, Variant{was, e.On, p}
		return taken.Poem, nil
	})
}

// NameVariant gives a version of a poem another name; From "" is the one in the
// book.
type NameVariant struct {
	Poem PoemID `json:"poem"`
	From string `json:"from,omitempty"`
	To   string `json:"to"`
}

// Kind is "name-variant".
func (NameVariant) Kind() string { return "name-variant" }

// Label names it.
func (e NameVariant) Label() string { return "call a variant " + e.To }

// Apply names it.
func (e NameVariant) Apply(c *Collection) (*Collection, error) {
	return c.editVersions(e.Poem, func(p *Poem, v *versions) (*Poem, error) {
		to := strings.TrimSpace(e.To)
		if err := v.free(to); err != nil {
			return nil, err
		}
		if e.From == "" || strings.EqualFold(e.From, v.current) {
			v.current = to
			return p, nil
		}
		i, err := v.variant(p, e.From)
		if err == nil {
			v.kept[i].Name = to
		}
		return p, err
	})
}

// DropVariant throws a kept variant away. Its states stay in the file's history.
type DropVariant struct {
	Poem PoemID `json:"poem"`
	Name string `json:"name"`
}

// Kind is "drop-variant".
func (DropVariant) Kind() string { return "drop-variant" }

// Label names it.
func (e DropVariant) Label() string { return "drop the variant " + e.Name }

// Apply drops it.
func (e DropVariant) Apply(c *Collection) (*Collection, error) {
	return c.editVersions(e.Poem, func(p *Poem, v *versions) (*Poem, error) {
		i, err := v.variant(p, e.Name)
		if err == nil {
			v.kept = slices.Delete(v.kept, i, i+1)
		}
		return p, err
	})
}

// BringBack gives a poem of the book an earlier state of it again, as the file's
// history has it.
type BringBack struct {
	Poem  *Poem `json:"-"`
	State int64 `json:"state"` // the edit that made it so
}

// Kind is "bring-back".
func (BringBack) Kind() string { return "bring-back" }

// Label says what it does.
func (BringBack) Label() string { return "bring back an earlier state" }

// Apply brings it back.
func (e BringBack) Apply(c *Collection) (*Collection, error) {
	now, _, ok := c.Poem(e.Poem.id)
	if !ok {
		return nil, fmt.Errorf("that poem is no longer in the book")
	}
	if now == e.Poem || string(encodePoem(now)) == string(encodePoem(e.Poem)) {
		return c, nil
	}
	return c.withPoem(e.Poem), nil
}
