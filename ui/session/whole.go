package session

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// writeWhole writes a file whole or not at all: beside it under another name,
// on to the disk, then in its place. What was there before stays until then,
// and stays if fill fails.
func writeWhole(path string, fill func(io.Writer) error) (err error) {
	file, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return fmt.Errorf("write %s: %w: choose a folder that you may write to", path, cause(err))
	}
	defer func() {
		if err != nil {
			_ = file.Close() // it may be closed already; the first error is the one to tell
			_ = os.Remove(file.Name())
		}
	}()
	if err := fillFile(file, fill); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	if err := os.Chmod(file.Name(), modeOf(path)); err != nil {
		return fmt.Errorf("write %s: %w", path, cause(err))
	}
	if err := os.Rename(file.Name(), path); err != nil {
		return fmt.Errorf("write %s: %w: close whatever has it open, or choose another name", path, cause(err))
	}
	return syncFolder(filepath.Dir(path))
}

// fillFile writes and closes the file, its bytes safely on the disk.
func fillFile(file *os.File, fill func(io.Writer) error) error {
	buffered := bufio.NewWriterSize(file, 1<<16)
	if err := fill(buffered); err != nil {
		return err
	}
	if err := buffered.Flush(); err != nil {
		return err
	}
	if err := file.Sync(); err != nil {
		return err
	}
	return file.Close()
}

// modeOf is what the file at path may be used for, or what a new one may.
func modeOf(path string) os.FileMode {
	if old, err := os.Stat(path); err == nil {
		return old.Mode().Perm()
	}
	return 0o644
}

// syncFolder has the disk remember a new name. Systems that can't be asked to
// (Windows) remember it on their own.
func syncFolder(folder string) error {
	f, err := os.Open(folder)
	if err != nil {
		return nil
	}
	_ = f.Sync() // refused where folders can't be synced: no harm
	return f.Close()
}

// cause is what is behind an error of a file operation, without the path,
// which the caller names.
func cause(err error) error {
	switch e := err.(type) {
	case *os.PathError:
		return e.Err
	case *os.LinkError:
		return e.Err
	}
	return err
}

// file is the collection's own file, or nil where it is gone.
func (s *Session) file() os.FileInfo {
	info, err := os.Stat(s.Path())
	if err != nil {
		return nil
	}
	return info
}

// notItself is nil unless path is the collection's own file, which nothing that
// is written out may replace.
func notItself(own os.FileInfo, path string) error {
	there, err := os.Stat(path)
	if err == nil && own != nil && os.SameFile(own, there) {
		return fmt.Errorf("%s is the collection itself: choose another name", path)
	}
	return nil
}
