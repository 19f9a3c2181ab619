//go:build unix

package sqlite

import (
	"fmt"
	"os"
	"syscall"
)

// tryLock locks the file for this process without waiting.
func tryLock(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}

// identityOf is what a file is known by whatever it is called: links to one
// file, and a file that was moved, are the same.
func identityOf(path string, info os.FileInfo) string {
	if st, ok := info.Sys().(*syscall.Stat_t); ok {
		return fmt.Sprintf("inode %d of %d", st.Ino, st.Dev)
	}
	return path
}

// syncFolder makes sure that a new name in a folder outlives a power cut.
func syncFolder(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	defer d.Close()
	return d.Sync()
}
