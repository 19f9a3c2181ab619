package ui

import (
	"fmt"
	"strconv"
	"strings"

	"headland/pagemodel"
)

// designValue is one value of a design, as the sheet shows and changes it.
type designValue struct {
	name string
	// words are the value with its unit.
	words func(d *pagemodel.Design) string
	// step goes by so many sensible steps; nil where there are none.
	step func(d *pagemodel.Design, by int)
	// typed takes a value as it is typed; nil where it can't be.
	typed func(d *pagemodel.Design, text string) error
}

// valueGroup is values that go together, under a word that stands beside them.
type valueGroup struct {
	words  string
	values []designValue
}

// choiceOf is a value that is one of some, in words, and goes round.
func choiceOf[T comparable](name string, field func(*pagemodel.Design) *T, all []T, words func(T) string) designValue {
	return designValue{
		name:  name,
		words: func(d *pagemodel.Design) string { return words(*field(d)) },
		step:  func(d *pagemodel.Design, by int) { *field(d) = beside(all, *field(d), by) },
	}
}

// beside is what stands so many places after a value, round the end; the first
// or the last where the value is not among them.
func beside[T comparable](all []T, now T, by int) T {
	for i, v := range all {
		if v == now {
			return all[((i+by)%len(all)+len(all))%len(all)]
		}
	}
	if by < 0 {
		return all[len(all)-1]
	}
	return all[0]
}

// named is a choice among values that have words of their own.
func named[T interface {
	comparable
	fmt.Stringer
}](name string, field func(*pagemodel.Design) *T, all ...T) designValue {
	return choiceOf(name, field, all, func(v T) string { return v.String() })
}

// yesOrNo is a value that holds or does not.
func yesOrNo(name, yes, no string, field func(*pagemodel.Design) *bool) designValue {
	return choiceOf(name, field, []bool{false, true}, func(v bool) string {
		if v {
			return yes
		}
		return no
	})
}

// lengthUnit is a unit that lengths are shown and typed in.
type lengthUnit struct {
	suffix string
	number func(pagemodel.Length) float64
	of     func(float64) pagemodel.Length
}

var (
	inMM = lengthUnit{"mm", pagemodel.Length.Millimetres, pagemodel.MM}
	inPt = lengthUnit{"pt", pagemodel.Length.Points, pagemodel.Pt}
)

// words are a length with its unit, to a hundredth.
func (u lengthUnit) words(l pagemodel.Length) string {
	number := strconv.FormatFloat(u.number(l), 'f', 2, 64)
	return strings.TrimRight(strings.TrimRight(number, "0"), ".") + " " + u.suffix
}

// parse reads a length: a bare number is in this unit.
func (u lengthUnit) parse(text string) (pagemodel.Length, error) {
	text = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	if strings.TrimRight(text, "0123456789.") == "" {
		text += u.suffix
	}
	return pagemodel.ParseLength(text)
}

// lengthOf is a length in a unit; a step lands on whole steps.
func lengthOf(name string, u lengthUnit, step float64, field func(*pagemodel.Design) *pagemodel.Length) designValue {
	return designValue{
		name:  name,
		words: func(d *pagemodel.Design) string { return u.words(*field(d)) },
		step:  func(d *pagemodel.Design, by int) { *field(d) = u.stepped(*field(d), step, by) },
		typed: func(d *pagemodel.Design, text string) error {
			l, err := u.parse(text)
			if err == nil {
				*field(d) = l
			}
			return err
		},
	}
}

// stepped is a length so many steps on, on a whole number of steps.
func (u lengthUnit) stepped(l pagemodel.Length, step float64, by int) pagemodel.Length {
	const hair = 0.02 // of a step, lost where a length was rounded to 1/64 pt
	at := u.number(l) / step
	whole := float64(int(at + hair))
	if by < 0 && at-whole > hair {
		whole++
	}
	return u.of((whole + float64(by)) * step)
}

// countOf is a whole number with words round it.
func countOf(name string, step int, field func(*pagemodel.Design) *int, words func(int) string) designValue {
	return designValue{
		name:  name,
		words: func(d *pagemodel.Design) string { return words(*field(d)) },
		step:  func(d *pagemodel.Design, by int) { *field(d) += by * step },
		typed: func(d *pagemodel.Design, text string) error {
			n, err := strconv.Atoi(strings.TrimSpace(text))
			if err != nil {
				return fmt.Errorf("%q is no whole number: write one such as %d", text, *field(d))
			}
			*field(d) = n
			return nil
		},
	}
}

// counted is a number of things in words.
func counted(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}
