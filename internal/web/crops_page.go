package web

import (
	"net/url"
	"slices"
	"strings"

	"garner/internal/desk"
)

// cropsBody is the crop book as a list.
type cropsBody struct {
	Query   string
	By      string // kind or family
	Unknown bool   // no crop answers to what was looked for
	Nearest []nameLink
	Found   int // with several: how many
	Groups  []cropGroup
}

// nameLink is a name that leads somewhere.
type nameLink struct{ Name, Path string }

// cropGroup is what is listed under one heading.
type cropGroup struct {
	Name, Latin string
	Lines       []cropListLine
}

// cropListLine is one crop in the list.
type cropListLine struct {
	desk.CropLine
	Path  string
	Find  string // in which its names are looked for
	Uses  string
	Other string // the vegetable it is counted as, when that is another name
}

// cropsPage lists the crop book. A name that one crop goes by leads to it.
func cropsPage(v *visit) error {
	b := cropsBody{Query: strings.TrimSpace(v.query("name")), By: v.query("by")}
	if b.By != "family" {
		b.By = "kind"
	}
	list, err := v.office.CropList()
	if err != nil {
		return err
	}
	if b.Query != "" {
		found, err := v.office.FindCrop(b.Query)
		if err != nil {
			return err
		}
		switch {
		case found.Crop != "":
			v.moveTo(cropPath(found.Crop, found.Use))
			return nil
		case len(found.Several) > 0:
			list = slices.DeleteFunc(list, func(l desk.CropLine) bool { return !slices.Contains(found.Several, l.ID) })
			b.Found = len(list)
		default:
			b.Unknown = true
			for _, name := range found.Nearest {
				b.Nearest = append(b.Nearest, nameLink{capital(name), "/crops?name=" + url.QueryEscape(name)})
			}
		}
	}
	b.Groups = v.cropGroups(list, b.By)
	return v.show(page{Name: "crops", Nav: "crops", Body: b})
}

// kindsInOrder is the order in which kinds are listed.
var kindsInOrder = []string{"leaves", "greens", "heads", "roots", "potatoes", "onions", "legumes", "fruit", "perennials", "green manures"}

// cropGroups puts crops under their kind, in the order of kinds, or under their
// family, the largest first.
func (v *visit) cropGroups(list []desk.CropLine, by string) []cropGroup {
	var keys []string
	of := map[string][]cropListLine{}
	if by == "kind" {
		keys = slices.Clone(kindsInOrder)
	}
	for _, l := range list {
		key := l.Kind
		if by == "family" {
			key = l.Family
		}
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
		of[key] = append(of[key], v.cropListLine(l))
	}
	if by == "family" {
		slices.SortStableFunc(keys, func(a, b string) int { return len(of[b]) - len(of[a]) })
	}
	var out []cropGroup
	for _, key := range keys {
		if len(of[key]) == 0 {
			continue
		}
		g := cropGroup{Name: v.named("web.kind_", key), Lines: of[key]}
		if by == "family" {
			g.Name, g.Latin = capital(of[key][0].FamilyName), key
		}
		out = append(out, g)
	}
	return out
}

func (v *visit) cropListLine(l desk.CropLine) cropListLine {
	line := cropListLine{CropLine: l, Path: cropPath(l.ID, ""), Find: l.Search}
	if l.Vegetable != "" && l.Vegetable != l.Name {
		line.Other = l.Vegetable
	}
	if len(l.Uses) > 1 {
		var labels []string
		for _, u := range l.Uses {
			labels = append(labels, u.Label)
		}
		line.Uses = strings.Join(labels, "; ")
	}
	return line
}

// cropPath is the address of a crop in a use; "" is its common one.
func cropPath(id, use string) string {
	path := "/crop/" + pathEscaped(id)
	if use != "" {
		path += "?use=" + url.QueryEscape(use)
	}
	return path
}
