package command

import (
	"flag"
	"path/filepath"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

const aloudMore = `READING is the name of a running order; without one it is the whole book in its
order. Times are reckoned from syllables, line ends, stanza ends, titles and what is
said between, in the voice that the file has: see the edits voice and fit-voice.
Each item has when it starts, how long it takes, the page to turn to, and how long
it took when it was last timed. Items marked to be dropped are, where the slot is
short, as few as will do. With --pdf or --card the list is written and not printed.

  --json      one JSON object, to read on, with times in seconds
  --pdf OUT   a copy in large type, to read from
  --paper P   the paper of that copy: A4 (if not said), A5 or Letter
  --card OUT  a card to tuck into the book, a PDF: pages, first words, times
`

type aloudOptions struct {
	set              *flag.FlagSet
	json             bool
	pdf, paper, card string
}

func aloudFlags(set *flag.FlagSet) any {
	o := &aloudOptions{set: set}
	set.BoolVar(&o.json, "json", false, "")
	set.StringVar(&o.pdf, "pdf", "", "")
	set.StringVar(&o.paper, "paper", "A4", "")
	set.StringVar(&o.card, "card", "", "")
	return o
}

// check says what is wrong with the outputs.
func (o *aloudOptions) check() error {
	for _, out := range []listFile{{"pdf", o.pdf, ".pdf"}, {"card", o.card, ".pdf"}} {
		if out.path != "" && !strings.EqualFold(filepath.Ext(out.path), out.ending) {
			return misuse("aloud: --%s writes a file that ends in %s, and %s does not: name it so", out.flag, out.ending, out.path)
		}
	}
	if o.pdf != "" && o.card != "" && filepath.Clean(o.pdf) == filepath.Clean(o.card) {
		return misuse("aloud: --pdf and --card both name %s: give one of them another name", o.card)
	}
	if given(o.set, "paper") && o.pdf == "" {
		return misuse("aloud: --paper is for --pdf: a card goes into the book")
	}
	papers := session.ReadingPapers()
	if !slices.ContainsFunc(papers, func(p string) bool { return strings.EqualFold(p, strings.TrimSpace(o.paper)) }) {
		return misuse("aloud: --paper %s is no paper that a copy can be set on: it is one of %s", o.paper, strings.Join(papers, ", "))
	}
	return nil
}

func runAloud(c *call, options any, words []string) (err error) {
	o := options.(*aloudOptions)
	if len(words) < 1 || len(words) > 2 {
		return misuse("aloud: name the collection's file and, if not the whole book is meant, one running order, in quotation marks if its name is of several words")
	}
	if err := o.check(); err != nil {
		return err
	}
	s, err := session.Open(words[0])
	if err != nil {
		return err
	}
	defer closing(s, &err)
	r := s.BookReading()
	if len(words) == 2 {
		if r, err = s.Collection().ReadingCalled(words[1]); err != nil {
			return err
		}
	}
	if err := c.writeReading(s, r, o); err != nil {
		return err
	}
	out := aloudOf(s.Committed(), s.Plan(r))
	switch {
	case o.json:
		return c.json(out)
	case o.pdf == "" && o.card == "":
		c.aloudProse(out)
	}
	return nil
}

// writeReading writes the files that were asked for, and says so where what is
// printed is not to be read on.
func (c *call) writeReading(s *session.Session, r pagemodel.Reading, o *aloudOptions) error {
	if o.pdf != "" {
		written, err := s.ReadingCopy(r, o.paper)
		if err == nil {
			err = written.PDF(o.pdf, nil)
		}
		if err != nil {
			return err
		}
	}
	if o.card != "" {
		if err := s.ExportCard(o.card, r); err != nil {
			return err
		}
	}
	for _, out := range []struct{ path, is string }{{o.pdf, "a copy in large type"}, {o.card, "a card"}} {
		if out.path != "" && !o.json {
			c.out.printf("%s: %s of %s\n", out.path, out.is, counted(len(r.Items), "item"))
		}
	}
	return nil
}
