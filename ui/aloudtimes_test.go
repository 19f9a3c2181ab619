package ui

import (
	"testing"
)

// TestTimesAreReadAsTheyAreWritten, and days.
func TestTimesAreReadAsTheyAreWritten(t *testing.T) {
	for text, want := range map[string]int{"20": 1200, " 19:30 ": 1170, "20 min": 1200, "": 0, "1:05:00": 3900, "x": -1, "1:75": -1, "-3": -1} {
		got, err := clockOf(text)
		if err != nil {
			got = -1
		}
		if got != want {
			t.Errorf("%q is %d s, %v; want %d", text, got, err, want)
		}
	}
	for text, want := range map[string]int{"40": 40, "1:10": 70, "90": 90, "": 0, "soon": -1} {
		got, err := secondsOf(text)
		if err != nil {
			got = -1
		}
		if got != want {
			t.Errorf("%q of talk is %d s, %v; want %d", text, got, err, want)
		}
	}
	for text, want := range map[string]string{"28 November 2026": "2026-11-28", "28 nov 2026": "2026-11-28", "2026-11-28": "2026-11-28", "": "", "soon": "error"} {
		got, err := dayOf(text)
		if err != nil {
			got = "error"
		}
		if got != want {
			t.Errorf("%q is %q, %v; want %q", text, got, err, want)
		}
	}
}
