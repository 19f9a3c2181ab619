package typeset

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
)

// Remedy is one way to mend a fault: what to do and what it would cost, in
// words, and the edit that does it. Nothing is done unasked.
type Remedy struct {
	Text string
	Edit pagemodel.Edit
}

// remedy is a remedy before it is known whether it helps.
type remedy struct {
	what string
	edit pagemodel.Edit
	same bool // not worth saying where the one before it does as much
}

// Remedies are the ways to mend a fault, each tried on the whole book: those
// after which the fault is gone. The work is a warm set for each, so they are
// found when asked for. It must be called where the setter may be used.
func (s *Setting) Remedies(f Fault) []Remedy {
	var found []Remedy
	for _, r := range s.tries(f) {
		next, err := r.edit.Apply(s.collection)
		if err != nil || next == s.collection {
			continue
		}
		t := s.tried(f.Poem, r.edit, next)
		if effect := t.effect(s); t.mended(f, s) && !(len(found) > 0 && r.same && strings.HasSuffix(found[len(found)-1].Text, ": "+effect)) {
			found = append(found, Remedy{r.what + ": " + effect, r.edit})
		}
	}
	return found
}

// tried is the setting after an edit, with the prelims and end matter as they
// stand: no remedy changes how many pages they take. It is remembered, since
// every fault of a poem asks for the same: for the poem last asked about, and
// where the whole book is set in another design.
func (s *Setting) tried(poem pagemodel.PoemID, e pagemodel.Edit, next *pagemodel.Collection) *Setting {
	t := &s.setter.trials
	t.turnTo(s, poem)
	by, key := t.edits, any(e)
	switch e := e.(type) {
	case pagemodel.SetDesign:
		by, key = t.designs, any(e.Design)
	case pagemodel.SetHead:
		key = any(e.Head.Size) // a remedy changes no more of a head
	}
	if by[key] == nil {
		by[key] = s.trial(next)
	}
	return by[key]
}

// trials are settings of the book of one after edits.
type trials struct {
	of      *Setting
	poem    pagemodel.PoemID
	designs map[any]*Setting
	edits   map[any]*Setting // of poem
}

// turnTo forgets what was tried on another book or poem.
func (t *trials) turnTo(s *Setting, poem pagemodel.PoemID) {
	if t.of != s {
		*t = trials{of: s, designs: map[any]*Setting{}}
	}
	if t.edits == nil || t.poem != poem {
		t.poem, t.edits = poem, map[any]*Setting{}
	}
}

// mended says that the fault is gone, wherever its poem now stands: it is not
// where it was, and none of its kind has come up elsewhere in the poem instead.
func (s *Setting) mended(f Fault, before *Setting) bool {
	return !s.has(f) && s.countOf(f) < before.countOf(f)
}

// has says that the fault is still at its line.
func (s *Setting) has(f Fault) bool {
	i, ok := s.collection.IndexOf(f.Poem)
	return ok && slices.ContainsFunc(s.faultsOf(i), func(g Fault) bool { return g.Kind == f.Kind && g.Line == f.Line })
}

// countOf is how many faults of the fault's kind its poem has.
func (s *Setting) countOf(f Fault) int {
	n := 0
	if i, ok := s.collection.IndexOf(f.Poem); ok {
		for _, g := range s.faultsOf(i) {
			if g.Kind == f.Kind {
				n++
			}
		}
	}
	return n
}

// tries are the edits that might mend the fault.
func (s *Setting) tries(f Fault) []remedy {
	p, _, ok := s.collection.Poem(f.Poem)
	if !ok {
		return nil
	}
	switch f.Kind {
	case MissingGlyph, AbsentFace:
		return nil
	case OverMeasure:
		return []remedy{s.smaller(p)}
	case NearGutter:
		if p.Head().Lie == pagemodel.Across {
			return nil // where its words stand is the poet's: indents and gaps move them
		}
		return s.outOfTheGutter()
	}
	return slices.Concat(s.pageRemedies(p), s.togetherRemedies(p, f), s.orderRemedies(p), s.signs(f))
}

// pageRemedies change how long the poem's pages run, or where it opens.
func (s *Setting) pageRemedies(p *pagemodel.Poem) []remedy {
	h := p.Head()
	pages := "these pages"
	if i, _ := s.collection.IndexOf(p.ID()); len(s.placed(i).plan.cuts) == 1 {
		pages = "this pair of pages"
	}
	blank := "a blank before"
	if h.Blank {
		blank = "no blank before"
	}
	all := []remedy{
		{what: "a line longer on " + pages, edit: pagemodel.SetRun{Poem: p.ID(), Lines: h.Run + 1}},
		{what: "a line shorter on " + pages, edit: pagemodel.SetRun{Poem: p.ID(), Lines: h.Run - 1}},
		{what: blank, edit: pagemodel.SetStart{Poem: p.ID(), Start: h.Start, Blank: !h.Blank}},
	}
	if h.Start == pagemodel.FreshPage || h.Start == pagemodel.OnRecto {
		verso := pagemodel.SetStart{Poem: p.ID(), Start: pagemodel.OnVerso, Blank: h.Blank}
		all = append(all, remedy{what: "the poem on a verso", edit: verso, same: true})
	}
	return all
}

// togetherRemedies keep the lines together that the fault parts.
func (s *Setting) togetherRemedies(p *pagemodel.Poem, f Fault) []remedy {
	at, ok := p.Find(f.Line.Line)
	if !ok {
		return nil
	}
	lines := p.Stanza(at).Lines()
	return []remedy{{what: "the stanza kept whole", edit: pagemodel.KeepTogether{
		LineRef: pagemodel.LineRef{Poem: p.ID(), Line: lines[0].ID()}, Through: lines[len(lines)-1].ID(),
	}}}
}

// orderRemedies put the poem before the one before it, or the one after it
// before it.
func (s *Setting) orderRemedies(p *pagemodel.Poem) []remedy {
	i, _ := s.collection.IndexOf(p.ID())
	order := s.collection.Order()
	var all []remedy
	if paired(order, i) {
		return nil // an original stays with its translation
	}
	if i > 0 && order[i-1].Poem != nil && !paired(order, i-1) {
		before := order[i-1].Poem
		all = append(all, movedBefore(p, before))
	}
	if i+1 < len(order) && order[i+1].Poem != nil && !paired(order, i+1) {
		after := order[i+1].Poem
		all = append(all, movedBefore(after, p))
	}
	return all
}

// paired says that an entry is an original or a translation that face each other.
func paired(order []pagemodel.Entry, i int) bool {
	return i > 0 && joins(order[i-1], order[i], pagemodel.FacingPage) ||
		i+1 < len(order) && joins(order[i], order[i+1], pagemodel.FacingPage)
}

func movedBefore(p, before *pagemodel.Poem) remedy {
	return remedy{what: p.Name() + " before " + before.Name(), edit: pagemodel.Move{Poem: p.ID(), Before: before.ID()}}
}

// signs show a stanza break that a page end hides.
func (s *Setting) signs(f Fault) []remedy {
	if f.Kind != HiddenBreak {
		return nil
	}
	sign, white := s.design, s.design
	sign.Hidden, white.Hidden = pagemodel.HiddenSign, pagemodel.HiddenWhite
	return []remedy{
		{what: "a sign at the foot of every such page", edit: pagemodel.SetDesign{Design: sign}},
		{what: "a line of white at the head of the next page, throughout the book", edit: pagemodel.SetDesign{Design: white}},
	}
}

// smaller sets the poem half a point smaller.
func (s *Setting) smaller(p *pagemodel.Poem) remedy {
	h := p.Head()
	if h.Size == 0 {
		h.Size = s.design.Size
	}
	h.Size -= pagemodel.Pt(0.5)
	return remedy{what: fmt.Sprintf("this poem in %v", h.Size), edit: pagemodel.SetHead{Poem: p.ID(), Head: h}}
}

// outOfTheGutter widens the inner margin at the cost of the outer one.
func (s *Setting) outOfTheGutter() []remedy {
	wider := s.design
	wider.Margins.Inner += pagemodel.MM(2)
	wider.Margins.Outer -= pagemodel.MM(2)
	return []remedy{{what: "2 mm more of inner margin and less of outer", edit: pagemodel.SetDesign{Design: wider}}}
}

// effect says in words what else differs from a setting before.
func (s *Setting) effect(before *Setting) string {
	said := s.Cost().differences(before.Cost())
	moved := 0
	for _, p := range s.collection.Poems() {
		now, _ := s.PageOfPoem(p.ID())
		if was, _ := before.PageOfPoem(p.ID()); was != now {
			moved++
		}
	}
	if said != "" {
		said += "; "
	}
	switch n := s.Extent() - before.Extent(); {
	case n > 0:
		said += "the book takes " + countOf(n, "page") + " more; "
	case n < 0:
		said += "the book takes " + countOf(-n, "page") + " less; "
	}
	switch n := len(s.Faults()) - len(before.Faults()); {
	case n > 0:
		said += "the book has " + countOf(n, "fault") + " more; "
	case n < -1:
		said += "the book has " + countOf(-n, "fault") + " fewer; "
	}
	switch moved {
	case 0:
		return said + "no poem moves"
	case 1:
		return said + "1 poem moves to another page"
	}
	return said + fmt.Sprintf("%d poems move to other pages", moved)
}
