package crop

import "slices"

// The methods by which a planting begins. The list is closed and documented.
const (
	Seed    = "seed"    // sown in place
	Plant   = "plant"   // raised elsewhere and planted out
	Set     = "set"     // set, clove or tuber
	Crown   = "crown"   // crown, offset or bought plant of a perennial
	Cutting = "cutting" // rooted cutting or slip
)

var (
	methods  = []string{Seed, Plant, Set, Crown, Cutting}
	patterns = []Pattern{Pull, Picking, Cut, LeafThenHead, Perennial, GroundCover}
	classes  = []string{"hardy", "half-hardy", "tender", "very tender"}
	groups   = []string{"heads", "leaves", "greens", "roots", "onions", "legumes", "fruit", "potatoes", "perennials", "green manures"}
	covers   = []string{"open", "mesh", "fleece", "cloche", "low tunnel", "cold frame", "tunnel", "double tunnel", "glasshouse", "tunnel + fleece", "indoors"}
)

// need says when a parameter applies: with one of the methods, and with one of
// the patterns. An empty list is any. An optional one may be absent where it
// makes no sense: nobody sows a pear, and dry seed has no size at the table.
type need struct {
	methods  []string
	patterns []Pattern
	optional bool
}

// food are the patterns that give food.
var food = []Pattern{Pull, Picking, Cut, LeafThenHead, Perennial}

// needs lists the parameters that do not apply to every use.
var needs = map[string]need{
	"emerge_base_c":          {methods: []string{Seed, Plant, Set}},
	"emerge_optimum_c":       {methods: []string{Seed, Plant, Set}},
	"emerge_ceiling_c":       {methods: []string{Seed, Plant, Set}},
	"emerge_thermal_cd":      {methods: []string{Seed, Plant, Set}},
	"emerge_limit_days":      {methods: []string{Seed, Plant, Set}},
	"raise_days":             {methods: []string{Plant, Cutting}},
	"raise_c":                {methods: []string{Plant, Cutting}},
	"days_seed":              {methods: []string{Seed}},
	"days_plant":             {methods: []string{Plant, Cutting}},
	"days_set":               {methods: []string{Set, Crown}},
	"leaf_start_cm2":         {methods: []string{Seed, Set, Crown}},
	"leaf_plant_cm2":         {methods: []string{Plant, Cutting}},
	"seeds_per_gram":         {methods: []string{Seed, Plant}},
	"seed_life_years":        {methods: []string{Seed, Plant}},
	"cell_ml":                {methods: []string{Plant}},
	"sow_depth_m":            {methods: []string{Seed, Plant, Set}, optional: true},
	"sow_per_m":              {methods: []string{Seed}},
	"set_g":                  {methods: []string{Set}},
	"table_g":                {patterns: []Pattern{Pull, LeafThenHead}, optional: true},
	"renew_years":            {patterns: []Pattern{Perennial}},
	"stand_days":             {patterns: []Pattern{Pull, LeafThenHead, Cut, GroundCover}},
	"organ_start":            {patterns: food},
	"organ_share":            {patterns: food},
	"dry_matter":             {patterns: food},
	"yield_scale":            {patterns: food},
	"piece_g":                {patterns: food},
	"usable_g":               {patterns: food},
	"yield_kg_m2":            {patterns: food},
	"yield_low_kg_m2":        {patterns: food},
	"yield_high_kg_m2":       {patterns: food},
	"edible_share":           {patterns: food},
	"portion_g":              {patterns: food},
	"store_humidity":         {patterns: food},
	"lift_at_end":            {patterns: food},
	"heat_end_c":             {patterns: food},
	"keep_days":              {patterns: food},
	"fair_share":             {patterns: food},
	"due_after_solstice_d":   {patterns: food},
	"start_after_solstice_d": {patterns: food},
	"pick_days":              {patterns: []Pattern{Picking}},
	"flush_days":             {patterns: []Pattern{Picking}},
	"cut_days":               {patterns: []Pattern{Cut}},
	"cuts":                   {patterns: []Pattern{Cut}},
	"hold_days":              {patterns: []Pattern{Picking, Cut, LeafThenHead, Perennial}},
	"leaf_share":             {patterns: []Pattern{LeafThenHead}},
	"season_thermal_cd":      {patterns: []Pattern{Perennial}},
	"season_days":            {patterns: []Pattern{Perennial}},
	"close_after_solstice_d": {patterns: []Pattern{Perennial}},
	"age_yield_0":            {patterns: []Pattern{Perennial}},
	"age_yield_1":            {patterns: []Pattern{Perennial}},
	"age_yield_2":            {patterns: []Pattern{Perennial}},
	"age_yield_3":            {patterns: []Pattern{Perennial}},
	"age_yield_4":            {patterns: []Pattern{Perennial}},
	"age_yield_5":            {patterns: []Pattern{Perennial}},
}

// applies reports whether a use must have the parameter.
func applies(parameter string, u *Use) bool {
	n, some := needs[parameter]
	if !some {
		return true
	}
	if len(n.patterns) > 0 && !slices.Contains(n.patterns, u.Pattern) {
		return false
	}
	return len(n.methods) == 0 || slices.ContainsFunc(n.methods, u.Allows)
}
