package web

import (
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/words"
)

// ownJobForm is a job of the grower's own.
var ownJobForm = rowForm{
	table: "own_jobs", nav: "week", after: to("/own_jobs"),
	fields: []fieldForm{
		{name: "name", wide: true}, {name: "date"}, {name: "every_d"}, {name: "bed", choices: ownJobBeds}, {name: "minutes"},
		{name: "until", more: true}, {name: "who", more: true}, {name: "site", more: true}, {name: "planting", more: true, choices: ownJobPlantings},
	},
}

// ownJobBeds are the beds, and none.
func ownJobBeds(c *choosing) ([]option, error) {
	beds, err := bedChoices(c)
	return append([]option{{"", c.say("web.blank_own_bed", nil)}}, beds...), err
}

// ownJobPlantings are the plantings, and none.
func ownJobPlantings(c *choosing) ([]option, error) {
	out, err := otherPlantings(c)
	if len(out) > 0 {
		out[0].Name = c.say("web.blank_planting", nil)
	}
	return out, err
}

// ownJobs lists the jobs of the grower's own.
func ownJobs(v *visit) error {
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	b := rowsBody{Title: "web.own_jobs_title", Says: "web.own_jobs_says", AddKey: "web.own_jobs_add", None: "web.own_jobs_none", Path: "/own_jobs"}
	for i := range h.OwnJobs {
		o := &h.OwnJobs[i]
		b.Rows = append(b.Rows, rowLine{Name: o.Name, Path: rowPath(&ownJobForm, o.ID) + "/edit", Says: ownJobSays(h, o)})
	}
	return v.show(page{Name: "rows", Nav: "week", Body: b})
}

// ownJobSays tells when a job comes, and where.
func ownJobSays(h *holding.Holding, o *plan.OwnJob) words.Phrase {
	args := words.Args{"date": o.Date, "days": o.EveryD, "until": o.Until}
	when := words.P("web.own_job_again", args)
	switch {
	case o.EveryD == 0:
		when = words.P("web.own_job_once", args)
	case o.Until.IsSet():
		when = words.P("web.own_job_again_until", args)
	}
	if o.Bed == "" {
		return when
	}
	return words.P("web.own_job_at", words.Args{"when": when, "place": nameOf(bedOptions(h), o.Bed)})
}
