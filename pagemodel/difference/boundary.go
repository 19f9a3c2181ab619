package difference

import (
	"fmt"

	"headland/pagemodel"
)

// boundary compares the boundary before token i with the one that it is now,
// before token j.
func (d *differ) boundary(i, j int) {
	was, is := d.was.tokens[i].boundary, d.is.tokens[j].boundary
	if was == is {
		d.keep(2*i, len(was.lead), was.leadStyles, is.leadStyles)
		return
	}
	base := was
	if was.level != is.level {
		base = d.levelled(i, &is)
		d.level(i, &base)
	}
	if is.level >= partEnds {
		d.heading(i, &base, &is)
	}
	if base.kind != is.kind {
		d.kind(i, &is)
	}
	d.look(i, &base, &is)
	if base.lead != is.lead || base.gap != is.gap {
		d.space(i, &base, &is)
	} else {
		d.keep(2*i, len(base.lead), base.leadStyles, is.leadStyles)
	}
	if base.turn != is.turn {
		d.turn(i, &is)
	}
}

// levelled is the boundary before token i raised or lowered to the level of
// another, and otherwise as one would expect it there.
func (d *differ) levelled(i int, is *boundary) boundary {
	was := d.was.tokens[i].boundary
	b := boundary{level: is.level}
	switch {
	case is.level == within:
		b.lead, b.leadStyles = is.lead, is.leadStyles
		return b
	case was.level == within:
		begins := d.was.lineOf(i)
		b.look = look{indent: begins.look.indent, rng: begins.look.rng}
	default:
		b.look, b.lead, b.leadStyles, b.gap = was.look, was.lead, was.leadStyles, was.gap
	}
	if is.level >= stanza {
		b.kind = d.was.kindAt(i)
	}
	return b
}

// lineOf is the boundary of the printed line that token i stands in.
func (b *body) lineOf(i int) *boundary {
	for i > 0 && b.tokens[i].level == within {
		i--
	}
	return &b.tokens[i].boundary
}

// kindAt is whether token i stands in verse or prose.
func (b *body) kindAt(i int) int8 {
	for i > 0 && b.tokens[i].level < stanza {
		i--
	}
	return b.tokens[i].kind
}

// kindOfLevel is what has been done where words are parted more, or less.
func kindOfLevel(was, is level) Kind {
	switch {
	case max(was, is) == partEnds:
		return Part
	case is == stanza:
		return OpenStanza
	case is == within:
		return RunOn
	case was == stanza:
		return CloseStanza
	}
	return NewLine
}

// level is a change of line ends, stanzas or parts.
func (d *differ) level(i int, to *boundary) {
	was := &d.was.tokens[i].boundary
	ch := Change{Kind: kindOfLevel(was.level, to.level), Was: d.was.across(i, was), Is: d.was.across(i, to), about: d.meeting(i)}
	if ch.Kind == Part {
		ch.Was, ch.Is = "no part begins with "+d.was.beginning(i), "a part begins with "+d.was.beginning(i)
		if to.level < partEnds {
			ch.Was, ch.Is = ch.Is, ch.Was
		}
	}
	if was.level == within {
		d.before(&ch, i)
	} else {
		d.behind(&ch, i)
	}
	d.alter(ch, i, partLevel, to)
}

// meeting is the words on both sides of the boundary before token i.
func (d *differ) meeting(i int) string {
	if i == 0 {
		return "|" + d.was.tokens[0].text
	}
	return d.was.tokens[i-1].text + "|" + d.was.tokens[i].text
}

// heading is a change of a part's number or title.
func (d *differ) heading(i int, was, is *boundary) {
	if was.heading == is.heading {
		return
	}
	ch := Change{Kind: Substitute, Field: "part heading", Was: quoted(was.heading), Is: quoted(is.heading), about: was.heading + "→" + is.heading}
	switch {
	case was.heading == "":
		ch.Kind, ch.Was = Insert, "no heading above "+d.was.beginning(i)
	case is.heading == "":
		ch.Kind, ch.Is = Delete, "nothing"
	}
	d.before(&ch, i)
	d.alter(ch, i, partHeading, is)
}

// kind is verse made prose, or prose made verse.
func (d *differ) kind(i int, is *boundary) {
	names := [...]Kind{pagemodel.Verse: Verse, pagemodel.Prose: Prose}
	ch := Change{Kind: names[is.kind], about: d.meeting(i)}
	ch.Was = fmt.Sprintf("%s as %s", d.was.beginning(i), names[1-is.kind])
	ch.Is = fmt.Sprintf("%s as %s", d.was.beginning(i), names[is.kind])
	d.before(&ch, i)
	d.alter(ch, i, partKind, is)
}
