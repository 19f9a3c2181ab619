package ui

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// clock is a time as a clock shows it: minutes and seconds, with hours where there
// are any.
func clock(seconds float64) string {
	s := int(math.Round(math.Abs(seconds)))
	if s >= 60*60 {
		return fmt.Sprintf("%d:%02d:%02d", s/(60*60), s/60%60, s%60)
	}
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// clockOf reads a time: minutes ("20"), minutes and seconds ("19:30"), or hours,
// minutes and seconds. Nothing is no time.
func clockOf(text string) (seconds int, err error) {
	wrong := fmt.Errorf("%q is no time: write minutes, as 20, or minutes and seconds, as 19:30", text)
	text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(strings.ToLower(text)), "min"))
	if text == "" {
		return 0, nil
	}
	parts := strings.Split(text, ":")
	if len(parts) > 3 {
		return 0, wrong
	}
	for i, p := range parts {
		n, err := strconv.Atoi(strings.TrimSpace(p))
		if err != nil || n < 0 || n > 60*24 || i > 0 && n > 59 {
			return 0, wrong
		}
		seconds = seconds*60 + n
	}
	if len(parts) == 1 {
		seconds *= 60
	}
	return seconds, nil
}

// secondsOf reads seconds ("40"), or minutes and seconds ("1:10").
func secondsOf(text string) (int, error) {
	if text = strings.TrimSpace(text); !strings.Contains(text, ":") && text != "" {
		text = "0:" + text
		if n, err := strconv.Atoi(text[2:]); err == nil && n > 59 {
			text = fmt.Sprintf("%d:%02d", n/60, n%60)
		}
	}
	seconds, err := clockOf(text)
	if err != nil {
		return 0, fmt.Errorf("%q is no time: write seconds, as 40, or minutes and seconds, as 1:10", strings.TrimPrefix(text, "0:"))
	}
	return seconds, nil
}

// dayOf reads a day, as "28 November 2026" or 2026-11-28; nothing is no day.
func dayOf(text string) (on string, err error) {
	text = strings.Join(strings.Fields(text), " ")
	if text == "" {
		return "", nil
	}
	for _, layout := range [...]string{time.DateOnly, "2 January 2006", "2 Jan 2006", "January 2 2006", "2.1.2006", "2/1/2006"} {
		if day, err := time.Parse(layout, text); err == nil {
			return day.Format(time.DateOnly), nil
		}
	}
	return "", fmt.Errorf("%q is no day: write it as 28 November 2026, or as 2026-11-28", text)
}
