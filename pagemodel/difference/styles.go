package difference

import (
	"strings"

	"headland/pagemodel"
)

// styleTerm is how a style is asked for, and how its end is.
type styleTerm struct {
	style    pagemodel.Style
	on, off  string
	kind     Kind
	kindLess Kind
}

var styles = []styleTerm{
	{pagemodel.Italic, "italic", "roman", Italic, Roman},
	{pagemodel.Bold, "bold", "the usual weight", Bold, Bold},
	{pagemodel.SmallCaps, "small capitals", "lower case", SmallCapitals, SmallCapitals},
}

// restyle finds the words that stayed and changed their style: one change for words
// that stand next to each other in a line.
func (d *differ) restyle() {
	for _, term := range styles {
		var spots []spot
		off := false
		for k, a := range d.kept {
			if a.at%2 == 0 && d.was.tokens[a.at/2].level > within || k > 0 && d.kept[k-1].at+1 != a.at {
				spots = d.styled(term, off, spots)
			}
			if a.was == a.is {
				if a.n > 0 {
					spots = d.styled(term, off, spots)
				}
				continue
			}
			for b := range a.n {
				was, is := styleAt(a.was, b)&term.style != 0, styleAt(a.is, b)&term.style != 0
				if was == is || was != off {
					spots = d.styled(term, off, spots)
				}
				if was != is {
					spots, off = grown(spots, a.at, b), was
				}
			}
		}
		d.styled(term, off, spots)
	}
}

// grown is the spots and one more byte.
func grown(spots []spot, at, b int) []spot {
	if last := len(spots) - 1; last >= 0 && spots[last].atom == at {
		spots[last].to = b + 1
		return spots
	}
	return append(spots, spot{at, b, b + 1})
}

// styled is the change of the style of some spots; none is left of them.
func (d *differ) styled(term styleTerm, off bool, spots []spot) []spot {
	if len(spots) == 0 {
		return nil
	}
	ch := Change{Kind: term.kind}
	words := quoted(d.spotted(spots))
	ch.Was, ch.Is = words+" in "+term.off, words+" in "+term.on
	if off {
		ch.Kind, ch.Was, ch.Is = term.kindLess, ch.Is, ch.Was
	}
	ch.about = d.spotted(spots) + " " + ch.Is
	ch.Was = then(ch.Was, ", ", d.spottedIn(spots))
	d.spot(&ch, spots)
	ch.op = restyling{d.target, term.style, off, spots}
	d.add(ch, spots[0].atom)
	return nil
}

// spotted is the words of spots.
func (d *differ) spotted(spots []spot) string {
	var words string
	for _, s := range spots {
		t := &d.was.tokens[s.atom/2]
		if s.atom%2 == 1 {
			words += t.text[s.from:s.to]
		} else {
			words += t.lead[s.from:s.to]
		}
	}
	return words
}

// spottedIn says which words of their line the spots are, where it has such words
// more than once, and of which word they are a part.
func (d *differ) spottedIn(spots []spot) string {
	first, last := spots[0], spots[len(spots)-1]
	i0, i1 := first.atom/2, last.atom/2+1
	among := d.was.among(i0, i1)
	if i1-i0 == 1 && first.atom%2 == 1 && last.to-first.from < len(d.was.tokens[i0].text) {
		return strings.TrimSuffix("in "+quoted(d.was.tokens[i0].text)+" "+among, " ")
	}
	return among
}

// spot places a change at the bytes of its spots.
func (d *differ) spot(ch *Change, spots []spot) {
	first, last := spots[0], spots[len(spots)-1]
	ch.Line = d.lineRef(d.was.sources[first.atom/2].line)
	ch.From = d.startOf(first.atom) + first.from
	ch.To = d.startOf(last.atom) + last.to
}

// startOf is the byte at which an atom begins.
func (d *differ) startOf(atom int) int {
	s := d.was.sources[atom/2]
	if atom%2 == 1 {
		return s.start
	}
	return s.start - len(d.was.tokens[atom/2].lead)
}
