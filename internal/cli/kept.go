package cli

import (
	"crypto/rand"
	"os"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/store"
	"garner/internal/words"
)

// isPath tells a folder or file from the id of a holding that is kept here. What
// is there as a file is taken as such.
func isPath(name string) bool {
	_, err := os.Stat(name)
	return name != "" && err == nil
}

// dataDir is where holdings are kept; named goes before all else.
func (a *App) dataDir(named string) (string, error) {
	switch {
	case named != "":
		return named, nil
	case a.DataDir != nil:
		return a.DataDir()
	}
	return store.DefaultDir()
}

// keptHoldings lists the holdings that are kept here and have been told
// anything. Nothing is made on the way.
func (a *App) keptHoldings(named string) ([]store.Info, error) {
	dir, err := a.dataDir(named)
	if err != nil || !store.Exists(dir) {
		return nil, err
	}
	data, err := store.Folder(dir)
	if err != nil {
		return nil, err
	}
	defer data.Close()
	return begunOf(data)
}

// begunOf leaves out holdings that were made and never told anything.
func begunOf(data *store.Data) ([]store.Info, error) {
	all, err := data.Holdings()
	var begun []store.Info
	for _, i := range all {
		if i.Name != "" {
			begun = append(begun, i)
		}
	}
	return begun, err
}

// onlyKept opens the only holding that is kept here.
func (a *App) onlyKept() (*holding.Holding, error) {
	kept, err := a.keptHoldings("")
	switch {
	case err != nil:
		return nil, err
	case len(kept) == 0:
		return nil, fault.New(fault.Invalid, "cli.holding_needed", nil)
	case len(kept) > 1:
		return nil, fault.New(fault.Invalid, "cli.holding_which", words.Args{"ids": idsOf(kept)})
	}
	return a.openKept(kept[0].ID)
}

// openKept opens a holding that is kept here by its id.
func (a *App) openKept(id string) (*holding.Holding, error) {
	kept, err := a.keptHoldings("")
	if err != nil {
		return nil, err
	}
	if len(kept) == 0 {
		return nil, fault.New(fault.NotFound, "desk.holding_missing", words.Args{"path": id})
	}
	for _, i := range kept {
		if i.ID == id {
			return a.readKept(id)
		}
	}
	return nil, fault.New(fault.NotFound, "cli.holding_unknown", words.Args{"given": id, "ids": idsOf(kept)})
}

func (a *App) readKept(id string) (h *holding.Holding, err error) {
	err = a.withStore(id, func(s *store.Store) error {
		h, err = desk.KeptHolding(s)
		return err
	})
	return h, err
}

// withKept does something at the desk of a holding that is kept here.
func (a *App) withKept(id string, do func(*desk.Office) error) error {
	return a.withStore(id, func(s *store.Store) error { return do(desk.NewOffice(s)) })
}

func (a *App) withStore(id string, do func(*store.Store) error) error {
	dir, err := a.dataDir("")
	if err != nil {
		return err
	}
	data, err := store.Folder(dir)
	if err != nil {
		return err
	}
	defer data.Close()
	s, err := data.Open(id)
	if err != nil {
		return err
	}
	defer s.Close()
	return do(s)
}

func idsOf(kept []store.Info) []string {
	ids := make([]string, len(kept))
	for i := range kept {
		ids[i] = kept[i].ID
	}
	return ids
}

// author is whoever types, with an entry of its own.
func author() desk.Author {
	return desk.Author{Who: userName(), Device: "prompt", Entry: rand.Text(), At: now()}
}
