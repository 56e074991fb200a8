package desk

import (
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/jobs"
	"garner/internal/journal"
	"garner/internal/record"
	"garner/internal/words"
)

// JobsAnswer is one answer for several jobs.
type JobsAnswer struct {
	Jobs  []string   // ids; those that are no longer in the list are passed over
	Did   record.Did // done, skipped, or put off: to today, so that they are told again
	OnDay bool       // what was done was done on the day on which it was due
}

// AnswerJobs keeps one answer for several jobs, with the records that a job done alone
// makes, as one entry.
func (o *Office) AnswerJobs(by Author, a JobsAnswer) (*KeptEntry, error) {
	now, err := o.Today()
	if err != nil {
		return nil, err
	}
	found, err := o.jobsOf(a.Jobs)
	if err != nil {
		return nil, err
	}
	return o.write(by, func() (journal.Entry, error) {
		w, err := o.doing(nil)
		if err != nil {
			return journal.Entry{}, err
		}
		for i := range found {
			if err := w.answer(&found[i], &a, now); err != nil {
				return journal.Entry{}, err
			}
		}
		did := words.P("desk.value_job_answers.did."+strings.ReplaceAll(string(a.Did), " ", "_"), nil)
		return w.entry(words.P("desk.edit_jobs_answered", words.Args{"n": len(found), "did": did}))
	})
}

// jobsOf are the jobs of the list that is mostly asked for, by their ids.
func (o *Office) jobsOf(ids []string) ([]jobs.Job, error) {
	w, err := o.weekWork(JobsOptions{}, slices.ContainsFunc(ids, jobs.MayBeWater))
	if err != nil {
		return nil, err
	}
	all, err := w.derive(w.setting.Today + answerAhead[0])
	if err != nil {
		return nil, err
	}
	return slices.DeleteFunc(all, func(j jobs.Job) bool { return !slices.Contains(ids, j.ID) }), nil
}

// answer adds the answer for one job of several.
func (w *lossWork) answer(j *jobs.Job, a *JobsAnswer, now cal.Date) error {
	said := record.Answer{Job: j.ID, Did: a.Did, Date: now, Until: cal.None}
	if a.OnDay && a.Did == record.Done {
		said.Date = min(now, j.Best)
	}
	if a.Did == record.PutOff {
		said.Until = now
	}
	if err := w.add("job_answers", answerCells(said)); err != nil {
		return err
	}
	if a.Did != record.Done {
		return nil
	}
	own, err := w.office.doing(j)
	if err != nil {
		return err
	}
	own.taken, own.changes = w.taken, w.changes
	if err := own.did(j, said.Date, DoneAs{}); err != nil {
		return err
	}
	w.changes = own.changes
	return nil
}
