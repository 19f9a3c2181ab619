package difference

// Matter is the words that are to be put in, or to stand instead, exactly, a string
// for each printed line and an empty one between stanzas; none where the words stay
// as they are. Of a new poem or section they are its title and its lines.
func (c *Change) Matter() []string {
	switch op := c.op.(type) {
	case replacing:
		if len(op.with) > 0 && (c.Kind == Insert || c.Kind == Substitute || c.Kind == Transpose) {
			return linesOfAtoms(op.with)
		}
	case placing:
		if op.entry != nil {
			return op.entry.matter()
		}
	}
	return nil
}

func linesOfAtoms(atoms []atom) []string {
	lines := []string{""}
	for i := range atoms {
		a := &atoms[i]
		switch last := len(lines) - 1; {
		case a.isWord:
			lines[last] += a.word.text
		case a.boundary.level > within && i > 0 && i+1 < len(atoms):
			lines = append(lines, make([]string, a.boundary.linesDown())...)
		case a.boundary.level == within && lines[last] != "":
			lines[last] += a.boundary.lead
		}
	}
	return lines
}

// linesDown is how many lines a boundary goes down.
func (b *boundary) linesDown() int {
	if b.level == lineEnd {
		return 1
	}
	return 2
}

func (e *entry) matter() []string {
	var lines []string
	if !blank(e.fields[0]) {
		lines = append(lines, said(e.fields[0]))
	}
	if len(e.lines) == 0 {
		return lines
	}
	atoms := make([]atom, 0, 2*len(e.lines))
	for _, t := range e.lines {
		atoms = append(atoms, atom{boundary: t.boundary}, atom{isWord: true, word: t.word})
	}
	if len(lines) > 0 {
		lines = append(lines, "")
	}
	return append(lines, linesOfAtoms(atoms)...)
}
