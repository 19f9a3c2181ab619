package ui

import "time"

// timeOfDay is what a run-through is timed by.
var timeOfDay = time.Now
