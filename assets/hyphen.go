package assets

import _ "embed"

// The patterns are the files of those names in the collection of hyphenation
// patterns hyph-utf8, as Debian's texlive-lang-english 2022.20230122 carries
// them, unchanged. The licence of each stands at its head.
var (
	//go:embed hyphen/hyph-en-gb.tex
	hyphenBritish []byte

	//go:embed hyphen/hyph-en-us.tex
	hyphenAmerican []byte
)

// BritishPatterns returns F. M. Liang's kind of hyphenation patterns for words
// in British spelling, and after them words that they would divide wrongly: a
// file of TeX's, with \patterns{…} and \hyphenation{…}, in ASCII. The bytes
// belong to this package and must not be written to.
func BritishPatterns() []byte { return hyphenBritish }

// AmericanPatterns returns the same for American spelling.
func AmericanPatterns() []byte { return hyphenAmerican }
