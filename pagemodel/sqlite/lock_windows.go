package sqlite

import (
	"os"
	"path/filepath"
	"strings"

	"golang.org/x/sys/windows"
)

// lockedByte lies beyond what is written in the file, as a locked byte can't be
// read by others.
const lockedByte = 1 << 20

// tryLock locks the file for this process without waiting.
func tryLock(f *os.File) bool {
	at := &windows.Overlapped{Offset: lockedByte}
	flags := uint32(windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY)
	return windows.LockFileEx(windows.Handle(f.Fd()), flags, 0, 1, 0, at) == nil
}

// identityOf is the file's full name, letter case aside.
func identityOf(path string, _ os.FileInfo) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	return strings.ToLower(filepath.Clean(path))
}

// syncFolder has nothing to do: the system keeps names by itself.
func syncFolder(string) error { return nil }
