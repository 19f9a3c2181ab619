package choices

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/typeset"
	"headland/typeset/prosody"
)

// alone are the words that have a row to themselves, parted by commas.
func alone(tried *look, rows []typeset.Row) string {
	var all []string
	for i := range rows {
		p, at, err := tried.Collection().Line(rows[i].Ref())
		if err != nil {
			continue
		}
		text := p.Line(at).Text()[rows[i].Start:rows[i].End]
		if len(pagemodel.Words(text)) == 1 {
			all = append(all, strings.TrimSpace(text))
		}
	}
	return strings.Join(all, ", ")
}

// says is what a choice does in short phrases: what fits, what ends each part and
// how, what stands alone, how long the parts are, what they echo, what moves.
func (f *finder) says(c *Choice) []string {
	said := []string{fitting(c)}
	if len(c.Parts) > 1 {
		said = append(said, f.endings(c)...)
	}
	if c.Alone != "" {
		said = append(said, standsAlone(c.Alone))
	}
	said = append(said, f.lengths(c.Parts))
	said = append(said, c.Echoes...)
	if c.Moves != "" {
		return append(said, c.Moves)
	}
	return append(said, "nothing else moves")
}

func standsAlone(words string) string {
	if strings.Contains(words, ", ") {
		return "“" + strings.ReplaceAll(words, ", ", "”, “") + "” stand alone"
	}
	return "“" + words + "” stands alone"
}

// fitting says whether the parts fit, and by how much they do not.
func fitting(c *Choice) string {
	var over []string
	for i := range c.Parts {
		if c.Parts[i].Overrun == 0 {
			continue
		}
		what := "part " + fmt.Sprint(i+1) + " "
		if len(c.Parts) == 1 {
			what = ""
		}
		over = append(over, fmt.Sprintf("%stoo long by %.1f pt", what, c.Parts[i].Overrun.Points()))
	}
	switch {
	case len(over) > 0:
		return strings.Join(over, ", ")
	case c.Head == LetTurn:
		return fmt.Sprintf("turns, on %s", counted(len(c.Rows), "row"))
	case len(c.Parts) == 1:
		return "fits"
	case len(c.Parts) == 2:
		return "both parts fit"
	}
	return "all parts fit"
}

// endings says which word ends each part but the last, and how.
func (f *finder) endings(c *Choice) []string {
	var all []string
	ends := "ends with “"
	if c.Head == LetTurn {
		ends = "turns after “" // the line goes on
	}
	for _, p := range c.Parts[:len(c.Parts)-1] {
		how := ", " + p.End.String()
		if !f.voice.lex.HasDictionary() && p.End != prosody.EndStopped {
			how = ""
		}
		all = append(all, ends+p.LastWord+"”"+how)
	}
	return all
}

// mostSigns is how many signs of a scansion stand without a space between.
const mostSigns = 24

// scansion writes stress in signs: / as the strongest, \ less, x none. Where they
// are many they stand in fours, which are no feet, so that a narrow leaf can part
// them and an eye count them.
func scansion(stress string) string {
	signs := strings.NewReplacer("0", "x", "1", "/", "2", `\`).Replace(stress)
	if len(signs) <= mostSigns {
		return signs
	}
	var fours []string
	for four := range slices.Chunk([]byte(signs), 4) {
		fours = append(fours, string(four))
	}
	return strings.Join(fours, " ")
}

// lengths says how many syllables the parts have, and which are stressed.
func (f *finder) lengths(parts []Part) string {
	unknown := func(p Part) bool { return p.Syllables == 0 }
	if !f.voice.lex.HasDictionary() && slices.ContainsFunc(parts, unknown) {
		return "syllables, stress and rhyme are told of English only"
	}
	counts, stresses := make([]string, len(parts)), make([]string, len(parts))
	var guesses []string
	for i, p := range parts {
		counts[i] = fmt.Sprint(p.Syllables)
		stresses[i] = scansion(p.Stress)
		guesses = append(guesses, p.Guesses...)
	}
	noun := " syllables: "
	if len(parts) == 1 && parts[0].Syllables == 1 {
		noun = " syllable: "
	}
	said := strings.Join(counts, " + ") + noun + strings.Join(stresses, " + ")
	if len(guesses) > 0 {
		slices.Sort(guesses)
		said += ", “" + strings.Join(slices.Compact(guesses), "”, “") + "” guessed"
	}
	return said
}
