package command

import (
	"flag"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

var markSentMore = `The text, the pages and the rows are kept as they went out; what differs from then
on is a correction, which headland corrections lists. It is one step of the history
and can be undone.

  --round NAME  what the round is called:
                ` + strings.Join(pagemodel.RoundNames, ", ") + `,
                or any other name; if not said, the one that comes next
`

type roundOptions struct{ round string }

func markSentFlags(set *flag.FlagSet) any {
	o := &roundOptions{}
	set.StringVar(&o.round, "round", "", "")
	return o
}

func runMarkSent(c *call, options any, words []string) (err error) {
	file, err := oneFile("mark-sent", words)
	if err != nil {
		return err
	}
	s, err := session.Open(file)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	if err := s.MarkSent(options.(*roundOptions).round); err != nil {
		return err
	}
	round, err := s.Collection().RoundCalled("")
	if err != nil {
		return err
	}
	c.out.printf("%s: marked as sent: %s, %s, %s\n", file, round.Name, round.On, counted(s.Committed().Extent(), "page"))
	return nil
}
