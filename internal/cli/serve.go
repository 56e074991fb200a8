package cli

import (
	"context"
	"errors"
	"log/slog"
	"os"
	"os/signal"
	"os/user"
	"path/filepath"
	"syscall"
	"time"

	"garner/internal/broker"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/store"
	"garner/internal/web"
	"garner/internal/words"
)

// serveCommand serves the pages on this machine.
type serveCommand struct {
	Address string `placeholder:"HOST:PORT"`
	Holding string `placeholder:"ID"`
	Data    string `placeholder:"FOLDER"`
	Sample  string `placeholder:"main|south"`
	MQTT    string `name:"mqtt" placeholder:"ADDRESS"`
	NoFetch bool
	Watch   string `placeholder:"FOLDER"`
}

// usualAddress is where the pages are when nothing else is said.
const usualAddress = "127.0.0.1:8420"

// Run opens the household's data and serves its pages until it is told to stop.
func (c *serveCommand) Run(a *App) error {
	var f flags
	sample := f.oneOf("--sample", c.Sample, samples)
	if err := f.err(); err != nil {
		return err
	}
	if c.Sample != "" && (c.Data != "" || c.Holding != "") {
		return fault.New(fault.Conflict, "cli.serve_twice", nil)
	}
	if c.MQTT != "" {
		if _, err := broker.Address(c.MQTT); err != nil {
			return err
		}
	}
	address := c.Address
	if address == "" {
		address = usualAddress
	}
	listener, err := web.Listen(address)
	if err != nil {
		return err
	}
	defer listener.Close()
	household, err := c.household(a, sample)
	if err != nil {
		return err
	}
	defer household.close()
	watcher, err := c.watcher(household.office)
	if err != nil {
		return err
	}
	log := slog.New(slog.NewTextHandler(a.Stderr, nil))
	server, err := web.New(web.Options{Offices: household.find, Words: a.Words, Who: userName(), Watcher: watcher,
		Sample: household.addSample, Log: log})
	if err != nil {
		return err
	}
	a.say(words.P("cli.serve_at", words.Args{"address": "http://" + listener.Addr().String() + "/"}))
	a.flush()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	ended, err := c.listenForWeather(ctx, household, log)
	if err != nil {
		return err
	}
	defer ended()
	defer stop()
	if watcher != nil {
		go watch(ctx, watcher)
	}
	return server.Serve(ctx, listener)
}

// household is the one household of a data directory.
type household struct {
	data      *store.Data
	kept      *store.Store
	office    *desk.Office
	temporary string // a folder that goes when the program ends
}

// theHousehold is the id under which a new household is kept as long as there is
// only one.
const theHousehold = "household"

// household opens the data directory, or a fresh temporary copy of a sample.
func (c *serveCommand) household(a *App, sample string) (*household, error) {
	h := &household{}
	dir, err := a.dataDir(c.Data)
	if sample != "" {
		dir, err = os.MkdirTemp("", "garner-sample-")
		h.temporary = dir
	}
	if err != nil {
		return nil, err
	}
	if err = h.open(dir, c.Holding); err == nil && sample != "" {
		err = h.addSample(desk.Author{Who: userName(), Entry: "sample-" + sample, At: now()}, sample)
	}
	if err != nil {
		h.close()
		return nil, err
	}
	return h, nil
}

// open opens the holding of an id, else the only one, else makes a place for the
// first.
func (h *household) open(dir, id string) error {
	var err error
	if h.data, err = store.Folder(dir); err != nil {
		return err
	}
	known, err := begunOf(h.data)
	switch {
	case err != nil:
		return err
	case id == "" && len(known) > 1:
		return fault.New(fault.Invalid, "cli.holding_which", words.Args{"ids": idsOf(known)})
	case id == "" && len(known) == 1:
		id = known[0].ID
	}
	if id == "" {
		h.kept, err = h.data.Create(theHousehold)
	} else {
		h.kept, err = h.data.Open(id)
	}
	if err != nil {
		return err
	}
	h.office = desk.NewOffice(h.kept)
	return nil
}

// find returns the office of the one household.
func (h *household) find(string) (*desk.Office, error) { return h.office, nil }

// addSample begins the household as a copy of a sample.
func (h *household) addSample(by desk.Author, name string) error {
	if name == mainSample {
		name = ""
	}
	sample, err := desk.Sample(name)
	if err != nil {
		return err
	}
	return h.office.Begin(by, sample)
}

func (h *household) close() {
	if h.kept != nil {
		_ = h.kept.Close() // everything acknowledged is on the disk already
	}
	if h.data != nil {
		_ = h.data.Close()
	}
	if h.temporary != "" && filepath.IsAbs(h.temporary) {
		_ = os.RemoveAll(h.temporary)
	}
}

// userName is who writes, as this machine calls them.
func userName() string {
	u, err := user.Current()
	if err != nil {
		return ""
	}
	if u.Name != "" {
		return u.Name
	}
	return u.Username
}

func now() string { return time.Now().UTC().Format(time.RFC3339) }

// flush makes what was said visible before a long wait.
func (a *App) flush() {
	if f, ok := a.Stdout.(interface{ Flush() error }); ok {
		if err := f.Flush(); err != nil && !errors.Is(err, os.ErrClosed) {
			return
		}
	}
}
