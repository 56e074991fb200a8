package plan

import (
	"math"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/near"
	"garner/internal/words"
)

// methods, stocks and relations are the closed lists as people write them.
var (
	methods   = []string{string(Seed), string(Plant), string(Set), string(Crown), string(Cutting)}
	stocks    = []string{string(OwnStock)}
	relations = []string{string(Under), string(Between), string(After), string(Moved)}
)

// field is a column of a planting that a change may give a new value.
type field struct {
	name     string
	required bool
	set      func(*Planting, string) *fault.Error // the text is never blank
	clear    func(*Planting)
}

// fields are in the order of the columns of plantings.csv.
var fields = []field{
	text("bed", true, func(p *Planting) *string { return &p.Bed }),
	text("crop", true, func(p *Planting) *string { return &p.Crop }),
	text("use", false, func(p *Planting) *string { return &p.Use }),
	text("variety", false, func(p *Planting) *string { return &p.Variety }),
	oneOf("method", methods, func(p *Planting) *Method { return &p.Method }),
	date("date", true, func(p *Planting) *cal.Date { return &p.Date }),
	number("area_m2", true, func(p *Planting) *float64 { return &p.AreaM2 }),
	oneOf("relation", relations, func(p *Planting) *Relation { return &p.Relation }),
	text("to", false, func(p *Planting) *string { return &p.To }),
	date("clear_by", false, func(p *Planting) *cal.Date { return &p.ClearBy }),
	text("store", false, func(p *Planting) *string { return &p.Store }),
	number("years_old", false, func(p *Planting) *float64 { return &p.YearsOld }),
	whole("date_within_d", func(p *Planting) *int { return &p.DateWithinD }),
	number("area_within", false, func(p *Planting) *float64 { return &p.AreaWithin }),
	number("in_row_m", false, func(p *Planting) *float64 { return &p.InRowM }),
	number("between_row_m", false, func(p *Planting) *float64 { return &p.BetweenRowM }),
	date("strip_on", false, func(p *Planting) *cal.Date { return &p.StripOn }),
	number("strip_share", false, func(p *Planting) *float64 { return &p.StripShare }),
	oneOf("stock", stocks, func(p *Planting) *Stock { return &p.Stock }),
	number("seed_plants", false, func(p *Planting) *float64 { return &p.SeedPlants }),
}

// Fields are the columns of a planting that a change may set.
func Fields() []string {
	names := make([]string, len(fields))
	for i, f := range fields {
		names[i] = f.name
	}
	return names
}

// SetField gives one column of a planting the value written in text, as in
// plantings.csv; blank clears a column that may be blank. The planting is left
// as it was when there is a fault.
func SetField(p *Planting, name, text string) *fault.Error {
	text = strings.TrimSpace(text)
	for _, f := range fields {
		if f.name != name {
			continue
		}
		switch {
		case text != "":
			return f.set(p, text)
		case f.required:
			return fault.New(fault.Invalid, "plan.value_blank", words.Args{"field": name})
		}
		f.clear(p)
		return nil
	}
	args := words.Args{"given": name, "allowed": Fields()}
	if found := near.Names(name, Fields(), 1); len(found) > 0 {
		args["near"] = found[0]
		return fault.New(fault.NotFound, "plan.field_unknown_near", args)
	}
	return fault.New(fault.NotFound, "plan.field_unknown", args)
}

func text(name string, required bool, at func(*Planting) *string) field {
	return field{name, required,
		func(p *Planting, s string) *fault.Error { *at(p) = s; return nil },
		func(p *Planting) { *at(p) = "" }}
}

func oneOf[S ~string](name string, allowed []string, at func(*Planting) *S) field {
	set := func(p *Planting, s string) *fault.Error {
		for _, a := range allowed {
			if strings.EqualFold(a, s) {
				*at(p) = S(a)
				return nil
			}
		}
		return fault.New(fault.Invalid, "plan.value_not_allowed", words.Args{
			"field": name, "given": s, "allowed": allowed})
	}
	return field{name, false, set, func(p *Planting) { *at(p) = "" }}
}

func date(name string, required bool, at func(*Planting) *cal.Date) field {
	set := func(p *Planting, s string) *fault.Error {
		d, err := cal.Parse(s)
		if err != nil {
			return fault.New(fault.Invalid, "plan.value_date", words.Args{"field": name, "given": s})
		}
		*at(p) = d
		return nil
	}
	return field{name, required, set, func(p *Planting) { *at(p) = cal.None }}
}

func number(name string, required bool, at func(*Planting) *float64) field {
	set := func(p *Planting, s string) *fault.Error {
		v, ok := parseNumber(s)
		if !ok {
			return fault.New(fault.Invalid, "plan.value_number", words.Args{"field": name, "given": s})
		}
		*at(p) = v
		return nil
	}
	return field{name, required, set, func(p *Planting) { *at(p) = 0 }}
}

// whole is a whole number, such as of days; blank is none.
func whole(name string, at func(*Planting) *int) field {
	set := func(p *Planting, s string) *fault.Error {
		v, ok := parseNumber(s)
		if !ok || v != math.Trunc(v) || v > mostWhole {
			return fault.New(fault.Invalid, "plan.value_whole", words.Args{"field": name, "given": s})
		}
		*at(p) = int(v)
		return nil
	}
	return field{name, false, set, func(p *Planting) { *at(p) = 0 }}
}

// mostWhole is above any count of days in a plan.
const mostWhole = 100_000

// parseNumber reads a plain number of zero or more. A comma is taken for the
// decimal mark, but not before three digits, where it may part thousands.
func parseNumber(s string) (float64, bool) {
	if whole, decimals, found := strings.Cut(s, ","); found && len(decimals) != 3 {
		s = whole + "." + decimals
	}
	if strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0)
}
