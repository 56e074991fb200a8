package jobs

import (
	"slices"

	"garner/internal/table"
	"garner/internal/words"
)

func (l loader) readTools() error {
	c, err := l.open("tools", "tool", "barred_by", "instead", "times")
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for r := range c.Rows {
		l.tools[once(c, r, "tool", seen)] = toolFacts{Barred(oneOf(c, r, "barred_by", barred)), c.Text(r, "instead"), c.Within(r, "times", 0.1, 10)}
	}
	for r := range c.Rows {
		if instead := c.Text(r, "instead"); instead != "" && !seen[instead] {
			c.Refuse(r, "instead", "jobs.data_unknown", words.Args{"value": instead})
		}
	}
	return c.Err()
}

func (l loader) readKinds() error {
	c, err := l.open("kinds", "kind", "first_d", "last_d", "minutes", "minutes_m2", "minutes_m", "minutes_plant", "minutes_kg", "minutes_l",
		"litres_m2", "tools", "who", "weather", "barred_by", "instead", "round", "asked")
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for r := range c.Rows {
		k := Kind(once(c, r, "kind", seen))
		f := kindFacts{before: days(c, r, "first_d", 0, 90), after: days(c, r, "last_d", 0, 90),
			minutes: c.Within(r, "minutes", 0, 240), perM2: c.Within(r, "minutes_m2", 0, 60), perM: c.Within(r, "minutes_m", 0, 60),
			perPlant: c.Within(r, "minutes_plant", 0, 60), perKg: c.Within(r, "minutes_kg", 0, 60), perL: c.Within(r, "minutes_l", 0, 10),
			litresM2: c.Within(r, "litres_m2", 0, 200), tools: c.List(r, "tools"), who: Who(oneOf(c, r, "who", whos)),
			barred: Barred(oneOf(c, r, "barred_by", barred)), instead: Kind(c.Text(r, "instead")), rank: r,
			round: oneOf(c, r, "round", yes) == "yes", asked: oneOf(c, r, "asked", askedAfter)}
		weather := each(c, r, "weather", weathers)
		f.dry, f.still = slices.Contains(weather, "dry"), slices.Contains(weather, "still")
		if (f.barred == "") != (f.instead == "") {
			c.Refuse(r, "instead", "jobs.data_missing", words.Args{"value": "instead"})
		}
		for _, tool := range f.tools {
			if _, ok := l.tools[tool]; !ok {
				c.Refuse(r, "tools", "jobs.data_unknown", words.Args{"value": tool})
			}
		}
		l.kinds[k] = f
		l.order = append(l.order, k)
	}
	for r := range c.Rows {
		if instead := c.Text(r, "instead"); instead != "" && (!seen[instead] || l.kinds[Kind(instead)].barred != "") {
			c.Refuse(r, "instead", "jobs.data_unknown", words.Args{"value": instead})
		}
	}
	for _, k := range made {
		if !seen[string(k)] && len(c.Rows) > 0 {
			c.Refuse(0, "kind", "jobs.data_missing", words.Args{"value": string(k)})
		}
	}
	return c.Err()
}

// made are the kinds that the code itself makes.
var made = []Kind{SowIndoors, PrickOut, Sow, Set, PlantOut, Replant, Mulch, SowGreen, CutGreen, Cover, Net, Uncover, Protect, Vent, Shut, Strip, Water, Feed, Pick, Lift,
	Clear, Burn, Count, Compost, Lime, Own}

func (l loader) readCare() error {
	c, err := l.open("care", "rule", "kind", "crops", "groups", "uses", "methods", "patterns", "sky", "anchor", "offset_d", "every_d", "until", "until_d", "from", "to", "counted", "why")
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for r := range c.Rows {
		rule := careRule{id: once(c, r, "rule", seen), kind: Kind(oneOf(c, r, "kind", l.kindNames())),
			crops: c.List(r, "crops"), groups: c.List(r, "groups"), uses: c.List(r, "uses"), methods: c.List(r, "methods"),
			patterns: each(c, r, "patterns", patterns), sky: oneOf(c, r, "sky", skies), anchor: oneOf(c, r, "anchor", anchors),
			offset: days(c, r, "offset_d", -120, 365), every: whole(c, r, "every_d", 0, 120), until: oneOf(c, r, "until", ends),
			untilOffset: days(c, r, "until_d", -120, 365), from: c.Day(r, "from"), to: c.Day(r, "to"), byRow: oneOf(c, r, "counted", counted) == "row", why: c.Text(r, "why")}
		if rule.every > 0 && rule.until == "" {
			c.Refuse(r, "until", "jobs.data_endless", nil)
		}
		l.checkSeason(c, r, rule.anchor == "calendar")
		l.care = append(l.care, rule)
	}
	return c.Err()
}

func (l loader) readGround() error {
	c, err := l.open("ground", "rule", "kind", "at", "beds", "covers", "need", "every_d", "from", "to", "why")
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for r := range c.Rows {
		l.ground = append(l.ground, groundRule{id: once(c, r, "rule", seen), kind: Kind(oneOf(c, r, "kind", l.kindNames())), at: oneOf(c, r, "at", grounds),
			beds: c.List(r, "beds"), covers: c.List(r, "covers"), need: oneOf(c, r, "need", needs), every: whole(c, r, "every_d", 0, 120),
			from: c.Day(r, "from"), to: c.Day(r, "to"), why: c.Text(r, "why")})
		l.checkSeason(c, r, true)
	}
	return c.Err()
}

// checkSeason refuses half a season, and none where there must be one.
func (l loader) checkSeason(c *table.Cells, row int, must bool) {
	from, to := c.Text(row, "from"), c.Text(row, "to")
	if (from == "") != (to == "") || must && from == "" {
		c.Refuse(row, "from", "jobs.data_season", nil)
	}
	if c.Text(row, "why") == "" {
		c.Refuse(row, "why", "jobs.data_missing", words.Args{"value": "why"})
	}
}

func (l loader) readPicks() error {
	c, err := l.open("picks", "crops", "groups", "patterns", "every_d")
	if err != nil {
		return err
	}
	for r := range c.Rows {
		l.picks = append(l.picks, pickRule{c.List(r, "crops"), c.List(r, "groups"), each(c, r, "patterns", patterns), whole(c, r, "every_d", 1, 60)})
	}
	return c.Err()
}

func (l loader) readStores() error {
	c, err := l.open("stores", "methods", "every_d")
	if err != nil {
		return err
	}
	for r := range c.Rows {
		l.stores = append(l.stores, countRule{c.List(r, "methods"), whole(c, r, "every_d", 1, 365)})
	}
	return c.Err()
}

// names tells whether a list names something; an empty one names everything.
func names(list []string, any ...string) bool {
	if len(list) == 0 {
		return true
	}
	for _, a := range any {
		if slices.Contains(list, a) {
			return true
		}
	}
	return false
}
