package web

import (
	"sync"

	"garner/internal/desk"
)

// foundFiles are weather files that were read and wait for a yes. Nothing of them
// is kept before it.
type foundFiles struct {
	Token string
	Found []*desk.WeatherFound
	raw   map[int][]byte // of tables whose headings are not known yet
}

// foundShelf holds the files that wait, the newest few.
type foundShelf struct {
	mu   sync.Mutex
	list []*foundFiles
}

// mostWaiting is how many lots of files wait at most.
const mostWaiting = 6

func (s *foundShelf) put(f *foundFiles) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.list = append(s.list, f)
	if len(s.list) > mostWaiting {
		s.list = s.list[1:]
	}
}

// get returns the files of a token; nil when they wait no more.
func (s *foundShelf) get(token string) *foundFiles {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, f := range s.list {
		if f.Token == token {
			return f
		}
	}
	return nil
}
