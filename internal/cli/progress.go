package cli

import (
	"fmt"
	"strings"
	"sync"
	"unicode/utf8"

	"garner/internal/words"
)

// progress shows how far a long computation is, on a terminal only. It may be
// called by several workers at once.
type progress struct {
	app   *App
	key   string
	mu    sync.Mutex
	tenth int
	width int
}

// progress returns what tells of progress, nil when nobody is looking.
func (a *App) progress(key string) *progress {
	if !a.Terminal {
		return nil
	}
	return &progress{app: a, key: key, tenth: -1}
}

// report returns the function that a computation calls, nil without a terminal.
func (p *progress) report() func(done, total int) {
	if p == nil {
		return nil
	}
	return p.show
}

func (p *progress) show(done, total int) {
	if total <= 0 {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	tenth := 10 * done / total
	if tenth <= p.tenth {
		return
	}
	p.tenth = tenth
	text := p.app.Words.Text(words.P(p.key, words.Args{"done": done, "total": total}))
	p.width = max(p.width, utf8.RuneCountInString(text))
	fmt.Fprintf(p.app.Stderr, "\r%s", padded(text, p.width))
}

// clear wipes the line, so that the answer stands alone.
func (p *progress) clear() {
	if p == nil || p.width == 0 {
		return
	}
	fmt.Fprintf(p.app.Stderr, "\r%s\r", strings.Repeat(" ", p.width))
}
