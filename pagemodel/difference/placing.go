package difference

import "headland/pagemodel"

// Where changes stand in the text as it was.

func (d *differ) lineRef(line pagemodel.LineID) pagemodel.LineRef {
	if line == 0 {
		return pagemodel.LineRef{}
	}
	return pagemodel.LineRef{Poem: d.name.poem, Line: line}
}

// before places a change at the point before token i.
func (d *differ) before(ch *Change, i int) {
	s := d.was.sources[i]
	ch.Line, ch.From, ch.To = d.lineRef(s.line), s.start, s.start
}

// behind places a change at the point behind the token before token i, or before
// it where it is the first.
func (d *differ) behind(ch *Change, i int) {
	if i == 0 {
		d.before(ch, i)
		return
	}
	s := d.was.sources[i-1]
	ch.Line, ch.From, ch.To = d.lineRef(s.line), s.end, s.end
}

// words places a change at the words of tokens.
func (d *differ) words(ch *Change, i0, i1 int) {
	d.before(ch, i0)
	line := d.was.sources[i0].line
	for i := i0; i < i1; i++ {
		if s := d.was.sources[i]; s.line == line {
			ch.To = s.end
		} else {
			ch.Through = s.line
		}
	}
}

func (d *differ) replace(ch Change, from, to int, with []atom) {
	ch.op = replacing{d.target, from, to, with}
	d.add(ch, from)
}

func (d *differ) alter(ch Change, i int, p part, to *boundary) {
	ch.op = altering{{d.target, 2 * i, p, *to}}
	d.add(ch, 2*i)
}

func (d *differ) add(ch Change, at int) {
	ch.Poem, ch.Section, ch.at = d.name.poem, d.name.section, at
	if ch.Field == "" {
		ch.Field = d.fieldName
	}
	d.changes = append(d.changes, ch)
}
