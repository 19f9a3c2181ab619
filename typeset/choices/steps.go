package choices

import "headland/pagemodel"

// steps is edits done one after another as one, which takes one step of the
// history: taking back what was decided before, or breaking a line in three.
type steps struct {
	Edits []pagemodel.Edit `json:"edits"`
	label string
}

var _ pagemodel.Compound = steps{}

// Kind is that of the last edit, which decides.
func (e steps) Kind() string { return e.last().Kind() }

// Label says what is done in all.
func (e steps) Label() string {
	if e.label != "" {
		return e.label
	}
	return e.last().Label()
}

// Each is the steps with every edit replaced by what change makes of it.
func (e steps) Each(change func(pagemodel.Edit) pagemodel.Edit) pagemodel.Edit {
	edits := make([]pagemodel.Edit, len(e.Edits))
	for i, edit := range e.Edits {
		edits[i] = change(edit)
	}
	return steps{edits, e.label}
}

func (e steps) last() pagemodel.Edit { return e.Edits[len(e.Edits)-1] }

// Apply does them in order, each on what the one before gave.
func (e steps) Apply(c *pagemodel.Collection) (*pagemodel.Collection, error) {
	for _, edit := range e.Edits {
		next, err := edit.Apply(c)
		if err != nil {
			return nil, err
		}
		c = next
	}
	return c, nil
}

// after is an edit done after others, itself where there are none.
func after(first []pagemodel.Edit, e pagemodel.Edit) pagemodel.Edit {
	if len(first) == 0 {
		return e
	}
	return steps{Edits: append(first[:len(first):len(first)], e)}
}
