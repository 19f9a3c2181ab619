package command

import (
	"flag"

	"headland/pagemodel/manuscript"
	"headland/ui/session"
)

const importMore = `The manuscripts, Markdown (.md) or text (.txt), are taken in the order in which
they are named. What was guessed about them is said. There must not be a FILE of
that name yet.

  -o FILE, --out FILE   the collection to make, usually ending in .headland
`

type importOptions struct{ out string }

func importFlags(set *flag.FlagSet) any {
	o := &importOptions{}
	set.StringVar(&o.out, "o", "", "")
	set.StringVar(&o.out, "out", "", "")
	return o
}

func runImport(c *call, options any, manuscripts []string) (err error) {
	o := options.(*importOptions)
	switch {
	case len(manuscripts) == 0:
		return misuse("import: name the manuscripts to import")
	case o.out == "":
		return misuse("import: say with -o which file to make, such as -o poems.headland")
	}
	s, notices, err := session.Import(o.out, manuscripts)
	c.say(notices)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	poems, lines := countText(s.Collection())
	c.out.printf("%s: %s of %s, from %s\n", o.out, counted(poems, "poem"), counted(lines, "line"), counted(len(manuscripts), "manuscript"))
	return nil
}

// say prints notices where errors go, as they are not what was asked for.
func (c *call) say(notices []manuscript.Notice) {
	for _, n := range notices {
		c.errs.printf("%v\n", n)
	}
}

// closing closes a session at the end of a verb; its error counts where there
// is no other.
func closing(s *session.Session, err *error) {
	if e := s.Close(); *err == nil {
		*err = e
	}
}
