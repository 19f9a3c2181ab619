package choices

import (
	"headland/pagemodel"
	"headland/typeset"
)

// drop is to begin the line where the line above ended, or not to.
func (f *finder) drop() {
	e := pagemodel.Drop{LineRef: f.ref, Dropped: !f.line.Dropped()}
	above, follows := f.above()
	switch {
	case f.line.Dropped():
		f.choose("not dropped", e)
	case f.line.Range() == pagemodel.RangeLeft && follows:
		if tried, ok := f.try(e); ok {
			f.dropped(e, tried, above)
		}
	}
}

// dropped tells of a drop as it was set. A line that has no room beyond the one
// above is set as far to the right as it has, and is told so; where it would stand
// as it does, or within an em of that, there is no choice.
func (f *finder) dropped(e pagemodel.Edit, tried *look, above pagemodel.LineRef) {
	was, now := f.set.beyond(f.ref, above), tried.beyond(f.ref, above)
	title := "dropped: it begins where the line above ends"
	switch {
	case now == was || now < 0 && now-was < pagemodel.OneEm.At(f.size()):
		return
	case now < 0:
		title = "dropped: it begins as far to the right as it has room"
	}
	f.tell(Choice{Head: Space, Title: title, Edit: e}, tried, f.ref.Line)
}

// above is the line of verse that stands above the line in its part, or false.
func (f *finder) above() (pagemodel.LineRef, bool) {
	stanza := f.poem.Stanza(f.at)
	i := f.at.Line - 1
	if i < 0 {
		if f.at.Stanza == 0 {
			return pagemodel.LineRef{}, false
		}
		stanza = f.poem.Parts()[f.at.Part].Stanzas()[f.at.Stanza-1]
		i = len(stanza.Lines()) - 1
	}
	if i < 0 || stanza.Kind() != pagemodel.Verse {
		return pagemodel.LineRef{}, false
	}
	return pagemodel.LineRef{Poem: f.ref.Poem, Line: stanza.Lines()[i].ID()}, true
}

// beyond is how far right of the end of one line another begins: less than 0 where
// it begins left of it.
func (l *look) beyond(ref, above pagemodel.LineRef) typeset.Length {
	var x, end typeset.Length
	if rows := l.rows(ref); len(rows) > 0 {
		x = rows[0].X
	}
	if rows := l.rows(above); len(rows) > 0 {
		last := &rows[len(rows)-1]
		end = last.X + last.Width
	}
	return x - end
}
