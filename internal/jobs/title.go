package jobs

import (
	"strings"

	"garner/internal/cal"
	"garner/internal/words"
)

// told gives a job its title, with all that a text may ask for.
func told(j Job, name string) Job {
	return titled(j, string(j.Kind), name)
}

// titled is told with the title of another name.
func titled(j Job, title, name string) Job {
	a := j.Amount
	j.name = name
	j.Title = words.P("jobs.title_"+key(title), words.Args{"name": name, "area": a.M2, "row": a.RowM, "plants": a.Plants,
		"kg": a.Kg, "litres": a.Litres, "seed": a.SeedG})
	return j
}

// why gives a job its reason: a text of the data with the day it hangs on.
func why(j Job, reason string, on cal.Date) Job {
	j.Why = words.P("jobs.why_"+reason, words.Args{"date": on, "odds": j.Odds})
	return j
}

// key is a name as texts are called by.
func key(name string) string {
	out := []byte(name)
	for i, c := range out {
		if c == '-' {
			out[i] = '_'
		}
	}
	return string(out)
}

// Tool names a tool of data/tools.csv in words.
func Tool(id string) words.Phrase { return words.P("jobs.tool_"+key(id), nil) }

// part is what a title tells beside the kind of work, for a job that may be of a round.
func part(j *Job) words.Phrase {
	if !j.Round {
		return words.Phrase{}
	}
	return words.P("jobs.part_"+strings.TrimPrefix(j.Title.Key, "jobs.title_"), j.Title.Args)
}
