package command

import "strings"

func runHelp(c *call, _ any, words []string) error { return c.help(words) }

// help says what there is, or more of one verb.
func (c *call) help(words []string) error {
	if len(words) == 0 {
		c.overview()
		return nil
	}
	for _, v := range verbs() {
		if v.name == words[0] && len(words) == 1 {
			return c.helpWith(v)
		}
	}
	return misuse("there is no verb %q: it is one of %s", strings.Join(words, " "), verbNames())
}

func (c *call) overview() {
	c.out.printf("Headland sets a collection of poems on the pages of a book.\n\n")
	c.out.printf("  headland [FILE]\n      opens the window; a manuscript (.md, .txt) is imported beside itself\n")
	c.out.printf("  headland --demo\n      opens a collection to try it out; without a display, sets it and\n      writes its pages under ./out\n")
	for _, v := range verbs() {
		c.out.printf("  headland %s %s\n      %s\n", v.name, v.usage, v.does)
	}
	c.out.printf("  headland --version\n      says which version this is\n\n")
	c.out.printf("Exit status: 0 done; 1 --strict found something; 2 the command line is wrong;\n3 it could not be done.\n")
}

func (c *call) helpWith(v verb) error {
	c.out.printf("headland %s %s\n\nIt %s.\n", v.name, v.usage, v.does)
	if v.more != "" {
		c.out.printf("\n%s", v.more)
	}
	return nil
}
