package prosody

import (
	"strconv"
	"strings"
)

// longestNumber is how many digits a number that is read as one has at most.
const longestNumber = 12

// number says a word with digits: "1,916" and "2" as numbers; "1916" as a year,
// or else as a number; "21st", "1990s"; "3.5" with its point and "4:30" as a
// time. Letters besides are said where they stand, as in "10am". Numbers are
// said as in Britain, with "and" behind hundreds.
func (l *Lexicon) number(word string) []string {
	if !strings.ContainsAny(word, "0123456789") {
		return nil
	}
	word = strings.ReplaceAll(word, ",", "")
	if whole, part, ok := strings.Cut(word, "."); ok {
		run := leadingDigits(part)
		return joined(l.number(whole), l.look("point"), l.digits(run), l.after(part[len(run):]))
	}
	if hour, minute, ok := strings.Cut(word, ":"); ok {
		return joined(l.number(hour), l.minutes(minute))
	}
	figures := leadingDigits(word)
	switch rest := word[len(figures):]; {
	case figures == "":
		letters := strings.IndexAny(word, "0123456789")
		return joined(l.ways(word[:letters]), l.number(word[letters:]))
	case rest == "":
		return l.figures(figures)
	case rest == "st" || rest == "nd" || rest == "rd" || rest == "th":
		return l.ordinal(figures)
	case rest == "s" || rest == "'s":
		return each(l.figures(figures), plural)
	default:
		return joined(l.figures(figures), l.ways(rest))
	}
}

// leadingDigits are the digits that a word begins with.
func leadingDigits(word string) string {
	return word[:len(word)-len(strings.TrimLeft(word, "0123456789"))]
}

// after says what stands behind a number, which may be nothing.
func (l *Lexicon) after(rest string) []string {
	if rest = strings.Trim(rest, ".:'"); rest == "" {
		return []string{""}
	}
	return l.ways(rest)
}

// figures says a run of digits: as a year where it can be one, and as a number;
// digit by digit where it begins with 0 or is longer than numbers are read.
func (l *Lexicon) figures(digits string) []string {
	n, err := strconv.Atoi(digits)
	if err != nil || len(digits) > longestNumber || len(digits) > 1 && digits[0] == '0' {
		return l.digits(digits)
	}
	ways := l.say(cardinal(n))
	if n > 1099 && n < 2000 || n > 2009 && n < 2100 {
		ways = append(l.say(year(n)), ways...)
	}
	return ways
}

// digits says digits one by one.
func (l *Lexicon) digits(digits string) []string {
	var names []string
	for _, d := range digits {
		names = append(names, small[d-'0'])
	}
	return l.say(names)
}

// minutes says what stands behind the colon of a time: nothing for the full
// hour, "oh five" for 05.
func (l *Lexicon) minutes(digits string) []string {
	switch n, err := strconv.Atoi(digits); {
	case err != nil || len(digits) != 2:
		return l.after(strings.ReplaceAll(digits, ":", "-"))
	case n == 0:
		return []string{""}
	case n < 10:
		return l.say([]string{"oh", small[n]})
	default:
		return l.say(cardinal(n))
	}
}

// ordinal says a number as an ordinal: twenty-first.
func (l *Lexicon) ordinal(digits string) []string {
	n, err := strconv.Atoi(digits)
	if err != nil || len(digits) > longestNumber {
		return l.digits(digits)
	}
	names := cardinal(n)
	last := &names[len(names)-1]
	switch irregular, stem := ordinals[*last], strings.TrimSuffix(*last, "y"); {
	case irregular != "":
		*last = irregular
	case stem != *last:
		*last = stem + "ieth"
	default:
		*last += "th"
	}
	return l.say(names)
}

// say says words one after another, each in its usual way; a number that is one
// word in all its ways.
func (l *Lexicon) say(names []string) []string {
	if len(names) == 1 {
		return l.ways(names[0])
	}
	var parts [][]string
	for _, name := range names {
		parts = append(parts, l.ways(name)[:1])
	}
	return joined(parts...)
}

// plural is a number's way with a plural s, as in the nineties.
func plural(way string) string {
	if endsIn(way, sibilants) {
		return way + " IH0 Z"
	}
	return way + " Z"
}
