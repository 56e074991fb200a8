package exchange

import (
	"encoding/json"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"garner/internal/cover"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
)

var nan = math.NaN()

// Every column of a table is joined to a value, in the order of the schema.
func TestColumnsAreThoseOfTheSchema(t *testing.T) {
	if len(sheets) != len(schemas.Tables) {
		t.Fatalf("%d sheets, %d tables", len(sheets), len(schemas.Tables))
	}
	for i, s := range sheets {
		if s.schema() != &schemas.Tables[i] {
			t.Errorf("%s is out of order", schemas.Tables[i].Name)
		}
		if got := s.columnNames(); !slices.Equal(got, s.schema().names()) {
			t.Errorf("%s: %s", s.schema().Name, cmp.Diff(s.schema().names(), got))
		}
	}
}

// The closed lists are those the engine knows.
func TestClosedListsAreTheEngines(t *testing.T) {
	for _, c := range []struct {
		table, column string
		want          []string
	}{
		{"covers", "kind", texts(cover.Open, cover.Mesh, cover.Fleece, cover.Cloche, cover.LowTunnel, cover.ColdFrame, cover.Tunnel, cover.TunnelTwo, cover.Glasshouse, cover.TunnelInner, cover.Indoors)},
		{"plantings", "method", texts(plan.Seed, plan.Plant, plan.Set, plan.Crown, plan.Cutting)},
		{"plantings", "relation", texts(plan.Under, plan.Between, plan.After, plan.Moved)},
		{"records", "stage", append(texts(record.Flying, record.Eggs, record.Young, record.Damage), texts(record.BlossomStages()...)...)},
		{"records", "what", texts(record.Emerged, record.Planted, record.FirstPick, record.Picked, record.LastPick, record.Died, record.Cleared, record.Counted, record.Watered, record.Covered, record.Failing, record.Moved, record.Disease, record.Sighted, record.Composted, record.Manured, record.Limed, record.Mulched, record.Raised, record.Pricked, record.Fed, record.Blossomed, record.Noted)},
		{"water_sources", "kind", texts(place.Tap, place.Butt, place.Well, place.Bowser)},
		{"moisture_readings", "way", texts(record.Probe, record.Tensiometer, record.Finger)},
		{"beds", "shape", texts(place.Rectangle, place.Round, place.ByOutline)},
		{"covers", "sides", texts(cover.Closed, cover.OpenSided)},
		{"features", "kind", texts(place.Wall, place.Fence, place.Hedge, place.Building, place.DeciduousTree, place.EvergreenTree, place.Path)},
	} {
		s := tableNamed(c.table)
		if got := s.Fields[s.column(c.column)].Constraints.Enum; !slices.Equal(got, c.want) {
			t.Errorf("%s.%s: %v", c.table, c.column, got)
		}
	}
	names := plantingsSheet.table.names()
	if got := slices.DeleteFunc(names, func(n string) bool { return n == "id" || n == "plan" }); !slices.Equal(got, plan.Fields()) {
		t.Errorf("a draft can set %v, a planting has %v", plan.Fields(), got)
	}
}

func texts[S ~string](values ...S) (out []string) {
	for _, v := range values {
		out = append(out, string(v))
	}
	return out
}

// The rules are those of Table Schema version 1 (specs.frictionlessdata.io/
// table-schema, "Types and Formats", "Constraints", "Foreign Keys") and of Data
// Package version 1 ("Descriptor", "Resource Information").
func TestDescriptorKeepsTheStandards(t *testing.T) {
	raw := mustWrite(t, mustRead(t, inFolder(hand(t))))[descriptorFile]
	var d map[string]any
	if err := json.Unmarshal(raw, &d); err != nil {
		t.Fatal(err)
	}
	if d["profile"] != "tabular-data-package" || !regexp.MustCompile(`^[-a-z0-9._/]+$`).MatchString(d["name"].(string)) {
		t.Errorf("profile %v, name %v", d["profile"], d["name"])
	}
	resources := map[string]map[string]any{}
	for _, r := range d["resources"].([]any) {
		resource := r.(map[string]any)
		name := resource["name"].(string)
		if resources[name] != nil {
			t.Errorf("resource %s is there twice", name)
		}
		resources[name] = resource
	}
	for name, r := range resources {
		checkResource(t, name, r, resources)
	}
}

func checkResource(t *testing.T, name string, r map[string]any, all map[string]map[string]any) {
	path := r["path"].(string)
	if r["profile"] != "tabular-data-resource" || !regexp.MustCompile(`^[-a-z0-9._/]+$`).MatchString(name) ||
		strings.HasPrefix(path, "/") || strings.Contains(path, "..") {
		t.Errorf("resource %s: profile %v, path %v", name, r["profile"], path)
	}
	schema := r["schema"].(map[string]any)
	names := map[string]bool{}
	for _, f := range schema["fields"].([]any) {
		column := f.(map[string]any)
		names[column["name"].(string)] = true
		checkColumn(t, name, column)
	}
	if key, ok := schema["primaryKey"]; ok && !names[key.(string)] {
		t.Errorf("%s: primary key %v is no column", name, key)
	}
	keys, _ := schema["foreignKeys"].([]any)
	for _, k := range keys {
		key := k.(map[string]any)
		to := key["reference"].(map[string]any)
		target := to["resource"].(string)
		if !names[key["fields"].(string)] || target != "" && all[target] == nil || target == name {
			t.Errorf("%s: foreign key %v", name, key)
		}
	}
}

// allowedConstraints are the constraints Table Schema allows for each type, of
// those we use.
var allowedConstraints = map[string][]string{
	"string":  {"required", "unique", "pattern", "enum"},
	"number":  {"required", "unique", "minimum", "maximum", "enum"},
	"integer": {"required", "unique", "minimum", "maximum", "enum"},
	"date":    {"required", "unique", "minimum", "maximum", "enum"},
}

func checkColumn(t *testing.T, table string, column map[string]any) {
	kind := column["type"].(string)
	allowed, known := allowedConstraints[kind]
	if !known || column["description"] == "" {
		t.Errorf("%s.%v: type %v, description %v", table, column["name"], kind, column["description"])
	}
	constraints, _ := column["constraints"].(map[string]any)
	for c, v := range constraints {
		if !slices.Contains(allowed, c) {
			t.Errorf("%s.%v: a %s cannot have the constraint %s", table, column["name"], kind, c)
		}
		_, isNumber := v.(float64)
		if (c == "minimum" || c == "maximum") && isNumber != (kind != "date") {
			t.Errorf("%s.%v: %s is %v", table, column["name"], c, v)
		}
	}
}
