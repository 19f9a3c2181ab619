package difference

import (
	"fmt"
	"slices"
)

// Apply makes changes in the text that they were found in. All of them make of
// the one book's text the other's. The error names what does not fit the text.
func Apply(t Text, changes []Change) (Text, error) {
	w := work{sheets: map[target]*sheet{}, values: map[name][]valuing{}}
	for i := range changes {
		w.add(changes[i].op)
	}
	out := Text{entries: slices.Clone(t.entries)}
	var err error
	if out.book, err = w.on(t.book); err != nil {
		return Text{}, err
	}
	for i := range out.entries {
		if out.entries[i], err = w.on(out.entries[i]); err != nil {
			return Text{}, err
		}
	}
	out.reorder(w.order)
	return out, nil
}

// work is operations sorted by what they are done to.
type work struct {
	sheets map[target]*sheet
	values map[name][]valuing
	order  []operation
}

func (w *work) add(op operation) {
	switch op := op.(type) {
	case together:
		for _, one := range op {
			w.add(one)
		}
	case replacing:
		s := w.sheet(op.target)
		s.replaced = append(s.replaced, op)
	case altering:
		for _, a := range op {
			s := w.sheet(a.target)
			s.altered = append(s.altered, a)
		}
	case restyling:
		s := w.sheet(op.target)
		s.restyled = append(s.restyled, op)
	case valuing:
		w.values[op.name] = append(w.values[op.name], op)
	default:
		w.order = append(w.order, op)
	}
}

func (w *work) sheet(t target) *sheet {
	if w.sheets[t] == nil {
		w.sheets[t] = &sheet{}
	}
	return w.sheets[t]
}

// on is the entry with all that is to be done to it.
func (w *work) on(e entry) (entry, error) {
	for _, v := range w.values[e.name] {
		e.values = slices.Clone(e.values)
		e.values[v.value] = v.to
	}
	var err error
	e.fields = slices.Clone(e.fields)
	for i := range e.fields {
		if s := w.sheets[target{e.name, i}]; s != nil && err == nil {
			e.fields[i], err = s.on(e.fields[i])
		}
	}
	if s := w.sheets[target{e.name, ofLines}]; s != nil && err == nil {
		e.lines, err = s.on(e.lines)
	}
	return e, err
}

// sheet is what is to be done to the atoms of a target.
type sheet struct {
	replaced []replacing
	altered  []alteration
	restyled []restyling
}

// on is the tokens with all that the sheet says done to them.
func (s *sheet) on(tokens []token) ([]token, error) {
	atoms := make([]atom, 0, 2*len(tokens))
	for _, t := range tokens {
		atoms = append(atoms, atom{boundary: t.boundary}, atom{isWord: true, word: t.word})
	}
	slices.SortStableFunc(s.altered, func(a, b alteration) int { return int(a.part - b.part) })
	for _, a := range s.altered {
		if a.at >= len(atoms) || atoms[a.at].isWord {
			return nil, fmt.Errorf("a correction is of boundary %d, which the text does not have", a.at)
		}
		atoms[a.at].boundary.take(a.part, &a.to)
	}
	for _, r := range s.restyled {
		for _, spot := range r.spots {
			if spot.atom >= len(atoms) {
				return nil, fmt.Errorf("a correction is of word %d, which the text does not have", spot.atom/2)
			}
			atoms[spot.atom].restyle(spot, r.style, r.off)
		}
	}
	return tokensFrom(s.cut(atoms))
}

// cut puts what replaces them in place of atoms.
func (s *sheet) cut(atoms []atom) []atom {
	slices.SortStableFunc(s.replaced, func(a, b replacing) int { return a.from - b.from })
	out := make([]atom, 0, len(atoms)+16)
	done := 0
	for _, r := range s.replaced {
		from := min(max(done, r.from), len(atoms))
		out = append(append(out, atoms[done:from]...), r.with...)
		done = min(max(from, r.to), len(atoms))
	}
	return append(out, atoms[done:]...)
}

// tokensFrom puts atoms together again.
func tokensFrom(atoms []atom) ([]token, error) {
	tokens := make([]token, 0, len(atoms)/2)
	for i := 0; i+1 < len(atoms); i += 2 {
		if atoms[i].isWord || !atoms[i+1].isWord {
			return nil, fmt.Errorf("corrections that lie over one another were made together: word %d has no place", i/2)
		}
		tokens = append(tokens, token{atoms[i].boundary, atoms[i+1].word})
	}
	if len(atoms)%2 != 0 {
		return nil, fmt.Errorf("corrections that lie over one another were made together: the last word is missing")
	}
	return tokens, nil
}
