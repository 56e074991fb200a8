package cli

import (
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/store"
	"garner/internal/words"
)

// importCommand takes a holding's files among those that are kept here.
type importCommand struct {
	Path string `arg:"" placeholder:"FOLDER|ZIP"`
	As   string `placeholder:"ID"`
	Data string `placeholder:"FOLDER"`
	JSON bool   `name:"json"`
}

// importAnswer is the JSON of an import.
type importAnswer struct {
	ID      string `json:"id"`
	Changes int    `json:"changes"`
}

// Run checks the files and takes them in as one entry. With a fault nothing is
// changed.
func (c *importCommand) Run(a *App) error {
	h, faults, warnings, err := desk.OpenChecked(c.Path)
	if err != nil {
		return err
	}
	a.warn(warnings)
	if len(faults) > 0 {
		return faults
	}
	if c.As != "" {
		h.ID = c.As
	}
	dir, err := a.dataDir(c.Data)
	if err != nil {
		return err
	}
	data, err := store.Folder(dir)
	if err != nil {
		return err
	}
	defer data.Close()
	answer, err := c.take(data, h)
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(answer)
	}
	if answer.Changes == 0 {
		a.say(words.P("cli.imported_same", words.Args{"holding": h.Name, "id": answer.ID}))
		return nil
	}
	a.say(words.P("cli.imported", words.Args{"holding": h.Name, "id": answer.ID, "n": answer.Changes}))
	return nil
}

// take writes the holding to its place.
func (c *importCommand) take(data *store.Data, h *holding.Holding) (*importAnswer, error) {
	s, err := c.target(data, h.ID)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	e, err := desk.NewOffice(s).Replace(author(), h)
	if err != nil {
		return nil, err
	}
	return &importAnswer{ID: s.ID(), Changes: len(e.Changes)}, nil
}

// target opens the place of a holding: that of its id, else one that was made
// and never told anything, else a new one.
func (c *importCommand) target(data *store.Data, id string) (*store.Store, error) {
	known, err := data.Holdings()
	if err != nil {
		return nil, err
	}
	for _, i := range known {
		if i.ID == id {
			return data.Open(id)
		}
	}
	if len(known) == 1 && known[0].Name == "" && c.As == "" {
		return data.Open(known[0].ID)
	}
	return data.Create(id)
}
