package desk

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/words"
)

// Watcher takes in the weather files of a folder as they come and change. A file
// in a folder of its own inside is for the site of that folder's name. Files that
// are wrong or unknown are told and left as they are; nothing in the folder is
// ever written.
type Watcher struct {
	dir    string
	office *Office
	who    string

	mu    sync.Mutex
	files map[string]*watchedFile
	wrong *fault.Error // the folder itself cannot be read
	at    time.Time    // of the last look
}

// watchedFile is a file of the folder.
type watchedFile struct {
	stamp  string // of size and time, as seen at the last look
	judged string // the stamp it was last judged with
	state  WatchedFile
}

// WatchedFile is what became of a file of a watched folder.
type WatchedFile struct {
	Name   string
	At     time.Time
	State  WatchState
	Faults fault.List
}

// WatchState is how it stands with a watched file.
type WatchState string

// The states of a watched file.
const (
	WatchWaiting WatchState = "waiting" // still being written
	WatchTaken   WatchState = "taken"
	WatchSame    WatchState = "same" // it says nothing new
	WatchBad     WatchState = "bad"  // with its faults
	WatchUnknown WatchState = "unknown"
)

// WatchView is a watched folder as it stands.
type WatchView struct {
	Dir   string
	At    time.Time
	Wrong *fault.Error
	Files []WatchedFile
}

// mostWatched is how many files of a folder are looked at.
const mostWatched = 500

// NewWatcher watches a folder in the hand of someone.
func NewWatcher(dir string, office *Office, who string) *Watcher {
	return &Watcher{dir: dir, office: office, who: who, files: map[string]*watchedFile{}}
}

// View tells how the folder stands.
func (w *Watcher) View() WatchView {
	w.mu.Lock()
	defer w.mu.Unlock()
	v := WatchView{Dir: w.dir, At: w.at, Wrong: w.wrong}
	for _, f := range w.files {
		v.Files = append(v.Files, f.state)
	}
	slices.SortFunc(v.Files, func(a, b WatchedFile) int { return strings.Compare(a.Name, b.Name) })
	return v
}

// Look looks at the folder once. A file that is as it was at the look before, and
// so is not being written, is judged; each state of a file once.
func (w *Watcher) Look(now time.Time) {
	names, err := w.list()
	w.mu.Lock()
	w.at, w.wrong = now, nil
	if err != nil {
		w.wrong = fault.New(fault.NotFound, "desk.watch_folder", words.Args{"folder": w.dir})
	}
	for name := range w.files {
		if err == nil && names[name] == "" {
			delete(w.files, name)
		}
	}
	var due []string
	for name, stamp := range names {
		f := w.files[name]
		if f == nil {
			f = &watchedFile{state: WatchedFile{Name: name, At: now, State: WatchWaiting}}
			w.files[name] = f
		}
		if f.stamp == stamp && f.judged != stamp {
			due = append(due, name)
		}
		f.stamp = stamp
	}
	w.mu.Unlock()
	slices.Sort(due)
	for _, name := range due {
		state := w.judge(name, now)
		w.mu.Lock()
		if f := w.files[name]; f != nil {
			f.state, f.judged = state, names[name]
		}
		w.mu.Unlock()
	}
}

// list stamps the files of the folder and of the folders in it.
func (w *Watcher) list() (map[string]string, error) {
	names := map[string]string{}
	entries, err := os.ReadDir(w.dir)
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") {
			inside, err := os.ReadDir(filepath.Join(w.dir, e.Name()))
			if err != nil {
				continue // told by nothing being there
			}
			for _, f := range inside {
				w.stamp(names, filepath.Join(e.Name(), f.Name()), f)
			}
			continue
		}
		w.stamp(names, e.Name(), e)
	}
	return names, err
}

// leftovers are the ends of names of files that belong to others or are still
// being written.
var leftovers = []string{"-wal", "-shm", "-journal", ".tmp", ".part", ".crdownload", "~"}

func (w *Watcher) stamp(names map[string]string, name string, e os.DirEntry) {
	info, err := e.Info()
	if err != nil || !info.Mode().IsRegular() || strings.HasPrefix(e.Name(), ".") || len(names) >= mostWatched ||
		slices.ContainsFunc(leftovers, func(end string) bool { return strings.HasSuffix(strings.ToLower(name), end) }) {
		return
	}
	stamp := stampOf(info)
	if log, err := os.Stat(filepath.Join(w.dir, name+"-wal")); err == nil {
		stamp += " " + stampOf(log)
	}
	names[name] = stamp
}

func stampOf(info os.FileInfo) string {
	return info.ModTime().UTC().Format(time.RFC3339Nano) + " " + strconv.FormatInt(info.Size(), 10)
}

// judge reads a file and takes it in when nothing is wrong with it.
func (w *Watcher) judge(name string, now time.Time) WatchedFile {
	out := WatchedFile{Name: filepath.ToSlash(name), At: now, State: WatchBad}
	path := filepath.Join(w.dir, name)
	found, err := w.office.ReadWeather(WeatherInput{Name: out.Name, Path: path, Open: func() (io.ReadCloser, error) { return os.Open(path) }}, WeatherHow{})
	switch {
	case err != nil:
		out.Faults = fault.List{fault.New(fault.Invalid, "station.unreadable", nil).In(fault.Place{File: out.Name})}
		return out
	case found.Format == "" && found.Headings == nil:
		out.State = WatchUnknown
		return out
	case found.Unfit() || found.Faulty():
		out.Faults = slices.Concat(found.Wrong, found.Refused, found.Doubtful)
		return out
	}
	key := "watch-" + found.digest(name)
	kept, err := w.office.TakeWeather(Author{Who: w.who, Device: "folder", Entry: key, At: now.UTC().Format(time.RFC3339)},
		[]*WeatherFound{found}, WeatherTake{Site: w.siteOf(name)})
	switch {
	case err != nil:
		if out.Faults = listOf(err); out.Faults == nil {
			out.Faults = fault.List{fault.New(fault.Invalid, "desk.watch_failed", nil)}
		}
	case len(kept.Changes) == 0 || kept.At != now.UTC().Format(time.RFC3339):
		out.State = WatchSame
	default:
		out.State = WatchTaken
	}
	return out
}

// siteOf is the site that the folder of a file names; blank: the first.
func (w *Watcher) siteOf(name string) string {
	if dir := filepath.Dir(name); dir != "." {
		return dir
	}
	return ""
}

// digest names what a file tells, so that the same is taken in only once, even
// when it was taken back since.
func (w *WeatherFound) digest(name string) string {
	sum := sha256.New()
	io.WriteString(sum, name+"\n"+w.Format+"\n")
	if f := w.found; f.Typical != nil {
		_ = station.WriteNormals(sum, f.Typical) // a hash takes everything
	} else {
		days := climate.Record{Days: f.Days.Days}
		_ = station.WriteDaily(sum, &days)
		_ = station.WriteHourly(sum, f.Hours)
	}
	return hex.EncodeToString(sum.Sum(nil)[:16])
}
