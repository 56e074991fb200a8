package cli

// groundCommands are the questions about the ground.
type groundCommands struct {
	Free  freeCommand  `cmd:""`
	Shade shadeCommand `cmd:""`
}
