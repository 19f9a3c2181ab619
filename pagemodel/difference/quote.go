package difference

import (
	"fmt"
	"strconv"
	"strings"

	"headland/pagemodel"
)

// quotedWords is how many words of a line are quoted on either side of a place.
const quotedWords = 8

// sign is a boundary as it is quoted.
func (b *boundary) sign() string {
	switch b.level {
	case within:
		return b.lead
	case lineEnd:
		return " / "
	}
	return " // "
}

// said is the words of tokens, without the boundary before the first.
func said(tokens []token) string {
	var b strings.Builder
	for i := range tokens {
		if i > 0 {
			b.WriteString(tokens[i].sign())
		}
		b.WriteString(tokens[i].text)
		b.WriteString(voidWords[tokens[i].void])
	}
	return b.String()
}

// quote is the words of tokens in quotation marks, with their style where they all
// have one.
func quote(tokens []token) string { return quoteBetween("", tokens, "") }

// quoteBetween is quote with the signs of the ends of line or stanza that stand
// before the words and behind them.
func quoteBetween(before string, tokens []token, behind string) string {
	q := quotedTokens(before, tokens, behind)
	if style := commonStyle(tokens); style != "" {
		q += " in " + style
	}
	return q
}

// endSign is the sign of a boundary; "" where it ends no line.
func (b *boundary) endSign() string {
	if b.level == within {
		return ""
	}
	return b.sign()
}

// commonStyle is the style that all of the words have, in words; "" where they are
// plain or differ.
func commonStyle(tokens []token) string {
	style := pagemodel.Italic | pagemodel.Bold | pagemodel.SmallCaps
	for i := range tokens {
		if len(tokens[i].styles) == 0 {
			return ""
		}
		for _, s := range []byte(tokens[i].styles) {
			style &= pagemodel.Style(s)
		}
	}
	return styleWords(style)
}

func styleWords(style pagemodel.Style) string {
	var words []string
	for _, s := range styles {
		if style&s.style != 0 {
			words = append(words, s.on)
		}
	}
	return strings.Join(words, " and ")
}

// above is the words of the printed line that ends before token i, the last few of
// them; below those of the line from i on.
func (b *body) above(i int) []token {
	from := i
	for from > 0 && i-from < quotedWords {
		if from--; b.tokens[from].level > within {
			break
		}
	}
	return b.tokens[from:i]
}

func (b *body) below(i int) []token {
	to := i + 1
	for to < len(b.tokens) && to-i < quotedWords && b.tokens[to].level == within {
		to++
	}
	return b.tokens[i:to]
}

// across quotes the words on both sides of token i's boundary with a sign between.
func (b *body) across(i int, at *boundary) string {
	lower := b.below(i)
	if i == 0 {
		return quotedTokens(at.sign(), lower, "")
	}
	upper := b.above(i)
	q := quotation{words: b.dotsBefore(i - len(upper))}
	q.tokens(upper)
	q.words += at.sign()
	q.tokens(lower)
	q.words += b.dotsAfter(i + len(lower))
	return q.String()
}

// beginning quotes the first words of the printed line that token i begins.
func (b *body) beginning(i int) string {
	lower := b.below(i)
	return quotedTokens("", lower, b.dotsAfter(i+len(lower)))
}

// dotsBefore and dotsAfter say that the line goes on beyond the words quoted.
func (b *body) dotsBefore(i int) string {
	if b.tokens[i].level == within {
		return "… "
	}
	return ""
}

func (b *body) dotsAfter(i int) string {
	if i < len(b.tokens) && b.tokens[i].level == within {
		return " …"
	}
	return ""
}

// spaceWords says what stands before a word.
func spaceWords(b *boundary) string {
	var words string
	switch {
	case b.gap != "":
		words = b.gap
		if b.lead == "" {
			words += " and no space"
		}
	case b.level > within && b.lead == "":
		return "nothing before it"
	case b.lead == "":
		return "no space"
	case b.lead == " ":
		return "a word space"
	}
	if b.lead != "" && b.lead != " " {
		words = strings.TrimPrefix(words+" and "+leadWords(b.lead), " and ")
	}
	return words
}

// leadWords names white characters that are no single word space.
func leadWords(lead string) string {
	if n := strings.Count(lead, " "); n == len(lead) {
		return fmt.Sprintf("%d word spaces", n)
	}
	var names []string
	for _, r := range lead {
		name := "word space"
		if r != ' ' {
			name = unseenName(r)
		}
		names = append(names, an(name))
	}
	return strings.Join(names, " and ")
}

// ems and points are lengths as they are written in a list.
func ems(e pagemodel.Em) string { return strconv.FormatFloat(e.Ems(), 'f', -1, 64) + " em" }

func points(l pagemodel.Length) string { return strconv.FormatFloat(l.Points(), 'f', -1, 64) + " pt" }

// indentWords says how far a line is indented.
func indentWords(e pagemodel.Em) string {
	if e == 0 {
		return "not indented"
	}
	return "indented " + ems(e)
}

// linesOfWhite says how much white there is.
func linesOfWhite(n int32) string {
	switch n {
	case 0:
		return "no white"
	case 1:
		return "a line of white"
	}
	return fmt.Sprintf("%d lines of white", n)
}
