package choices

import (
	"fmt"

	"headland/pagemodel"
	"headland/typeset"
)

// leastSize is the least size of type that can be set.
const leastSize = 4 * pagemodel.Point

// room is what makes room for an overlong line, or sets its turnover elsewhere:
// each as little as makes the line fit.
func (f *finder) room() {
	alone := f.alone()
	f.otherTurnovers()
	f.runOut()
	f.tighten(alone)
	f.smaller(alone)
	f.wider(alone)
}

// design tells of a change of the whole book's design.
func (f *finder) design(title string, d pagemodel.Design) {
	f.choose(title, after(f.whole(), pagemodel.SetDesign{Design: d}), "holds for the whole book")
}

// choose tells of an edit that leaves the line its words.
func (f *finder) choose(title string, e pagemodel.Edit, says ...string) {
	if tried, ok := f.try(e); ok {
		f.tell(Choice{Head: Space, Title: title, Edit: e, Says: says}, tried, f.ref.Line)
	}
}

func (f *finder) otherTurnovers() {
	d := f.set.Collection().Design()
	if d.Turnovers == pagemodel.TurnRight {
		d.Turnovers = pagemodel.TurnIndented
		f.design("the turnover indented", d)
		return
	}
	d.Turnovers = pagemodel.TurnRight
	f.design("the turnover set right", d)
}

// runOut lets lines run into the margin, by whole points.
func (f *finder) runOut() {
	d := f.set.Collection().Design()
	more := (f.overrun + pagemodel.Point - 1) / pagemodel.Point * pagemodel.Point
	d.RunOut += more
	f.design(fmt.Sprintf("lines run %v into the margin", d.RunOut), d)
}

// tighten narrows the word spaces by as many per cent as the line needs.
func (f *finder) tighten(alone *typeset.Setting) {
	const most = 40 // as pagemodel.Design.Check has it
	d := f.set.Collection().Design()
	least, ok := leastThat(d.Tighten+1, most, func(n int) bool {
		d.Tighten = n
		return f.fitsAfter(alone, pagemodel.SetDesign{Design: d})
	})
	if ok {
		d.Tighten = least
		f.design(fmt.Sprintf("word spaces narrowed by up to %d per cent", least), d)
	}
}

// smaller sets the poem in the largest size, by half points, at which the line
// fits.
func (f *finder) smaller(alone *typeset.Setting) {
	h := f.poem.Head()
	size := f.size()
	const half = pagemodel.Point / 2
	for h.Size = (size - 1) / half * half; h.Size >= leastSize; h.Size -= half {
		if e := (pagemodel.SetHead{Poem: f.poem.ID(), Head: h}); f.fitsAfter(alone, e) {
			f.choose(fmt.Sprintf("this poem in %v", h.Size), after(f.whole(), e), "holds for the whole poem")
			return
		}
	}
}

// size is that of the poem's type.
func (f *finder) size() typeset.Length {
	if size := f.poem.Head().Size; size != 0 {
		return size
	}
	return f.set.Collection().Design().Size
}

// wider takes whole millimetres off the outer margin.
func (f *finder) wider(alone *typeset.Setting) {
	d := f.set.Collection().Design()
	outer := d.Margins.Outer
	for mm := 1; pagemodel.MM(float64(mm)) < outer; mm++ {
		if d.Margins.Outer = outer - pagemodel.MM(float64(mm)); pagemodel.MM(float64(mm)) < f.overrun {
			continue
		}
		if f.fitsAfter(alone, pagemodel.SetDesign{Design: d}) {
			f.design(fmt.Sprintf("a measure wider by %d mm, off the outer margin", mm), d)
			return
		}
	}
}

// edge pulls the poem to the left of the measure, where it is not there yet.
func (f *finder) edge() {
	h := f.poem.Head()
	edge := h.Edge
	if edge == pagemodel.EdgeOfBook {
		edge = f.set.Collection().Design().Edge
	}
	if edge == pagemodel.EdgeOfBook || edge == pagemodel.EdgeLeft {
		return
	}
	h.Edge = pagemodel.EdgeLeft
	f.choose("the poem pulled left", pagemodel.SetHead{Poem: f.poem.ID(), Head: h}, "holds for the whole poem")
}

// alone is the poem set by itself, for finding how much is enough.
func (f *finder) alone() *typeset.Setting {
	c := f.set.Collection()
	i, _ := c.IndexOf(f.poem.ID())
	return f.setter.Set(nil, c.Only(i, i+1))
}

// fitsAfter says that the line, whole, fits after an edit.
func (f *finder) fitsAfter(alone *typeset.Setting, e pagemodel.Edit) bool {
	tried, err := alone.Try(e)
	if err != nil {
		return false
	}
	rows := lookAt(tried).rows(f.ref)
	return len(rows) > 0 && rows[0].Overrun == 0
}

// leastThat is the least number from one through another that does, where every
// greater one does too, or false.
func leastThat(from, to int, does func(int) bool) (int, bool) {
	if from > to || !does(to) {
		return 0, false
	}
	for from < to {
		if middle := (from + to) / 2; does(middle) {
			to = middle
		} else {
			from = middle + 1
		}
	}
	return from, true
}
