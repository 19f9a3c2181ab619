package assets

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// frequencyLines are the lines of the table, unpacked.
func frequencyLines(t *testing.T) []string {
	t.Helper()
	unpacked, err := gzip.NewReader(bytes.NewReader(Frequencies()))
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(unpacked)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
}

// TestFrequencies sees that the table has the form that its doc comment
// promises to who reads it.
func TestFrequencies(t *testing.T) {
	lines := frequencyLines(t)
	if len(lines) != 36_904 {
		t.Errorf("the table has %d words, want 36,904", len(lines))
	}
	form := regexp.MustCompile(`^[a-z]+\t\d+\t\d+(\t[a-z]+)?$`)
	var words, bases []string
	for _, line := range lines {
		if !form.MatchString(line) {
			t.Errorf("%q is no line of the table", line)
		}
		fields := strings.Split(line, "\t")
		words, bases = append(words, fields[0]), append(bases, fields[3:]...)
	}
	if !slices.IsSorted(words) || len(slices.Compact(slices.Clone(words))) != len(words) {
		t.Error("the words are not in order, each once")
	}
	for _, base := range bases {
		if _, ok := slices.BinarySearch(words, base); !ok {
			t.Errorf("%q is a base word but not in the table", base)
		}
	}
}

// TestFrequenciesOfWords compares lines with what was counted in the source by
// other means: grep for the running text, and for the senses a sum of their
// lines in cntlist.rev.
func TestFrequenciesOfWords(t *testing.T) {
	lines := frequencyLines(t)
	for _, want := range []string{"loaves\t5\t0\tloaf", "men\t278\t35\tman", "said\t209\t2\tsay", "bread\t153\t10", "oven\t38\t2"} {
		if !slices.Contains(lines, want) {
			t.Errorf("the table lacks %q", want)
		}
	}
}

// TestFrequenciesLicence sees that the file is the one whose origin and licence
// are written down beside it.
func TestFrequenciesLicence(t *testing.T) {
	licence, err := os.ReadFile("frequencies/LICENSE.txt")
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(Frequencies())
	for _, want := range []string{
		hex.EncodeToString(sum[:]),
		"WordNet 3.0 Copyright 2006 by Princeton University.  All rights reserved.",
		"Permission to use, copy, modify and distribute this software",
		"same appear on ALL copies of the software",
	} {
		if !strings.Contains(string(licence), want) {
			t.Errorf("frequencies/LICENSE.txt does not hold %q", want)
		}
	}
}
