package cli

import (
	"slices"
	"strings"
)

// tidy prepares arguments for the parser:
//
//   - a value that begins with a minus sign and a digit belongs to the flag
//     before it, so that --site -42.9,147.3,51 reads as --site=-42.9,147.3,51;
//   - --sample alone means the main demo holding, and takes the name of one after it;
//   - garner alone and garner help COMMAND ask for help, garner --version for
//     the version.
func tidy(args []string) []string {
	switch {
	case len(args) == 0:
		return []string{"--help"}
	case args[0] == "help":
		return append(slices.Clone(args[1:]), "--help")
	case args[0] == "--version":
		return []string{"version"}
	case args[0] == completeName:
		return args
	}
	var out []string
	for i := 0; i < len(args); i++ {
		arg := args[i]
		switch {
		case arg == "--":
			return append(out, args[i:]...)
		case arg == "--sample" && i+1 < len(args) && slices.Contains(samples, args[i+1]):
			i++
			arg += "=" + args[i]
		case arg == "--sample":
			arg += "=" + mainSample
		case i+1 < len(args) && takesNext(arg, args[i+1]):
			i++
			arg += "=" + args[i]
		}
		out = append(out, arg)
	}
	return out
}

// takesNext tells whether an argument is a flag without its value and the next
// one a number below zero.
func takesNext(arg, next string) bool {
	return strings.HasPrefix(arg, "--") && !strings.Contains(arg, "=") &&
		len(next) > 1 && next[0] == '-' && (next[1] >= '0' && next[1] <= '9' || next[1] == '.')
}
