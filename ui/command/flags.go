package command

import (
	"flag"
	"io"
	"slices"
	"strings"

	"headland/ui/session"
)

// parse reads a verb's flags, which may stand before, between or after the
// other words, and gives those. After "--" nothing is a flag.
func parse(set *flag.FlagSet, v verb, args []string) (words []string, err error) {
	set.SetOutput(io.Discard)
	set.Usage = func() {}
	var literal []string
	if i := slices.Index(args, "--"); i >= 0 {
		args, literal = args[:i], args[i+1:]
	}
	for len(args) > 0 {
		if err := set.Parse(args); err == flag.ErrHelp {
			return nil, err
		} else if err != nil {
			return nil, misuse("%s: %s. It is written headland %s %s", v.name, inWords(err), v.name, v.usage)
		}
		if args = set.Args(); len(args) > 0 {
			words, args = append(words, args[0]), args[1:]
		}
	}
	return append(words, literal...), nil
}

// inWords is what package flag has against a command line, with flags spelled
// as we spell them.
func inWords(err error) string {
	said := err.Error()
	if name, ok := strings.CutPrefix(said, "flag provided but not defined: "); ok {
		return "there is no flag " + doubled(name)
	}
	if name, ok := strings.CutPrefix(said, "flag needs an argument: "); ok {
		return "the flag " + doubled(name) + " needs something after it"
	}
	said = strings.TrimSuffix(said, ": parse error")
	return strings.NewReplacer(" for flag -", " for --", " for -", " for --").Replace(said)
}

// doubled is a flag with two dashes, or one where it is one letter.
func doubled(name string) string {
	name = strings.TrimLeft(name, "-")
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

// oneFile is the collection that a verb is about: just one word.
func oneFile(v string, words []string) (string, error) {
	switch len(words) {
	case 0:
		return "", misuse("%s: name the collection's file", v)
	case 1:
		return words[0], nil
	}
	return "", misuse("%s: it is about one file, and %q are %d", v, strings.Join(words, " "), len(words))
}

// openOne opens the one file that a verb is about, once its options are found right.
// The caller closes the session.
func openOne(v string, words []string, checks ...func() error) (*session.Session, error) {
	file, err := oneFile(v, words)
	if err != nil {
		return nil, err
	}
	for _, check := range checks {
		if err := check(); err != nil {
			return nil, err
		}
	}
	return session.Open(file)
}

// given says that a flag was on the command line.
func given(set *flag.FlagSet, name string) (yes bool) {
	set.Visit(func(f *flag.Flag) { yes = yes || f.Name == name })
	return yes
}
