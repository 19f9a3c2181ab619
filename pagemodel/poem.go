package pagemodel

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
)

// PoemID names a poem for as long as the file lives.
type PoemID int64

// StanzaKind says how a stanza's lines are meant.
type StanzaKind int

// A stanza is verse, whose lines are the poet's, or prose, whose one line is a
// paragraph that the setting may fill as it likes.
const (
	Verse StanzaKind = iota
	Prose
)

// Stanza is a group of lines with white before and after it.
type Stanza struct {
	kind  StanzaKind
	lines []Line
}

// NewStanza groups lines. It keeps the slice.
func NewStanza(kind StanzaKind, lines []Line) Stanza { return Stanza{kind, lines} }

// Kind says whether the stanza is verse or prose.
func (s Stanza) Kind() StanzaKind { return s.kind }

// Lines are the stanza's lines. Not to be changed.
func (s Stanza) Lines() []Line { return s.lines }

// Part is a numbered, titled or starred division of a poem. A poem without
// divisions has one part with no heading.
type Part struct {
	heading string
	stanzas []Stanza
}

// NewPart is a part with that heading ("" for none). It keeps the slice.
func NewPart(heading string, stanzas []Stanza) Part { return Part{heading, stanzas} }

// Heading is the part's number, title or star, as written; "" for none.
func (p Part) Heading() string { return p.heading }

// Stanzas are the part's stanzas. Not to be changed.
func (p Part) Stanzas() []Stanza { return p.stanzas }

// Start is how a poem may begin.
type Start int

// The starts of a poem.
const (
	FreshPage Start = iota // the usual one
	OnVerso
	OnRecto
	SharedPage // below the poem before it, where there is room
	FacingPage // facing the poem before it, line level with line: a translation
)

var startNames = [...]string{
	FreshPage: "fresh page", OnVerso: "verso", OnRecto: "recto", SharedPage: "shared page", FacingPage: "facing",
}

// String is the start in words.
func (s Start) String() string { return nameOf(startNames[:], int(s)) }

// ParseStart reads a start by its words.
func ParseStart(s string) (Start, error) {
	n, err := indexOf(startNames[:], "start", s)
	return Start(n), err
}

// PoemHead is what stands about a poem's lines: every field may be empty.
type PoemHead struct {
	Title      string   `json:"title,omitempty"`
	Short      string   `json:"short,omitempty"` // for contents and running heads; "" is the title
	Subtitle   string   `json:"subtitle,omitempty"`
	Dedication string   `json:"dedication,omitempty"`
	Epigraph   []string `json:"epigraph,omitempty"` // line by line, the source last
	Place      string   `json:"place,omitempty"`    // closing place or date
	Note       string   `json:"note,omitempty"`     // for the notes at the end
	Form       Form     `json:"form,omitempty"`     // couplets, tercets …: declared by the poet
	Start      Start    `json:"start,omitempty"`
	Blank      bool     `json:"blank,omitempty"` // a blank page before the poem
	Run        int      `json:"run,omitempty"`   // lines that its pages run long, or short where it is negative
	Size       Length   `json:"size,omitempty"`  // of its own; 0 is the design's
	Edge       Edge     `json:"edge,omitempty"`  // of its own; EdgeOfBook is the design's
	Lie        Lie      `json:"lie,omitempty"`
}

// Poem is a poem. It never changes once made.
type Poem struct {
	id    PoemID
	head  PoemHead
	parts []Part
	key   [sha256.Size]byte
	lines int
}

// NewPoem is a poem of those parts. It keeps the slices.
func NewPoem(id PoemID, head PoemHead, parts []Part) *Poem {
	p := &Poem{id: id, head: head, parts: parts}
	for _, part := range parts {
		for _, s := range part.stanzas {
			p.lines += len(s.lines)
		}
	}
	p.key = p.contentKey()
	return p
}

// ID is the poem's lasting identity.
func (p *Poem) ID() PoemID { return p.id }

// Head is what stands about the poem's lines.
func (p *Poem) Head() PoemHead { return p.head }

// Parts are the poem's parts, at least one. Not to be changed.
func (p *Poem) Parts() []Part { return p.parts }

// LineCount is how many of the poet's lines the poem has.
func (p *Poem) LineCount() int { return p.lines }

// Key is a hash of everything that the setting of the poem, and what is
// reported of it, depends on: equal keys are set alike. Reasons, notes and
// where a line came from are no part of it.
func (p *Poem) Key() [sha256.Size]byte { return p.key }

// Name is what the poem is known by: its title, or its first line in quotation
// marks where it has none.
func (p *Poem) Name() string {
	if p.head.Title != "" {
		return p.head.Title
	}
	for at, l := range p.Lines() {
		if l.text != "" {
			return "“" + openingOf(l.text, p.Stanza(at).kind) + "”"
		}
	}
	return "(an empty poem)"
}

// openingWords is how many words of a paragraph stand for it where a line of
// verse would stand whole.
const openingWords = 8

// openingOf is a poem's first line as a name: without the point or comma that
// ends it, and of a paragraph only the first words.
func openingOf(text string, kind StanzaKind) string {
	if words := Words(text); kind == Prose && len(words) > openingWords {
		return strings.TrimRight(text[:words[openingWords-1].End], ",;:—– ") + " …"
	}
	return strings.TrimRight(text, ",;:—– ")
}

// ShortName is the name for contents and running heads.
func (p *Poem) ShortName() string {
	if p.head.Short != "" {
		return p.head.Short
	}
	return p.Name()
}

// Place is where a line stands in a poem, each index from 0.
type Place struct {
	Part, Stanza, Line int // Stanza within its part, Line within its stanza
}

// Lines goes over all lines of the poem in order.
func (p *Poem) Lines() func(yield func(Place, Line) bool) {
	return func(yield func(Place, Line) bool) {
		for i, part := range p.parts {
			for j, s := range part.stanzas {
				for k, l := range s.lines {
					if !yield(Place{i, j, k}, l) {
						return
					}
				}
			}
		}
	}
}

// Find is where the line stands, or false.
func (p *Poem) Find(id LineID) (Place, bool) {
	for at, l := range p.Lines() {
		if l.id == id {
			return at, true
		}
	}
	return Place{}, false
}

// Stanza is the stanza at a place.
func (p *Poem) Stanza(at Place) Stanza { return p.parts[at.Part].stanzas[at.Stanza] }

// Line is the line at a place.
func (p *Poem) Line(at Place) Line { return p.Stanza(at).lines[at.Line] }

// StanzaNumber is the number of a place's stanza in the whole poem, from 1.
func (p *Poem) StanzaNumber(at Place) int {
	n := at.Stanza + 1
	for _, part := range p.parts[:at.Part] {
		n += len(part.stanzas)
	}
	return n
}

// At is the place of a line by numbers from 1, the stanzas counted through the
// whole poem. The error says how far the poem goes.
func (p *Poem) At(stanza, line int) (Place, error) {
	n := 0
	for i, part := range p.parts {
		for j, s := range part.stanzas {
			if n++; n != stanza {
				continue
			}
			if line < 1 || line > len(s.lines) {
				return Place{}, fmt.Errorf("stanza %d of %s has %d lines; there is no line %d", stanza, p.Name(), len(s.lines), line)
			}
			return Place{i, j, line - 1}, nil
		}
	}
	return Place{}, fmt.Errorf("%s has %d stanzas; there is no stanza %d", p.Name(), n, stanza)
}

// withHead is the poem under another head.
func (p *Poem) withHead(h PoemHead) *Poem { return NewPoem(p.id, h, p.parts) }

// withLines is the poem with the stanza at a place given other lines.
func (p *Poem) withLines(at Place, lines []Line) *Poem {
	return p.withStanzas(at.Part, at.Stanza, 1, Stanza{p.Stanza(at).kind, lines})
}

// withStanzas is the poem with n stanzas of a part, from first, replaced.
func (p *Poem) withStanzas(part, first, n int, stanzas ...Stanza) *Poem {
	parts := slices.Clone(p.parts)
	old := parts[part].stanzas
	parts[part].stanzas = slices.Concat(old[:first], stanzas, old[first+n:])
	return NewPoem(p.id, p.head, parts)
}
