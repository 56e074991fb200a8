package store

import (
	"os"
	"path/filepath"
	"runtime"

	"garner/internal/fault"
)

// variable names the data directory in the environment, before all else.
const variable = "GARNER_DATA"

// DefaultDir is the data directory by the platform's convention:
// $XDG_DATA_HOME/garner or ~/.local/share/garner (XDG Base Directory
// Specification), ~/Library/Application Support/garner on macOS,
// %LOCALAPPDATA%\garner on Windows. GARNER_DATA in the environment overrides it.
func DefaultDir() (string, error) {
	if dir := os.Getenv(variable); dir != "" {
		return filepath.Abs(dir)
	}
	home, err := os.UserHomeDir()
	return defaultDir(runtime.GOOS, home, os.Getenv, err)
}

func defaultDir(system, home string, variables func(string) string, noHome error) (string, error) {
	base := ""
	switch system {
	case "windows":
		base = variables("LOCALAPPDATA")
	case "darwin", "ios":
	default:
		// A relative path is to be passed over, by the specification.
		if base = variables("XDG_DATA_HOME"); !filepath.IsAbs(base) {
			base = ""
		}
	}
	if base != "" {
		return filepath.Join(base, "garner"), nil
	}
	if noHome != nil {
		return "", fault.New(fault.NotFound, "store.no_home", nil)
	}
	switch system {
	case "windows":
		return filepath.Join(home, "AppData", "Local", "garner"), nil
	case "darwin", "ios":
		return filepath.Join(home, "Library", "Application Support", "garner"), nil
	}
	return filepath.Join(home, ".local", "share", "garner"), nil
}
