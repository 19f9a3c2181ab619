package ui

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
)

// settings are what the window remembers from one day to the next. They are
// kept apart from any book.
type settings struct {
	Light  string   `json:"light,omitempty"` // "" follows the system
	Recent []string `json:"recent,omitempty"`
	Folder string   `json:"folder,omitempty"` // where files were last looked for
	Break  string   `json:"break,omitempty"`  // where the poet last took a break: "poem" or "edition"; "" is "poem"
	path   string
}

// recentLimit is how many files are remembered.
const recentLimit = 9

// readSettings reads the settings in a folder. What can't be read is as if it
// had never been written: no book depends on it.
func readSettings(folder string) *settings {
	s := &settings{path: filepath.Join(folder, "window.json")}
	if data, err := os.ReadFile(s.path); err == nil {
		if json.Unmarshal(data, s) != nil {
			*s = settings{path: s.path}
		}
	}
	return s
}

// write writes the settings whole, or leaves those that are there.
func (s *settings) write() error {
	data, err := json.MarshalIndent(s, "", "\t")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(s.path), 0o755); err != nil {
		return err
	}
	file, err := os.CreateTemp(filepath.Dir(s.path), ".window.*")
	if err != nil {
		return err
	}
	_, err = file.Write(append(data, '\n'))
	if err == nil {
		err = file.Sync()
	}
	if shut := file.Close(); err == nil {
		err = shut
	}
	if err == nil {
		err = os.Rename(file.Name(), s.path)
	}
	if err != nil {
		_ = os.Remove(file.Name()) // gone already where it was renamed
	}
	return err
}

// opened puts a file first among the recent ones.
func (s *settings) opened(path string) {
	if whole, err := filepath.Abs(path); err == nil {
		path = whole
	}
	s.Recent = slices.DeleteFunc(s.Recent, func(r string) bool { return r == path })
	s.Recent = slices.Insert(s.Recent, 0, path)
	s.Recent = s.Recent[:min(recentLimit, len(s.Recent))]
	s.Folder = filepath.Dir(path)
}

// here are the recent files that are still there.
func (s *settings) here() []string {
	var there []string
	for _, path := range s.Recent {
		if _, err := os.Stat(path); err == nil {
			there = append(there, path)
		}
	}
	return there
}
