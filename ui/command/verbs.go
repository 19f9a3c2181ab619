package command

import (
	"flag"
	"strings"
)

// verb is one job of the command line.
type verb struct {
	name  string
	usage string // after the verb's name
	does  string // in a few words
	more  string // what help says besides
	flags func(*flag.FlagSet) any
	run   func(c *call, options any, args []string) error
}

// verbs are all verbs, in the order of the work.
func verbs() []verb {
	return []verb{
		{"import", "MANUSCRIPT... -o FILE", "makes a new collection from manuscripts", importMore, importFlags, runImport},
		{"report", "FILE [--json] [--strict]", "says what does not fit, what is faulty, the extent and the contents", reportMore, reportFlags, runReport},
		{"choices", "FILE --poem P --stanza S --line L [--json] [--by MEASURE]", "says what each way of settling a line would do", choicesMore, choicesFlags, runChoices},
		{"mark-sent", "FILE [--round NAME]", "keeps the text and the pages as they go out", markSentMore, markSentFlags, runMarkSent},
		{"corrections", "FILE [--round NAME] [--json] [--pdf OUT] [--docx OUT] [--csv OUT] [--txt OUT] [--marked OUT]", "says what differs from the pages that went out", correctionsMore, correctionsFlags, runCorrections},
		{"export", "FILE --pdf OUT | --png DIR | --manuscript OUT [--spreads] [--marks] [--dummy [--paper P] [--section N]] [--edition] [--dpi N]", "writes the pages, or the text", exportMore, exportFlags, runExport},
		{"edit", "FILE SCRIPT", "does the edits of a script, each one step of the history", editMore, noFlags, runEdit},
		{"states", "FILE --poem P [--json]", "lists all that a poem was since it came in", statesMore, statesFlags, runStates},
		{"aloud", "FILE [READING] [--json] [--pdf OUT [--paper P]] [--card OUT]", "says how long a running order takes to read aloud, or the book", aloudMore, aloudFlags, runAloud},
		{"order", "FILE [--json] [--find CONDITIONS [--seconds N]]", "says what the order of the book costs, and looks for another", orderMore, orderFlags, runOrder},
		{"echoes", "FILE [--json]", "says what comes back in the book, and where", echoesMore, echoesFlags, runEchoes},
		{"help", "[VERB]", "says what there is, or more of one verb", "", noFlags, runHelp},
	}
}

func noFlags(*flag.FlagSet) any { return nil }

func verbNames() string {
	var names []string
	for _, v := range verbs() {
		names = append(names, v.name)
	}
	return strings.Join(names, ", ")
}

// do reads the verb's flags and does it.
func (c *call) do(v verb, args []string) error {
	set := flag.NewFlagSet(v.name, flag.ContinueOnError)
	options := v.flags(set)
	words, err := parse(set, v, args)
	if err == flag.ErrHelp {
		return c.helpWith(v)
	}
	if err != nil {
		return err
	}
	return v.run(c, options, words)
}
