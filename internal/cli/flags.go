package cli

import (
	"math"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/fault"
	"garner/internal/near"
	"garner/internal/plan"
	"garner/internal/words"
)

// flags reads the values of a command's flags and gathers everything that is
// wrong with them, so that all of it is told at once.
type flags struct {
	faults fault.List
}

// err returns what was wrong, nil when nothing was.
func (f *flags) err() error {
	if len(f.faults) == 0 {
		return nil
	}
	return f.faults
}

func (f *flags) refuse(kind fault.Kind, p words.Phrase) {
	f.faults = append(f.faults, &fault.Error{Kind: kind, Phrase: p})
}

// need refuses a flag that was not given and cannot be done without.
func (f *flags) need(flag, given string) string {
	if strings.TrimSpace(given) == "" {
		f.refuse(fault.Invalid, words.P("cli.flag_needed", words.Args{"flag": flag}))
	}
	return strings.TrimSpace(given)
}

// date reads an ISO date; nothing gives cal.None.
func (f *flags) date(flag, given string) cal.Date {
	if given == "" {
		return cal.None
	}
	d, err := cal.Parse(given)
	if err != nil || d.Year() < 1800 || d.Year() > 2200 {
		f.refuse(fault.Invalid, words.P("cli.flag_date", words.Args{"flag": flag, "given": given}))
		return cal.None
	}
	return d
}

// whole reads a whole number between low and high; nothing gives otherwise.
func (f *flags) whole(flag, given string, low, high, otherwise int) int {
	if given == "" {
		return otherwise
	}
	n, err := strconv.Atoi(given)
	if err != nil || n < low || n > high {
		f.refuse(fault.OutOfRange, words.P("cli.flag_whole",
			words.Args{"flag": flag, "given": given, "low": low, "high": high}))
		return otherwise
	}
	return n
}

// share reads a fraction, 0-1; nothing gives otherwise.
func (f *flags) share(flag, given string, otherwise float64) float64 {
	if given == "" {
		return otherwise
	}
	x, err := strconv.ParseFloat(given, 64)
	if err != nil || !(x >= 0 && x <= 1) {
		f.refuse(fault.OutOfRange, words.P("cli.flag_share", words.Args{"flag": flag, "given": given}))
		return otherwise
	}
	return x
}

// between reads a number between low and high; nothing gives 0.
func (f *flags) between(flag, given string, low, high float64) float64 {
	if given == "" {
		return 0
	}
	x, ok := decimal(given)
	if !ok || x < low || x > high {
		f.refuse(fault.OutOfRange, words.P("cli.flag_between",
			words.Args{"flag": flag, "given": given, "low": low, "high": high}))
		return 0
	}
	return x
}

// seed reads the seed of the random streams; nothing gives 1.
func (f *flags) seed(given string) uint64 {
	if given == "" {
		return 1
	}
	n, err := strconv.ParseUint(given, 10, 64)
	if err != nil {
		f.refuse(fault.Invalid, words.P("cli.flag_seed", words.Args{"given": given}))
		return 1
	}
	return n
}

// methods are the ways to start a planting; the list is closed.
var methods = []string{
	string(plan.Seed), string(plan.Plant), string(plan.Set), string(plan.Crown), string(plan.Cutting),
}

// covers names the kinds of cover; the list is closed.
func covers() []string {
	var names []string
	for _, kind := range cover.Kinds() {
		names = append(names, string(kind))
	}
	return names
}

func (f *flags) method(given string) string { return f.oneOf("--method", given, methods) }

// cover reads a kind of cover; nothing is the open.
func (f *flags) cover(given string) string {
	if given == "" {
		return string(cover.Open)
	}
	return f.oneOf("--cover", given, covers())
}

// oneOf reads a name out of a closed list, however its words are joined: low
// tunnel, low-tunnel and lowtunnel are the same.
func (f *flags) oneOf(flag, given string, names []string) string {
	if given == "" {
		return ""
	}
	for _, name := range names {
		if joined(name) == joined(given) {
			return name
		}
	}
	args := words.Args{"flag": flag, "given": given, "names": names}
	if meant := near.Names(given, names, 1); len(meant) > 0 {
		args["meant"] = meant[0]
		f.refuse(fault.Invalid, words.P("cli.flag_one_of_meant", args))
		return ""
	}
	f.refuse(fault.Invalid, words.P("cli.flag_one_of", args))
	return ""
}

// joined is a name in lower case without what joins its words.
func joined(name string) string {
	return strings.NewReplacer(" ", "", "-", "", "_", "", "+", "").Replace(strings.ToLower(name))
}

// decimal reads a plain number and refuses what is none.
func decimal(s string) (float64, bool) {
	x, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	return x, err == nil && !math.IsNaN(x) && !math.IsInf(x, 0)
}
