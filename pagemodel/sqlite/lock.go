package sqlite

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// lock says that this process has a collection open for writing. It is a lock
// of the operating system on a small file in the user's cache folder, named for
// the collection file it stands for: nothing of it lies beside the collection,
// and it goes with the process however that ends.
//
// It keeps apart the windows of one user on one machine. Programs on two
// machines are told apart when they write: see [ErrElsewhere].
type lock struct{ f *os.File }

// takeLock takes the lock for a collection file. Where another has it, the lock
// is nil and holder says in words who.
func takeLock(path string, info os.FileInfo) (l *lock, holder string, err error) {
	dir, err := lockFolder()
	if err != nil {
		return nil, "", err
	}
	sum := sha256.Sum256([]byte(identityOf(path, info)))
	return lockNamed(filepath.Join(dir, hex.EncodeToString(sum[:16])+".lock"))
}

// lockFolder is made where it is not there: in the cache folder, or in the
// folder for temporary files where there is no such thing.
func lockFolder() (string, error) {
	if cache, err := os.UserCacheDir(); err == nil {
		dir := filepath.Join(cache, "headland", "open")
		if os.MkdirAll(dir, 0o700) == nil {
			return dir, nil
		}
	}
	dir := filepath.Join(os.TempDir(), fmt.Sprintf("headland-open-%d", os.Getuid()))
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", &Error{dir, "is needed to note which collections are open, and could not be made", "see to the rights of its folder", err}
	}
	return dir, nil
}

// lockNamed tries again where the holder let go, taking the file away, between
// our opening it and locking it.
func lockNamed(name string) (l *lock, holder string, err error) {
	for {
		f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o600)
		if err != nil {
			return nil, "", &Error{name, "is needed to note that a collection is open, and could not be made", "see to the rights of its folder", err}
		}
		if !tryLock(f) {
			defer f.Close()
			return nil, readHolder(f), nil
		}
		if isNamed(f, name) {
			writeHolder(f)
			return &lock{f}, "", nil
		}
		f.Close()
	}
}

func isNamed(f *os.File, name string) bool {
	a, err := f.Stat()
	if err != nil {
		return false
	}
	b, err := os.Stat(name)
	return err == nil && os.SameFile(a, b)
}

// writeHolder tells others who holds the lock. That it could not be written is
// no reason to do without the lock.
func writeHolder(f *os.File) {
	host, err := os.Hostname()
	if err != nil {
		host = "this machine"
	}
	if f.Truncate(0) == nil {
		_, _ = f.WriteAt(fmt.Appendf(nil, "process %d on %s", os.Getpid(), host), 0)
	}
}

func readHolder(f *os.File) string {
	words, err := io.ReadAll(io.LimitReader(f, 300))
	if err != nil || len(words) == 0 {
		return "another process"
	}
	return strings.TrimSpace(string(words))
}

// release lets the lock go and takes its file away, where the system allows
// that of an open file.
func (l *lock) release() {
	if l == nil {
		return
	}
	os.Remove(l.f.Name())
	l.f.Close()
}
