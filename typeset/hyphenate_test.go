package typeset

import (
	"os"
	"slices"
	"strings"
	"testing"
)

// divided is a text with a hyphen wherever the hyphenator would part it.
func divided(h *hyphenator, text string) string {
	var b strings.Builder
	last := 0
	for _, at := range h.divisions(text) {
		b.WriteString(text[last:at] + "-")
		last = at
	}
	return b.String() + text[last:]
}

// TestTeXDividesAlike: each word of the lists is divided as TeX divided it. How
// TeX was asked stands at the head of the lists.
func TestTeXDividesAlike(t *testing.T) {
	for file, language := range map[string]string{
		"testdata/hyphenated-en-gb.txt": "en-GB", "testdata/hyphenated-en-us.txt": "en-US",
	} {
		list, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		h, words := hyphenatorFor(language), 0
		for line := range strings.Lines(string(list)) {
			want := strings.TrimSpace(line)
			if strings.HasPrefix(want, "#") {
				continue
			}
			words++
			if got := divided(h, strings.ReplaceAll(want, "-", "")); got != want {
				t.Errorf("%s: %s, but TeX gives %s", language, got, want)
			}
		}
		if words < 300 {
			t.Errorf("%s holds %d words, want some hundred", file, words)
		}
	}
}

// TestLiangsExample: "hyphenation" under the American patterns, the example
// that Liang's thesis and The TeXbook, appendix H, work through (from memory).
func TestLiangsExample(t *testing.T) {
	if got := divided(hyphenatorFor("en-US"), "hyphenation"); got != "hy-phen-ation" {
		t.Errorf("hyphenation is divided as %s", got)
	}
}

// TestDivisible: what of a text may be divided at all.
func TestDivisible(t *testing.T) {
	h := hyphenatorFor("")
	for text, want := range map[string]string{
		"“Breakfast,” he said.":       "“Break-fast,” he said.",
		"(UNIVERSITY)":                "(UNI-VER-SITY)",
		"the apprentice’s flour":      "the ap-pren-tice’s flour",
		"window—morning":              "win-dow—morn-ing",
		"morning\u00a0window":         "morn-ing\u00a0win-dow",
		"breakfast’window":            "breakfast’window",
		"couldn’t":                    "couldn’t",
		"self-raising breakfast":      "self-raising break-fast",
		"un\u00adiversity":            "un\u00adiversity",
		"breakfást":                   "breakfást",
		"window7 7window win.dow.org": "window7 7window win.dow.org",
		"into also again":             "into also again",
		"":                            "",
	} {
		if got := divided(h, text); got != want {
			t.Errorf("%q is divided as %q, want %q", text, got, want)
		}
	}
}

// TestLettersLeftAndCarried: at least two letters stay and three go over (Hart's
// Rules, appendix), in every word of the lists.
func TestLettersLeftAndCarried(t *testing.T) {
	list, err := os.ReadFile("testdata/hyphenated-en-gb.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range strings.Fields(strings.ReplaceAll(string(list), "-", "")) {
		for _, language := range []string{"en-GB", "en-US"} {
			for _, at := range hyphenatorFor(language).divisions(word) {
				if at < 2 || len(word)-at < 3 {
					t.Errorf("%s: %s is divided after %d of %d letters", language, word, at, len(word))
				}
			}
		}
	}
}

// TestLanguages: which patterns a language gets, if any.
func TestLanguages(t *testing.T) {
	for language, want := range map[string]*hyphenator{
		"": british(), "en": british(), "en-GB": british(), "EN-ie": british(), "en-AU": british(),
		"en-US": american(), "en-us": american(), "en-Latn-US": american(),
		"fr": nil, "de-CH": nil, "cy": nil, "es-US": nil, "enm": nil, "x-en": nil,
	} {
		if hyphenatorFor(language) != want {
			t.Errorf("%q gets the wrong patterns", language)
		}
	}
}

// TestExceptions: the words that a pattern file lists itself come out as it
// lists them.
func TestExceptions(t *testing.T) {
	h := parseHyphenator([]byte("% a note { }\n\\patterns{ % more\n1b\n}\n\\hyphenation{\ncab-bage\n}\n"))
	if got := divided(h, "cabbage abbot"); got != "cab-bage ab-bot" {
		t.Errorf("divided as %q", got)
	}
	if got := h.points("aaabbaa"); !slices.Equal(got, []int{3, 4}) {
		t.Errorf("the pattern 1b parts aaabbaa at %v", got)
	}
}
