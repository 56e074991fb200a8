package cli

import "garner/internal/words"

// versionCommand tells which garner this is.
type versionCommand struct {
	JSON bool `name:"json"`
}

// Run says the version.
func (c *versionCommand) Run(a *App) error {
	if c.JSON {
		return a.json(map[string]string{"version": a.Version})
	}
	a.say(words.P("cli.version", words.Args{"version": a.Version}))
	return nil
}
