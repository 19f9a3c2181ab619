//go:build heldclock

package ui

import (
	"os"
	"strconv"
	"strings"
	"time"
)

// The program built with this tag is for the test in a real window, which holds
// the clock.
func init() { timeOfDay = heldClock }

// heldClock is the time that stands in the file HEADLAND_CLOCK, in milliseconds
// since 1970.
func heldClock() time.Time {
	data, err := os.ReadFile(os.Getenv("HEADLAND_CLOCK"))
	if err != nil {
		return time.UnixMilli(0)
	}
	ms, err := strconv.ParseInt(strings.TrimSpace(string(data)), 10, 64)
	if err != nil {
		return time.UnixMilli(0)
	}
	return time.UnixMilli(ms)
}
