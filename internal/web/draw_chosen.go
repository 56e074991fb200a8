package web

import (
	"net/url"
	"strconv"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/words"
)

// drawnChosen is the form beside the drawing of what is chosen on it.
type drawnChosen struct {
	Key      string // table/id
	Name     string
	Says     string
	Path     string // that it is sent to
	Page     string // of the thing, empty: it has none
	Remove   string
	Leave    string
	Hidden   []hiddenField
	Fields   []fieldBody
	HasMore  bool
	MoreOpen bool
	Wrong    int
	Faults   []words.Phrase
	Drawn    bool // it lies on the plan
	Bed      bool
	Cut      *drawnCut
}

// drawnCut asks for what is cut out of a bed's corner.
type drawnCut struct {
	Length, Width string
	Corners       []option
	Corner        string
}

// cutCorners are the corners that can be cut out, as the bed lies before it is
// turned.
var cutCorners = []string{"upper_right", "upper_left", "lower_right", "lower_left"}

// chosen is what is chosen on the drawing, nil when nothing is, or what was is
// gone.
func (s *drawnSite) chosen() (*drawnChosen, error) {
	table, id, _ := strings.Cut(s.at.pick, "/")
	if table != "beds" && table != "features" {
		return nil, nil
	}
	row, err := s.office.Row(table, id)
	if fault.KindOf(err) == fault.NotFound && err != nil || err == nil && row.Cells["site"] != s.site.ID {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	c, err := s.formOf(table, row)
	if err != nil {
		return nil, err
	}
	c.Remove = "/" + table + "/" + pathEscaped(id) + "/remove?back=" + url.QueryEscape(s.at.picking("").path())
	c.Leave = s.at.picking("").path()
	c.Drawn = row.Cells["x_m"] != "" || row.Cells["y_m"] != ""
	if table == "beds" {
		s.chosenBed(&c, id)
	} else {
		dropUnused(&c, place.FeatureKind(row.Cells["kind"]))
	}
	return &c, nil
}

func (s *drawnSite) chosenBed(c *drawnChosen, id string) {
	b, known := bedWith(s.holding, id)
	if !known {
		return
	}
	c.Bed, c.Page = true, bedPath(id)
	c.Says = s.say("web.draw_bed_says", words.Args{"kind": s.named("desk.value_beds.kind.", b.Kind), "area": b.AreaM2()})
	if b.Shape != place.ByOutline {
		dropField(c, "outline")
	}
	if b.Shape == "" || b.Shape == place.Rectangle {
		c.Cut = &drawnCut{Length: s.plain(b.LengthM / 2), Width: s.plain(b.WidthM / 2), Corner: cutCorners[0]}
		if t := s.typed; t != nil && t.cells["cut_length"] != "" {
			c.Cut.Length, c.Cut.Width, c.Cut.Corner = t.cells["cut_length"], t.cells["cut_width"], t.cells["cut_corner"]
		}
		for _, name := range cutCorners {
			c.Cut.Corners = append(c.Cut.Corners, option{name, s.say("web.draw_cut_"+name, nil)})
		}
	}
}

// dropUnused leaves out what is not asked of a feature: a crown has an underside,
// and what drops its leaves has days for it.
func dropUnused(c *drawnChosen, kind place.FeatureKind) {
	tree := kind == place.DeciduousTree || kind == place.EvergreenTree
	if !tree {
		dropField(c, "base_m")
	}
	if kind != place.DeciduousTree && kind != place.Hedge {
		dropField(c, "leaf_on")
		dropField(c, "leaf_off")
		dropField(c, "through_bare")
	}
	if kind == place.Path || kind == place.Building {
		dropField(c, "through_leaf")
	}
}

// dropField leaves a field out that a thing of this shape does not have, unless
// something is wrong with it.
func dropField(c *drawnChosen, name string) {
	c.HasMore = false
	var kept []fieldBody
	for _, f := range c.Fields {
		if f.Name != name || len(f.Faults) > 0 {
			kept = append(kept, f)
			c.HasMore = c.HasMore || f.More
		}
	}
	c.Fields = kept
}

// formOf is the form of a row as it stands, or as it was typed.
func (s *drawnSite) formOf(table string, row *desk.RowView) (drawnChosen, error) {
	f, err := drawnForm(table)
	if err != nil {
		return drawnChosen{}, err
	}
	key := table + "/" + row.ID
	c := drawnChosen{Key: key, Name: row.Cells["name"], Path: s.savePath(key)}
	values, base := map[string]string{}, row.Version
	for name, cell := range row.Cells {
		values[name] = cell
	}
	if values["shape"] == "" {
		values["shape"] = string(place.Rectangle)
	}
	var faults fault.List
	if t := s.typed; t != nil && t.table == table && t.id == row.ID {
		for name, cell := range t.cells {
			values[name] = cell
		}
		faults, base = t.faults, t.base
	}
	if c.Fields, err = s.fieldsOf(f, &choosing{visit: s.visit, holding: s.holding, id: row.ID}, values, faults); err != nil {
		return c, err
	}
	for _, field := range c.Fields {
		c.HasMore = c.HasMore || field.More
		c.MoreOpen = c.MoreOpen || field.More && len(field.Faults) > 0
	}
	c.Wrong, c.Faults = len(faults), f.unplaced(faults)
	entry, err := s.entry()
	c.Hidden = []hiddenField{{"entry", entry}, {"base", strconv.FormatInt(base, 10)}}
	return c, err
}

// planForm asks for the size of the plan and which way is up.
func (s *drawnSite) planForm() (drawnChosen, error) {
	row, err := s.office.Row("sites", s.site.ID)
	if err != nil {
		return drawnChosen{}, err
	}
	c, err := s.formOf("sites", row)
	c.Path = s.planPath()
	for i := range c.Fields {
		c.Fields[i].Must = c.Fields[i].Must || c.Fields[i].Name != "up_deg"
	}
	return c, err
}

// drawnWaiting is a bed that is not on the plan yet.
type drawnWaiting struct {
	ID, Name, Size string
	Path, Save     string
	Hidden         []hiddenField
}

// tray are the beds that are not drawn yet.
func (s *drawnSite) tray() []drawnWaiting {
	var out []drawnWaiting
	for _, b := range s.beds() {
		if b.At.IsSet() {
			continue
		}
		key := "beds/" + b.ID
		out = append(out, drawnWaiting{ID: b.ID, Name: b.Name, Size: s.size(b.LengthM, b.WidthM), Path: s.at.picking(key).path(), Save: s.savePath(key),
			Hidden: []hiddenField{{"base", strconv.FormatInt(s.versions[key], 10)}, {"do", "place"}}})
	}
	return out
}
