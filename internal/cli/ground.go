package cli

// groundCommands are the questions about the ground.
type groundCommands struct {
	Shade shadeCommand `cmd:""`
}
