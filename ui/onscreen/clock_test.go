package onscreen

import (
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

const keyPageDown = 0xff56 // by its X keysym

// heldClock is the clock of a program at home in a folder.
type heldClock struct {
	t    *testing.T
	home string
}

// set has the clock stand at so many milliseconds. At no instant is there half of
// the number.
func (c heldClock) set(ms int64) {
	c.t.Helper()
	path := filepath.Join(c.home, "clock")
	err := os.WriteFile(path+".new", []byte(strconv.FormatInt(ms, 10)), 0o644)
	if err == nil {
		err = os.Rename(path+".new", path)
	}
	if err != nil {
		c.t.Fatal(err)
	}
}
