package command

import (
	"flag"
	"strings"
	"unicode/utf8"

	"headland/pagemodel"
	"headland/typeset/choices"
	"headland/ui/session"
)

const choicesMore = `A line may be any line of verse, overlong or not; stanzas are counted through the
whole poem. What a choice does is read from the book set with it: whether all fits,
what ends each part and how, what stands alone, syllables and stress (/ stressed,
\ less, x not), what ends alike or is as long near it, and what moves. None is
called good or bad. Nothing in the file is changed.

  --poem P      the poem's number, or its title
  --stanza S    the stanza, from 1
  --line L      the line in it, from 1
  --by MEASURE  puts the choices under each head in order: place (if not said),
                overrun, rows, end (stopped, at a phrase, without a stop, against
                the syntax), moves (other poems that do), syllables (how uneven
                the parts are)
  --json        a list of them, to read on; "at" counts characters, as edit does
`

type choicesOptions struct {
	poem, by     string
	stanza, line int
	json         bool
}

func choicesFlags(set *flag.FlagSet) any {
	o := &choicesOptions{}
	set.StringVar(&o.poem, "poem", "", "")
	set.IntVar(&o.stanza, "stanza", 0, "")
	set.IntVar(&o.line, "line", 0, "")
	set.StringVar(&o.by, "by", choices.ByPlace.String(), "")
	set.BoolVar(&o.json, "json", false, "")
	return o
}

func runChoices(c *call, options any, words []string) (err error) {
	o := options.(*choicesOptions)
	file, err := oneFile("choices", words)
	if err != nil {
		return err
	}
	by, err := choices.ParseMeasure(o.by)
	if err != nil {
		return misuse("choices: --by: %v", err)
	}
	if o.poem == "" || o.stanza < 1 || o.line < 1 {
		return misuse("choices: say which line, by --poem, --stanza and --line, counted from 1")
	}
	s, err := session.Open(file)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	ref, line, err := o.find(s)
	if err != nil {
		return err
	}
	all, err := s.Choices(ref)
	if err != nil {
		return err
	}
	choices.Order(all, by)
	if o.json {
		return c.choicesJSON(line, all)
	}
	c.choicesProse(line, all)
	return nil
}

// find is the line that is meant.
func (o *choicesOptions) find(s *session.Session) (pagemodel.LineRef, pagemodel.Line, error) {
	p, err := s.Collection().PoemCalled(o.poem)
	if err != nil {
		return pagemodel.LineRef{}, pagemodel.Line{}, err
	}
	at, err := p.At(o.stanza, o.line)
	if err != nil {
		return pagemodel.LineRef{}, pagemodel.Line{}, err
	}
	return pagemodel.LineRef{Poem: p.ID(), Line: p.Line(at).ID()}, p.Line(at), nil
}

// choice is a choice as other programs read it: names are added, never changed.
type choice struct {
	Head   string   `json:"head"`
	Title  string   `json:"title"`
	At     []int    `json:"at"` // characters before each place
	Parts  []part   `json:"parts"`
	Alone  string   `json:"alone"`
	Echoes []string `json:"echoes"`
	Moves  string   `json:"moves"`
	Says   []string `json:"says"`
}

type part struct {
	Text      string  `json:"text"`
	Overrun   float64 `json:"overrun_pt"`
	Syllables int     `json:"syllables"`
	Stress    string  `json:"stress"`
	Guessed   bool    `json:"guessed"`
	End       string  `json:"end"`
	LastWord  string  `json:"last_word"`
}

func (c *call) choicesJSON(line pagemodel.Line, all []choices.Choice) error {
	list := make([]choice, len(all))
	for i := range all {
		list[i] = choiceOf(line, &all[i])
	}
	return c.json(list)
}

func choiceOf(line pagemodel.Line, one *choices.Choice) choice {
	out := choice{
		Head: one.Head.String(), Title: one.Title, At: []int{}, Parts: []part{},
		Alone: one.Alone, Echoes: append([]string{}, one.Echoes...), Moves: one.Moves, Says: one.Says,
	}
	for _, at := range one.At {
		out.At = append(out.At, utf8.RuneCountInString(line.Text()[:at]))
	}
	for _, p := range one.Parts {
		out.Parts = append(out.Parts, part{p.Text, points(p.Overrun), p.Syllables, p.Stress, p.Guessed, p.End.String(), p.LastWord})
	}
	return out
}

// choicesProse prints the choices head by head, with the line as each would have
// it: a stroke where it breaks or turns.
func (c *call) choicesProse(line pagemodel.Line, all []choices.Choice) {
	c.out.printf("%s\n", line.Text())
	if len(all) == 0 {
		c.out.printf("\nThere is nothing to choose.\n")
	}
	for i := range all {
		if i == 0 || all[i].Head != all[i-1].Head {
			head := all[i].Head.String()
			c.out.printf("\n%s%s\n", strings.ToUpper(head[:1]), head[1:])
		}
		c.out.printf("  %s\n      %s\n      %s\n", all[i].Title, strings.Join(textsOf(all[i].Parts), " | "), strings.Join(all[i].Says, "; "))
	}
	c.out.printf("\n%s\n", counted(len(all), "choice"))
}

func textsOf(parts []choices.Part) []string {
	var texts []string
	for _, p := range parts {
		texts = append(texts, p.Text)
	}
	return texts
}
