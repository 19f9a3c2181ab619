package session

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"

	"headland/assets"
	"headland/pagemodel"
	"headland/pagemodel/manuscript"
)

// Demo opens the demo collection at path; it is made there, with its folder, if
// there is nothing.
func Demo(path string) (*Session, error) {
	if _, err := os.Lstat(path); err == nil {
		return Open(path)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return nil, fmt.Errorf("make the folder of %s: %w: choose a place that you may write to", path, cause(err))
	}
	c, _, err := manuscript.Read("demo.md", assets.Demo(), pagemodel.DefaultDesign())
	if err != nil {
		return nil, err
	}
	return Create(path, c)
}

// DemoPath is where this user's demo collection is kept: in the folder that the
// system has for what programs keep. It fails where the user has no home.
func DemoPath() (string, error) {
	folder, err := dataFolder()
	if err != nil {
		return "", fmt.Errorf("there is no folder to keep the demo collection in: %w: set HOME", err)
	}
	return filepath.Join(folder, "demo"+Extension), nil
}

// dataFolder is %AppData% on Windows and Application Support on macOS, which
// os.UserConfigDir knows; elsewhere what the XDG Base Directory Specification
// calls the data home.
func dataFolder() (string, error) {
	switch runtime.GOOS {
	case "windows", "darwin", "ios":
		folder, err := os.UserConfigDir()
		return filepath.Join(folder, "Headland"), err
	}
	if folder := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(folder) {
		return filepath.Join(folder, "headland"), nil
	}
	home, err := os.UserHomeDir()
	return filepath.Join(home, ".local", "share", "headland"), err
}
