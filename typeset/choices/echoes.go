package choices

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
)

// echoes are what the parts are like, in words: each new line end with the lines
// near it and with the ends above it, and each length with the line nearest to it
// that is as long. lines are those of the poem that the parts replace; the end of
// the last part was there before.
func (v *voice) echoes(parts []Part, lines []pagemodel.LineID) []string {
	var all []string
	for i := range parts {
		if i+1 < len(parts) {
			all = append(all, v.endEchoes(parts, i, lines)...)
		}
		if echo := v.lengthEcho(&parts[i], lines); len(parts) > 1 && echo != "" && !slices.Contains(all, echo) {
			all = append(all, echo)
		}
	}
	return all
}

func (v *voice) endEchoes(parts []Part, i int, lines []pagemodel.LineID) []string {
	var same, rhyming []string
	end := parts[i].LastWord
	add := func(other, name string) {
		switch {
		case end == "" || other == "":
		case strings.EqualFold(end, other):
			same = append(same, name)
		case v.rhyme(end, other):
			rhyming = append(rhyming, "“"+other+"”, "+name)
		}
	}
	for _, n := range v.near {
		if !slices.Contains(lines, n.id) {
			add(n.end, n.name)
		}
	}
	for j := i + 1; j < len(parts); j++ {
		add(parts[j].LastWord, "part "+fmt.Sprint(j+1))
	}
	var all []string
	if len(same) > 0 {
		all = append(all, "ends with “"+end+"”, as "+listed(same)+" "+does(len(same)))
	}
	if len(rhyming) > 0 {
		all = append(all, "“"+end+"” rhymes with "+listed(rhyming))
	}
	return all
}

func does(n int) string {
	if n == 1 {
		return "does"
	}
	return "do"
}

// lengthEcho is the nearest line as long as a part, in syllables, or "".
func (v *voice) lengthEcho(part *Part, lines []pagemodel.LineID) string {
	if part.Syllables == 0 {
		return ""
	}
	for far := 1; far < len(v.near); far++ {
		for _, i := range [...]int{v.at - far, v.at + far} {
			if i < 0 || i >= len(v.near) || slices.Contains(lines, v.near[i].id) {
				continue
			}
			if v.measure(v.near[i].text).Syllables == part.Syllables {
				return fmt.Sprintf("%s, as many as %s", counted(part.Syllables, "syllable"), v.near[i].name)
			}
		}
	}
	return ""
}

// listed is names as a list in words.
func listed(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return names[0]
}
