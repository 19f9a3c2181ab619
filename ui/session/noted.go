package session

import (
	"headland/pagemodel"
)

// dayForm is how days are written: ISO 8601.
const dayForm = "2006-01-02"

// noted is an edit with what only the session knows: the day, and the words at
// which a line turns that is being kept.
func (s *Session) noted(e pagemodel.Edit) pagemodel.Edit {
	day := s.now().Format(dayForm)
	e = each(e, func(e pagemodel.Edit) pagemodel.Edit {
		if dated, ok := e.(pagemodel.Dated); ok {
			return dated.OnDay(day)
		}
		return e
	})
	if !keeps(e) {
		return e
	}
	next, err := e.Apply(s.Collection())
	if err != nil {
		return e
	}
	set := s.setter.Set(s.Setting(), next)
	return each(e, func(e pagemodel.Edit) pagemodel.Edit {
		if keep, ok := e.(pagemodel.Keep); ok {
			keep.Turned = set.TurnWords(keep.LineRef)
			return keep
		}
		return e
	})
}

// keeps says that a line is let turn by the edit, and at which words is not yet
// noted.
func keeps(e pagemodel.Edit) (yes bool) {
	each(e, func(e pagemodel.Edit) pagemodel.Edit {
		keep, ok := e.(pagemodel.Keep)
		yes = yes || ok && keep.Turned == ""
		return e
	})
	return yes
}

// each is the edit with itself, or those that it is made of, replaced by what
// change makes of them.
func each(e pagemodel.Edit, change func(pagemodel.Edit) pagemodel.Edit) pagemodel.Edit {
	if compound, ok := e.(pagemodel.Compound); ok {
		return compound.Each(change)
	}
	return change(e)
}
