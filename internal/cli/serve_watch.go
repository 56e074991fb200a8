package cli

import (
	"context"
	"os"
	"time"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// watchEvery is how often a watched folder is looked at.
const watchEvery = 5 * time.Second

// watcher watches the folder that --watch names, nil for none.
func (c *serveCommand) watcher(office *desk.Office) (*desk.Watcher, error) {
	if c.Watch == "" {
		return nil, nil
	}
	if info, err := os.Stat(c.Watch); err != nil || !info.IsDir() {
		return nil, fault.New(fault.NotFound, "cli.watch_no_folder", words.Args{"folder": c.Watch})
	}
	return desk.NewWatcher(c.Watch, office, userName()), nil
}

// watch looks at the folder again and again until the server stops.
func watch(ctx context.Context, w *desk.Watcher) {
	tick := time.NewTicker(watchEvery)
	defer tick.Stop()
	for {
		w.Look(time.Now())
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}
