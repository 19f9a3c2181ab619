package manuscript

import (
	"fmt"
	"slices"

	"headland/pagemodel"
)

// Source is a manuscript to be read: its name, which tells its kind and is
// named in errors and notices, and its bytes.
type Source struct {
	Name string
	Data []byte
}

// Read reads a manuscript into a collection with that design. The notices say
// what was guessed or could not be kept; the error names the file, the line
// and the remedy.
func Read(name string, data []byte, design pagemodel.Design) (*pagemodel.Collection, []Notice, error) {
	return ReadAll([]Source{{name, data}}, design)
}

// ReadAll reads several manuscripts, in order, into one collection. Its title,
// poet, language, epigraph, and prelims and end matter, are each from the first manuscript that says it.
func ReadAll(sources []Source, design pagemodel.Design) (*pagemodel.Collection, []Notice, error) {
	if len(sources) == 0 {
		return nil, nil, fmt.Errorf("there is no manuscript to read: name at least one")
	}
	opened := make([]*source, len(sources))
	for i, s := range sources {
		m, err := open(s)
		if err != nil {
			return nil, nil, err
		}
		opened[i] = m
	}
	build := pagemodel.NewBuilder(firstSaid(opened), design)
	if err := build.Matter(firstMatter(opened)); err != nil {
		return nil, nil, err
	}
	var notices []Notice
	for _, m := range opened {
		m.build = build
		if err := m.read(); err != nil {
			return nil, nil, err
		}
		notices = append(notices, m.notices...)
	}
	return build.Collection(), notices, nil
}

// source is a manuscript being read.
type source struct {
	name     string
	kind     Kind
	about    pagemodel.About
	matter   pagemodel.Matter
	onKind   pagemodel.MatterKind // the page of the matter that was begun last
	rows     []row                // those not yet read
	sections bool                 // a single # is a section
	poems    int
	above    above // of the poem being read
	build    *pagemodel.Builder
	notices  []Notice
}

// open reads a manuscript's lines and its front matter.
func open(s Source) (*source, error) {
	kind, err := KindOf(s.Name)
	if err != nil {
		return nil, err
	}
	text, notices, err := decode(s.Name, s.Data)
	if err != nil {
		return nil, err
	}
	rows, more, err := splitRows(s.Name, text)
	if err != nil {
		return nil, err
	}
	m := &source{name: s.Name, kind: kind, rows: rows, notices: append(notices, more...)}
	m.readFrontMatter()
	m.sections = m.hasHeading(1) && m.hasHeading(2)
	return m, nil
}

func (m *source) hasHeading(level int) bool {
	return slices.ContainsFunc(m.rows, func(r row) bool {
		l, _ := headingOf(r.text)
		return l == level
	})
}

func (m *source) notice(line int, format string, args ...any) {
	m.notices = append(m.notices, Notice{m.name, line, fmt.Sprintf(format, args...)})
}

// read reads what stands below the front matter.
func (m *source) read() error {
	for m.skipBlank(); len(m.rows) > 0; m.skipBlank() {
		if err := m.entry(); err != nil {
			return err
		}
	}
	if m.poems == 0 {
		return fmt.Errorf("%s holds no poem: write a heading such as “## Title” with its lines below", m.name)
	}
	return nil
}

func (m *source) skipBlank() {
	for len(m.rows) > 0 && m.rows[0].blank() {
		m.rows = m.rows[1:]
	}
}

// entry reads a section's head or a poem.
func (m *source) entry() error {
	first := m.rows[0]
	level, raw := headingOf(first.text)
	var head pagemodel.PoemHead
	switch {
	case level == 1 && m.sections:
		m.rows = m.rows[1:]
		m.section(m.field(raw, first.number))
		return nil
	case level == 1 || level == 2:
		m.rows = m.rows[1:]
		head.Title = m.field(raw, first.number)
		return m.poem(head, true)
	}
	return m.poem(head, false)
}

func (m *source) section(title string) {
	var epigraph []string
	m.rows, epigraph = m.epigraph(m.rows)
	m.build.Section(title, epigraph)
}

// body takes the rows of a poem: up to the next section or poem.
func (m *source) body() []row {
	end := slices.IndexFunc(m.rows, func(r row) bool {
		level, _ := headingOf(r.text)
		return level == 1 || level == 2
	})
	if end < 0 {
		end = len(m.rows)
	}
	body := m.rows[:end]
	m.rows = m.rows[end:]
	return body
}

// field reads a title, an epigraph's line and the like.
func (m *source) field(raw string, line int) string {
	text, styled := readField(raw, m.kind)
	if styled {
		m.notice(line, "the emphasis in “%s” can't be kept: only lines of a poem have italic, bold or small capitals", text)
	}
	return text
}
