package command

import (
	"flag"
	"path/filepath"
	"strings"

	"headland/pagemodel"
	"headland/typeset/corrections"
	"headland/ui/session"
)

const correctionsMore = `A correction is whatever differs from the pages of a round as they went out, up to
the round after it, or to today. Page, row, stanza and line are those that were
sent. Without a flag the list is printed; with one or more of --pdf, --docx, --csv,
--txt and --marked it is written, and what is at OUT is replaced.

  --round NAME   the round, if not the last: see headland mark-sent
  --json         a list of them, to read on
  --pdf OUT      the list, to be printed
  --docx OUT     the list, for a word processor
  --csv OUT      the list, for a table
  --txt OUT      the list, for a mail
  --marked OUT   the marked proof, a PDF: the pages as sent, with the correction
                 marks drawn on them
`

type correctionsOptions struct {
	round, pdf, docx, csv, txt, marked string
	json                               bool
}

func correctionsFlags(set *flag.FlagSet) any {
	o := &correctionsOptions{}
	set.StringVar(&o.round, "round", "", "")
	set.BoolVar(&o.json, "json", false, "")
	set.StringVar(&o.pdf, "pdf", "", "")
	set.StringVar(&o.docx, "docx", "", "")
	set.StringVar(&o.csv, "csv", "", "")
	set.StringVar(&o.txt, "txt", "", "")
	set.StringVar(&o.marked, "marked", "", "")
	return o
}

// listFile is a file to be written, and what its name must end in.
type listFile struct{ flag, path, ending string }

// outputs are the files that were asked for.
func (o *correctionsOptions) outputs() []listFile {
	var all []listFile
	for _, out := range []listFile{
		{"pdf", o.pdf, ".pdf"}, {"docx", o.docx, ".docx"}, {"csv", o.csv, ".csv"}, {"txt", o.txt, ".txt"}, {"marked", o.marked, ".pdf"},
	} {
		if out.path != "" {
			all = append(all, out)
		}
	}
	return all
}

// check says what is wrong with the outputs.
func (o *correctionsOptions) check() error {
	taken := map[string]string{}
	for _, out := range o.outputs() {
		if !strings.EqualFold(filepath.Ext(out.path), out.ending) {
			return misuse("corrections: --%s writes a file that ends in %s, and %s does not: name it so", out.flag, out.ending, out.path)
		}
		if before := taken[filepath.Clean(out.path)]; before != "" {
			return misuse("corrections: --%s and --%s both name %s: give one of them another name", before, out.flag, out.path)
		}
		taken[filepath.Clean(out.path)] = out.flag
	}
	return nil
}

func runCorrections(c *call, options any, words []string) (err error) {
	o := options.(*correctionsOptions)
	s, err := openOne("corrections", words, o.check)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	round, err := s.Collection().RoundCalled(o.round)
	if err != nil {
		return err
	}
	list, err := s.Corrections(round.ID)
	if err != nil {
		return err
	}
	if err := c.writeCorrections(s, round, list, o); err != nil {
		return err
	}
	switch {
	case o.json:
		return c.json(correctionsOf(list))
	case len(o.outputs()) == 0:
		return list.WriteText(c.out)
	}
	return nil
}

// writeCorrections writes the files that were asked for, and says so where what is
// printed is not to be read on.
func (c *call) writeCorrections(s *session.Session, round pagemodel.Round, list *corrections.List, o *correctionsOptions) error {
	for _, out := range o.outputs() {
		var err error
		if out.flag == "marked" {
			err = s.ExportMarkedProof(out.path, round.ID, nil)
		} else {
			err = s.ExportCorrections(out.path, round.ID)
		}
		if err != nil {
			return err
		}
		if !o.json {
			c.out.printf("%s: %s of %s\n", out.path, counted(len(list.All), "correction"), list.Round.Name)
		}
	}
	return nil
}

// correction is one as other programs read it: names are added, never changed.
type correction struct {
	Number   int    `json:"number"`
	Kind     string `json:"kind"`
	Poem     string `json:"poem"` // what it is known by, as sent; "" of the book
	Stanza   int    `json:"stanza"`
	Line     int    `json:"line"`
	Page     string `json:"page"`
	Row      int    `json:"row"`
	Was      string `json:"was"`
	Is       string `json:"is"`
	Reason   string `json:"reason"`
	Whose    string `json:"whose"`
	State    string `json:"state"`
	Moves    string `json:"moves"`
	Question string `json:"question"`
	Answer   string `json:"answer"`
}

func correctionsOf(list *corrections.List) []correction {
	all := make([]correction, len(list.All))
	for i, one := range list.All {
		all[i] = correction{
			Number: one.Number, Kind: string(one.Change.Kind), Poem: one.Title, Stanza: one.Stanza, Line: one.LineNumber,
			Page: one.Page, Row: one.Row, Was: one.Change.Was, Is: one.Change.Is, Reason: one.Reason, Whose: string(one.Whose),
			State: one.State.String(), Moves: one.Moves, Question: one.Question, Answer: one.Answer,
		}
	}
	return all
}
