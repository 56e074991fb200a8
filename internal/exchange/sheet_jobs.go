package exchange

import (
	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/record"
)

var ownJobsSheet = rowsOf[plan.OwnJob]{
	table: tableNamed("own_jobs"),
	blank: plan.OwnJob{Date: cal.None, Until: cal.None},
	columns: []column[plan.OwnJob]{
		text("id", func(j *plan.OwnJob) *string { return &j.ID }),
		text("name", func(j *plan.OwnJob) *string { return &j.Name }),
		text("site", func(j *plan.OwnJob) *string { return &j.Site }),
		text("bed", func(j *plan.OwnJob) *string { return &j.Bed }),
		text("planting", func(j *plan.OwnJob) *string { return &j.Planting }),
		date("date", func(j *plan.OwnJob) *cal.Date { return &j.Date }),
		whole("every_d", func(j *plan.OwnJob) *int { return &j.EveryD }),
		date("until", func(j *plan.OwnJob) *cal.Date { return &j.Until }),
		number("minutes", func(j *plan.OwnJob) *float64 { return &j.Minutes }),
		text("who", func(j *plan.OwnJob) *string { return &j.Who }),
	},
	list: func(h *holding.Holding) []plan.OwnJob { return h.OwnJobs },
	put:  func(h *holding.Holding, rows []plan.OwnJob) { h.OwnJobs = rows },
}

var answersSheet = rowsOf[record.Answer]{
	table: tableNamed("job_answers"),
	blank: record.Answer{Date: cal.None, Until: cal.None},
	columns: []column[record.Answer]{
		text("id", func(a *record.Answer) *string { return &a.ID }),
		date("date", func(a *record.Answer) *cal.Date { return &a.Date }),
		text("job", func(a *record.Answer) *string { return &a.Job }),
		text("did", func(a *record.Answer) *record.Did { return &a.Did }),
		date("until", func(a *record.Answer) *cal.Date { return &a.Until }),
		number("minutes", func(a *record.Answer) *float64 { return &a.Minutes }),
		text("note", func(a *record.Answer) *string { return &a.Note }),
	},
	list: func(h *holding.Holding) []record.Answer { return h.Answers },
	put:  func(h *holding.Holding, rows []record.Answer) { h.Answers = rows },
}
