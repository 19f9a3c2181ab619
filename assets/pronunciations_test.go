package assets

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
)

// arpabet are the 39 phonemes of the CMU Pronouncing Dictionary: 15 vowels and
// 24 consonants (its own table cmudict-0.7b.phones; here from memory).
const (
	arpabetVowels     = "AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW"
	arpabetConsonants = "B CH D DH F G HH JH K L M N NG P R S SH T TH V W Y Z ZH"
)

// pronunciationLines are the lines of the dictionary, unpacked.
func pronunciationLines(t *testing.T) []string {
	t.Helper()
	unpacked, err := gzip.NewReader(bytes.NewReader(Pronunciations()))
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(unpacked)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
}

// TestPronunciations sees that the dictionary has the form that its doc
// comment promises to who reads it.
func TestPronunciations(t *testing.T) {
	lines := pronunciationLines(t)
	if len(lines) != 125_925 {
		t.Errorf("the dictionary has %d words, want 125,925", len(lines))
	}
	phonemes := map[string]bool{}
	for _, p := range strings.Fields(arpabetConsonants) {
		phonemes[p] = false
	}
	for _, p := range strings.Fields(arpabetVowels) {
		phonemes[p+"0"], phonemes[p+"1"], phonemes[p+"2"] = true, true, true
	}
	before := ""
	for _, line := range lines {
		word, ways, _ := strings.Cut(line, "\t")
		if word <= before {
			t.Errorf("%q stands after %q", word, before)
		}
		before = word
		for way := range strings.SplitSeq(ways, "\t") {
			vowel := false
			for p := range strings.SplitSeq(way, " ") {
				isVowel, known := phonemes[p]
				if !known {
					t.Errorf("%q has %q, which is no phoneme", line, p)
				}
				vowel = vowel || isVowel
			}
			if !vowel {
				t.Errorf("%q has %q without a vowel", line, way)
			}
		}
	}
}

// TestPronunciationsOfWords compares words with the entries of the CMU
// Pronouncing Dictionary 0.7b, from memory.
func TestPronunciationsOfWords(t *testing.T) {
	lines := pronunciationLines(t)
	for _, want := range []string{
		"'tis\tT IH1 Z",
		"cat\tK AE1 T",
		"every\tEH1 V ER0 IY0\tEH1 V R IY0",
		"fire\tF AY1 ER0\tF AY1 R",
		"poetry\tP OW1 AH0 T R IY0",
	} {
		if !slices.Contains(lines, want) {
			t.Errorf("the dictionary lacks %q", want)
		}
	}
}

// TestPronunciationsLicence sees that the file is the one whose origin and
// licences are written down beside it.
func TestPronunciationsLicence(t *testing.T) {
	licence, err := os.ReadFile("pronunciations/LICENSE.txt")
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(Pronunciations())
	for _, want := range []string{
		hex.EncodeToString(sum[:]),
		"Carnegie Mellon University. All rights reserved.\n\nRedistribution and use in source and binary forms",
		"Permission to use, copy, modify, and/or distribute this software",
	} {
		if !strings.Contains(string(licence), want) {
			t.Errorf("pronunciations/LICENSE.txt does not hold %q", want)
		}
	}
}
