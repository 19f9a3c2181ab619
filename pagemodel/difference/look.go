package difference

import (
	"strings"

	"headland/pagemodel"
)

// look compares how the printed line that token i begins looks.
func (d *differ) look(i int, was, is *boundary) {
	if was.look == is.look {
		return
	}
	begins := d.was.beginning(i)
	a, b := was.look, is.look
	tell := func(differs bool, kind Kind, field string, p part, said func(look) string) {
		if !differs {
			return
		}
		ch := Change{Kind: kind, Field: field, Was: begins + " " + said(a), Is: begins + " " + said(b), about: d.was.tokens[i].text + " " + said(b)}
		d.before(&ch, i)
		d.alter(ch, i, p, is)
	}
	tell(a.indent != b.indent, kindOfIndent(b.indent), "", partIndent, func(l look) string { return indentWords(l.indent) })
	tell(a.rng != b.rng, Space, "", partRange, func(l look) string { return "ranged " + pagemodel.Range(l.rng).String() })
	tell(a.dropped != b.dropped, Space, "", partDropped, func(l look) string { return droppedWords(l.dropped) })
	tell(a.above != b.above, Space, "", partAbove, func(l look) string { return "with " + linesOfWhite(l.above) + " above" })
	tell(a.opens != b.opens, Design, "page break", partOpens, func(l look) string { return opensWords(l.opens) })
	tell(a.tied != b.tied, Design, "keep together", partTied, func(l look) string { return tiedWords(l.tied) })
}

func kindOfIndent(to pagemodel.Em) Kind {
	if to == 0 {
		return CancelIndent
	}
	return IndentLine
}

func droppedWords(dropped bool) string {
	if dropped {
		return "begun where the line above ends"
	}
	return "begun at the left edge"
}

func opensWords(opens bool) string {
	if opens {
		return "at the head of a page"
	}
	return "wherever it falls"
}

func tiedWords(tied bool) string {
	if tied {
		return "on the page of the line above"
	}
	return "on that page or the next"
}

// space is a change of the white before a word.
func (d *differ) space(i int, was, is *boundary) {
	ch := Change{Kind: Space, about: d.meeting(i) + " " + spaceWords(is)}
	if i > 0 && d.was.tokens[i].level == within {
		pair := quotedTokens("", d.was.tokens[i-1:i+1], "")
		ch.Was, ch.Is = then(pair+" with "+spaceWords(was), ", ", d.was.among(i-1, i+1)), pair+" with "+spaceWords(is)
	} else {
		begins := d.was.beginning(i)
		ch.Was, ch.Is = begins+" with "+spaceWords(was), begins+" with "+spaceWords(is)
	}
	d.before(&ch, i)
	d.alter(ch, i, partSpace, is)
}

// unsaidTurn is said of a line for which nobody has chosen the word to turn at.
const unsaidTurn = "turned wherever the measure ends"

// turn is a change of the word at which a line turns: one for each line, however
// many words it concerns.
func (d *differ) turn(i int, is *boundary) {
	line := d.was.sources[i].line
	if at, ok := d.turns[line]; ok {
		ch := &d.changes[at]
		ch.op = append(ch.op.(altering), alteration{d.target, 2 * i, partTurn, *is})
		d.tellTurn(ch, i, is.turn)
		return
	}
	first, _ := d.was.lineAbout(i)
	unsaid := d.was.beginning(first) + " " + unsaidTurn
	ch := Change{Kind: TurnAt, Was: unsaid, Is: unsaid}
	d.before(&ch, i)
	d.tellTurn(&ch, i, is.turn)
	if d.turns == nil {
		d.turns = map[pagemodel.LineID]int{}
	}
	d.turns[line] = len(d.changes)
	d.alter(ch, i, partTurn, is)
}

// tellTurn adds a word at which the line turns, or turned.
func (d *differ) tellTurn(ch *Change, i int, now bool) {
	of := &ch.Was
	if now {
		of = &ch.Is
		d.before(ch, i)
		ch.To = d.was.sources[i].end
	}
	place := betweenWords(d.was.about(i, 2))
	if strings.HasSuffix(*of, unsaidTurn) {
		*of = "turned " + place
	} else {
		*of += ", and " + place
	}
	ch.about = ch.Was + "→" + ch.Is
}
