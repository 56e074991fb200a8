package web

import (
	"net/url"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// A change that is being tried stands in the address of its page as
// try=planting:field=value; a planting that is tried anew as
// try=planting:add=field=value;field=value, and one left out as
// try=planting:remove=; a cover over its bed as try=planting:cover=kind;on;off;
// a gap that is left as try=vegetable:leave=first;last; what may be bought a week as
// try=vegetable:buy=want;kg.
// Nothing of it is written until it is kept.
const tryName = "try"

// mostTried is how many changes are tried at once; an address has room for them.
const mostTried = 24

// readTried reads the changes that a page's address tries, in order. A later
// change of the same field takes the place of the earlier one.
func readTried(query url.Values) ([]plan.Change, fault.List) {
	var changes []plan.Change
	var faults fault.List
	for _, text := range query[tryName] {
		c, err := readChange(text)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		changes = withChange(changes, c)
	}
	if len(changes) > mostTried {
		faults = append(faults, fault.New(fault.Invalid, "web.try_many", words.Args{"most": mostTried}))
		changes = changes[:mostTried]
	}
	return changes, faults
}

// readChange reads one change as it stands in an address.
func readChange(text string) (plan.Change, *fault.Error) {
	left, value, found := strings.Cut(text, "=")
	colon := strings.LastIndex(left, ":")
	if !found || colon < 1 {
		return plan.Change{}, fault.New(fault.Invalid, "web.try_shape", words.Args{"given": text})
	}
	id, field := left[:colon], left[colon+1:]
	switch field {
	case "add":
		return plan.Change{Action: "add", Planting: id, Value: value}, nil
	case "remove":
		return plan.Change{Action: "remove", Planting: id}, nil
	case desk.LeaveAction:
		return desk.ReadLeave(id, value)
	case desk.BuyAction:
		return desk.ReadBuy(id, value)
	case "cover":
		if _, err := desk.ReadCover(value); err != nil {
			return plan.Change{}, err
		}
		return plan.Change{Action: desk.CoverAction, Planting: id, Value: value}, nil
	}
	var probe plan.Planting
	if err := plan.SetField(&probe, field, value); err != nil {
		return plan.Change{}, err
	}
	return plan.Change{Action: "set", Planting: id, Field: field, Value: strings.TrimSpace(value)}, nil
}

// writeChange writes a change as it stands in an address.
func writeChange(c plan.Change) string {
	switch c.Action {
	case "add":
		return c.Planting + ":add=" + c.Value
	case "remove":
		return c.Planting + ":remove="
	case desk.LeaveAction:
		return c.Planting + ":leave=" + c.Value
	case desk.BuyAction:
		return c.Planting + ":buy=" + c.Value
	case desk.CoverAction:
		return c.Planting + ":cover=" + c.Value
	}
	return c.Planting + ":" + c.Field + "=" + c.Value
}

// withChange adds a change to those tried. It takes the place of one that did the
// same to the same planting, and is written into the planting itself when that is
// only being tried.
func withChange(tried []plan.Change, c plan.Change) []plan.Change {
	for i, t := range tried {
		if t.Planting != c.Planting {
			continue
		}
		if t.Action == "add" && c.Action == "set" {
			return replaced(tried, i, plan.Change{Action: "add", Planting: t.Planting, Value: withField(t.Value, c.Field, c.Value)})
		}
		if t.Action == "add" && c.Action == "remove" {
			return append(append([]plan.Change{}, tried[:i]...), tried[i+1:]...)
		}
		if t.Action == c.Action && t.Field == c.Field {
			return replaced(tried, i, c)
		}
	}
	return append(append([]plan.Change{}, tried...), c)
}

func replaced(tried []plan.Change, i int, c plan.Change) []plan.Change {
	out := append([]plan.Change{}, tried...)
	out[i] = c
	return out
}

// withField gives one field of a list field=value;field=value a new value.
func withField(list, field, value string) string {
	var parts []string
	done := false
	for _, part := range strings.Split(list, ";") {
		name, _, _ := strings.Cut(part, "=")
		if strings.TrimSpace(name) == field {
			part, done = field+"="+value, true
		}
		if part != "" {
			parts = append(parts, part)
		}
	}
	if !done {
		parts = append(parts, field+"="+value)
	}
	return strings.Join(parts, ";")
}

// withTried returns the address of a path with changes tried.
func withTried(path string, tried []plan.Change) string {
	if len(tried) == 0 {
		return path
	}
	mark := "?"
	if strings.Contains(path, "?") {
		mark = "&"
	}
	return path + mark + triedQuery(tried).Encode()
}

func triedQuery(tried []plan.Change) url.Values {
	query := url.Values{}
	for _, c := range tried {
		query.Add(tryName, writeChange(c))
	}
	return query
}
