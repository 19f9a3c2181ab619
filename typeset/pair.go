package typeset

import "headland/pagemodel"

// An original and its translation face each other, line level with line, the
// original on the verso (common practice in bilingual editions: first lines
// level, the shorter side padded). Stanza by stanza and line by line the two
// are set in one row of steps, each as deep as the deeper of the two lines; page
// ends are common to both.

// pairChain is two poems side by side.
func pairChain(original, translation *poemSetting, d *pagemodel.Design) *chain {
	c := &chain{kind: facing, poems: []*poemSetting{original, translation}, hidden: d.Hidden == pagemodel.HiddenWhite}
	a, b := original.groups(), translation.groups()
	for g := range max(len(a), len(b)) {
		c.level(groupAt(a, g), groupAt(b, g))
	}
	c.first = []int32{0, int32(len(c.steps))}
	c.solve()
	return c
}

// unitRange is the units of a poem from one to another.
type unitRange struct{ from, to int }

func groupAt(groups []unitRange, i int) unitRange {
	if i < len(groups) {
		return groups[i]
	}
	return unitRange{}
}

// groups are the poem's head, stanzas and headings.
func (s *poemSetting) groups() []unitRange {
	groups := []unitRange{{0, s.head}}
	for i := s.head; i < len(s.units); i++ {
		if u := &s.units[i]; i == s.head || u.at == 0 && !u.goesOn {
			groups = append(groups, unitRange{i, i})
		}
		groups[len(groups)-1].to = i + 1
	}
	return groups
}

// level adds the steps of a stanza of each poem.
func (c *chain) level(a, b unitRange) {
	for i := range max(a.to-a.from, b.to-b.from) {
		t := step{top: 1}
		for side, group := range [...]unitRange{a, b} {
			unit := int32(-1)
			if group.from+i < group.to {
				unit = int32(group.from + i)
				t.deepen(&c.poems[side].steps[unit])
			}
			c.sides[side] = append(c.sides[side], unit)
		}
		c.steps = append(c.steps, t)
	}
}

// deepen makes the step serve another beside it.
func (t *step) deepen(u *step) {
	t.before, t.shared, t.top = max(t.before, u.before), max(t.shared, u.shared), max(t.top, u.top)
	t.rows, t.verse = max(t.rows, u.rows), max(t.verse, u.verse)
	t.white = t.white || u.white
	t.end.forbidden = t.end.forbidden || u.end.forbidden
	t.end.parts = t.end.parts || u.end.parts
	t.end.against = t.end.against || u.end.against
	t.end.forced = t.end.forced || u.end.forced
}
