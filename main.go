// Headland sets a collection of poems on the pages of a book and shows where a
// line turns that the poet did not turn.
//
// This file is the wiring: a verb (see headland help) is done by ui/command; all
// else is a window, which ui makes.
package main

import (
	"fmt"
	"os"
	"runtime/debug"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"headland/ui"
	"headland/ui/command"
	_ "headland/ui/locale"
)

func main() { os.Exit(start(os.Args[1:])) }

// start does what the command line asks for and gives the exit status.
func start(args []string) int {
	if status, handled := command.Run(args, os.Stdin, os.Stdout, os.Stderr); handled {
		return status
	}
	if !command.HasDisplay() {
		return command.WithoutWindow(args, os.Stdout, os.Stderr)
	}
	hurry()
	opening := make(chan ui.Opened, 1)
	go func() {
		s, err := command.OpenForWindow(args, os.Stderr)
		opening <- ui.Opened{Session: s, Err: err}
	}()
	// Without an ID the toolkit keeps no settings of its own: it would write them
	// at each end, and complain of finding them half written.
	if err := ui.Run(app.New(), opening, fyne.Do); err != nil {
		fmt.Fprintf(os.Stderr, "headland: %v\n", err)
		return command.CouldNot
	}
	return command.Done
}

// hurry has nothing collected while the program starts, which would cost a
// tenth of the time until the first spread is seen: for a second, or until
// there is more than a small book needs.
func hurry() {
	const enough = 192 << 20
	percent, limit := debug.SetGCPercent(-1), debug.SetMemoryLimit(enough)
	time.AfterFunc(time.Second, func() {
		debug.SetGCPercent(percent)
		debug.SetMemoryLimit(limit)
	})
}
