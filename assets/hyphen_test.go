package assets

import (
	"bytes"
	"testing"
)

// TestHyphenPatterns sees that each file holds patterns and exceptions, and
// the licence under which it is passed on.
func TestHyphenPatterns(t *testing.T) {
	for licence, file := range map[string][]byte{
		"Permission is hereby granted, free of charge":                         BritishPatterns(),
		"Copying and distribution of this file, with or without modification,": AmericanPatterns(),
	} {
		for _, want := range []string{licence, "copyright: Copyright (C)", "\n\\patterns{", "\n\\hyphenation{"} {
			if !bytes.Contains(file, []byte(want)) {
				t.Errorf("the patterns that begin %.60q do not hold %q", file, want)
			}
		}
	}
}
