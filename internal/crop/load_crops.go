package crop

import (
	"regexp"
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/words"
)

// identifier is the shape of a crop's id.
var identifier = regexp.MustCompile(`^[a-z][a-z0-9-]*$`)

func (l *loader) loadCrops() {
	for _, t := range l.folder("crops", "id", "name", "plural", "botanical", "family", "vegetable", "class", "group", "common_use", "cautions") {
		for r := range t.rows {
			l.loadCrop(r)
		}
	}
}

func (l *loader) loadCrop(r row) {
	c := &Crop{
		ID: r.get("id"), Name: r.get("name"), Plural: r.get("plural"), Botanical: r.get("botanical"),
		Family: r.get("family"), Vegetable: r.get("vegetable"), Class: r.get("class"), Group: r.get("group"),
		CommonUse: r.get("common_use"), Cautions: r.list("cautions"),
	}
	fine := l.filled(r, "name", "plural", "botanical", "family", "vegetable", "common_use")
	if !identifier.MatchString(c.ID) {
		l.refuse(r.at("id"), fault.Invalid, "crop.id_shape", words.Args{"given": c.ID})
		fine = false
	}
	if _, twice := l.book.byID[c.ID]; twice {
		l.refuse(r.at("id"), fault.Invalid, "crop.crop_twice", words.Args{"crop": c.ID})
		fine = false
	}
	fine = l.oneOf(r, "class", classes) && fine
	fine = l.oneOf(r, "group", groups) && fine
	fine = l.familyOf(r, c) && fine
	for _, key := range c.Cautions {
		if _, ok := l.book.cautions[key]; !ok {
			l.refuse(r.at("cautions"), fault.NotFound, "crop.caution_unknown", words.Args{"caution": key})
		}
	}
	if fine {
		l.book.crops = append(l.book.crops, c)
		l.book.byID[c.ID] = c
		l.rows[c.ID] = r
	}
}

func (l *loader) filled(r row, columns ...string) bool {
	fine := true
	for _, column := range columns {
		if r.get(column) == "" {
			l.refuse(r.at(column), fault.Invalid, "crop.cell_empty", words.Args{"column": column})
			fine = false
		}
	}
	return fine
}

// oneOf reports whether the cell holds an entry of a closed list.
func (l *loader) oneOf(r row, column string, list []string) bool {
	if slices.Contains(list, r.get(column)) {
		return true
	}
	l.refuse(r.at(column), fault.Invalid, "crop.not_in_list",
		words.Args{"column": column, "given": r.get(column), "list": joined(list)})
	return false
}

// cropOf returns the crop a row names; an unknown one is refused.
func (l *loader) cropOf(r row) *Crop {
	if c, ok := l.book.byID[r.get("crop")]; ok {
		return c
	}
	l.refuse(r.at("crop"), fault.NotFound, "crop.crop_unknown", words.Args{"crop": r.get("crop")})
	return nil
}

// usesOf returns the uses a row speaks of: the one named, or all when none is.
func (l *loader) usesOf(r row, c *Crop) []*Use {
	name := r.get("use")
	if name == "" {
		return c.Uses
	}
	for i, u := range c.Uses {
		if u.Name == name {
			return c.Uses[i : i+1]
		}
	}
	l.refuse(r.at("use"), fault.NotFound, "crop.use_unknown",
		words.Args{"crop": c.Name, "use": name, "uses": c.useNames()})
	return nil
}

// useRow is a use with the row it comes from, for faults found later.
type useRow struct {
	use *Use
	row row
}

func (l *loader) loadUses() []useRow {
	var list []useRow
	for _, t := range l.folder("uses", "crop", "use", "label", "pattern", "methods", "reference_method", "reference_date", "reference_cover", "class", "group") {
		for r := range t.rows {
			if c := l.cropOf(r); c != nil {
				if u := l.loadUse(r, c); u != nil {
					c.Uses = append(c.Uses, u)
					list = append(list, useRow{u, r})
				}
			}
		}
	}
	for _, c := range l.book.crops {
		if !slices.ContainsFunc(c.Uses, func(u *Use) bool { return u.Name == c.CommonUse }) {
			l.refuse(l.rows[c.ID].at("common_use"), fault.NotFound, "crop.use_unknown",
				words.Args{"crop": c.Name, "use": c.CommonUse, "uses": c.useNames()})
		}
	}
	return list
}

func (l *loader) loadUse(r row, c *Crop) *Use {
	u := &Use{
		Crop: c.ID, Name: r.get("use"), Label: r.get("label"), Vegetable: c.Vegetable, Family: c.Family,
		Class: c.Class, Group: c.Group, Pattern: Pattern(r.get("pattern")), Methods: r.list("methods"),
		ReferenceMethod: r.get("reference_method"), ReferenceDate: r.get("reference_date"),
		ReferenceCover: r.get("reference_cover"), Cautions: c.Cautions,
	}
	fine := l.filled(r, "use", "label", "methods")
	fine = l.oneOf(r, "pattern", patternNames()) && fine
	fine = l.oneOf(r, "reference_cover", covers) && fine
	if class := r.get("class"); class != "" {
		fine = l.oneOf(r, "class", classes) && fine
		u.Class = class
	}
	if group := r.get("group"); group != "" {
		fine = l.oneOf(r, "group", groups) && fine
		u.Group = group
	}
	for _, m := range u.Methods {
		if !slices.Contains(methods, m) {
			l.refuse(r.at("methods"), fault.Invalid, "crop.not_in_list", words.Args{"column": "methods", "given": m, "list": joined(methods)})
			fine = false
		}
	}
	fine = l.oneOf(r, "reference_method", u.Methods) && fine
	if _, err := cal.ParseMonthDay(u.ReferenceDate); err != nil {
		l.refuse(r.at("reference_date"), fault.Invalid, "crop.not_a_day", words.Args{"given": u.ReferenceDate})
		fine = false
	}
	if slices.ContainsFunc(c.Uses, func(other *Use) bool { return other.Name == u.Name }) {
		l.refuse(r.at("use"), fault.Invalid, "crop.use_twice", words.Args{"crop": c.Name, "use": u.Name})
		fine = false
	}
	if !fine {
		return nil
	}
	return u
}

func patternNames() []string {
	names := make([]string, len(patterns))
	for i, p := range patterns {
		names[i] = string(p)
	}
	return names
}
