package prosody

import "strings"

// The names of numbers that are one word.
var (
	small = strings.Fields(`zero one two three four five six seven eight nine ten eleven twelve thirteen
		fourteen fifteen sixteen seventeen eighteen nineteen`)
	tens   = strings.Fields("zero ten twenty thirty forty fifty sixty seventy eighty ninety")
	powers = []struct {
		of   int
		name string
	}{{1e9, "billion"}, {1e6, "million"}, {1e3, "thousand"}}
	ordinals = map[string]string{
		"one": "first", "two": "second", "three": "third", "five": "fifth", "eight": "eighth", "nine": "ninth", "twelve": "twelfth",
	}
)

// cardinal is a number in words, as in Britain: one hundred and one.
func cardinal(n int) []string {
	if n == 0 {
		return []string{small[0]}
	}
	var names []string
	for _, p := range powers {
		if n >= p.of {
			names = append(append(names, cardinal(n/p.of)...), p.name)
			n %= p.of
		}
	}
	if n >= 100 {
		names = append(names, small[n/100], "hundred")
		n %= 100
	}
	if n > 0 && len(names) > 0 {
		names = append(names, "and")
	}
	return append(names, underHundred(n)...)
}

// underHundred is a number from 0 to 99 in words; none for 0.
func underHundred(n int) []string {
	switch {
	case n == 0:
		return nil
	case n < len(small):
		return []string{small[n]}
	case n%10 == 0:
		return []string{tens[n/10]}
	}
	return []string{tens[n/10], small[n%10]}
}

// year is a number of four digits as years are said: nineteen sixteen, nineteen
// oh five, nineteen hundred.
func year(n int) []string {
	names := underHundred(n / 100)
	switch rest := n % 100; {
	case rest == 0:
		return append(names, "hundred")
	case rest < 10:
		return append(names, "oh", small[rest])
	default:
		return append(names, underHundred(rest)...)
	}
}
