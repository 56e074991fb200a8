package exchange

import (
	"slices"
	"strings"

	"garner/internal/fault"
	"garner/internal/record"
	"garner/internal/words"
)

// siteRules are what a site may not allow.
var siteRules = []string{"fires", "hoses", "heights"}

// checkJobs looks at the rules of sites, at jobs of the grower's own and at what became of jobs.
func (c *checker) checkJobs() {
	for i := range c.h.Sites {
		for _, rule := range strings.Split(c.h.Sites[i].NotAllowed, ";") {
			if rule = strings.TrimSpace(rule); rule != "" && !slices.Contains(siteRules, rule) {
				c.wrong("sites", i, "not_allowed", fault.New(fault.Invalid, "exchange.site_rule", words.Args{"given": rule, "allowed": siteRules}))
			}
		}
	}
	for i := range c.h.OwnJobs {
		j := &c.h.OwnJobs[i]
		c.knownPlanting("own_jobs", i, j.Planting)
		switch {
		case j.Until.IsSet() && j.EveryD == 0 && !c.faulty("own_jobs", i, "every_d"):
			c.wrong("own_jobs", i, "until", fault.New(fault.Invalid, "exchange.job_once", nil))
		case j.Until.IsSet() && j.Date.IsSet() && j.Until < j.Date:
			c.wrong("own_jobs", i, "until", fault.New(fault.Conflict, "exchange.job_ends_first", words.Args{"date": j.Date.String(), "until": j.Until.String()}))
		}
	}
	for i := range c.h.Answers {
		a := &c.h.Answers[i]
		switch put := a.Did == record.PutOff; {
		case put && !a.Until.IsSet() && !c.faulty("job_answers", i, "until"):
			c.wrong("job_answers", i, "until", fault.New(fault.Invalid, "exchange.put_off_until", nil))
		case put && a.Date.IsSet() && a.Until < a.Date && a.Until.IsSet():
			c.wrong("job_answers", i, "until", fault.New(fault.Conflict, "exchange.put_off_back", words.Args{"date": a.Date.String(), "until": a.Until.String()}))
		case !put && a.Until.IsSet() && a.Did != "":
			c.wrong("job_answers", i, "until", fault.New(fault.Invalid, "exchange.until_spare", words.Args{"did": string(a.Did)}))
		}
		if a.Date.IsSet() && c.h.Today.IsSet() && a.Date > c.h.Today {
			c.wrong("job_answers", i, "date", fault.New(fault.Invalid, "exchange.after_today", words.Args{"given": a.Date.String(), "today": c.h.Today.String()}))
		}
	}
}
