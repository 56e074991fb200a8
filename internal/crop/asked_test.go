package crop

import "testing"

// What a temperate household grows, by the names it would use; common knowledge,
// no source.
var householdCrops = []string{
	"carrot", "beetroot", "parsnip", "swede", "turnip", "radish", "winter radish", "celeriac", "salsify", "Jerusalem artichoke",
	"early potato", "maincrop potato", "sweet potato", "oca",
	"onion", "onion sets", "overwintered onion", "shallot", "hardneck garlic", "softneck garlic", "early leek", "winter leek", "spring onion",
	"Welsh onion", "chives",
	"spring cabbage", "summer cabbage", "autumn cabbage", "winter cabbage", "savoy", "Brussels sprouts", "early sprouting broccoli",
	"late sprouting broccoli", "calabrese", "cauliflower", "kohlrabi", "curly kale", "black kale", "leaf kale", "perennial kale", "collards",
	"pak choi", "tatsoi", "mizuna", "mustard greens", "Chinese cabbage", "rocket",
	"hearting lettuce", "leaf lettuce", "winter lettuce", "spinach", "chard", "leaf beet", "New Zealand spinach", "chicory", "endive",
	"lamb's lettuce", "land cress", "claytonia", "sorrel",
	"pea", "mangetout", "cowpea", "soya bean", "lima bean", "broad bean", "autumn broad bean", "field bean", "dwarf French bean",
	"climbing French bean", "runner bean",
	"tomato", "sweet pepper", "chilli", "aubergine", "indoor cucumber", "ridge cucumber", "courgette", "summer squash", "winter squash",
	"pumpkin", "sweetcorn", "melon", "watermelon", "okra",
	"celery", "Florence fennel", "rhubarb", "asparagus", "globe artichoke", "ginger",
	"parsley", "coriander", "dill", "basil", "mint", "thyme", "sage", "rosemary",
	"overwintered cauliflower", "spring greens", "forcing chicory", "seakale", "pea shoots", "dry bean", "dry pea",
	"June strawberry", "everbearing strawberry", "summer raspberry", "autumn raspberry", "blackberry", "blackcurrant", "redcurrant", "gooseberry",
	"apple", "pear", "plum", "cherry",
	"phacelia", "crimson clover", "winter rye", "vetch", "buckwheat", "mustard green manure",
}

func TestBookHasTheCropsAHouseholdGrows(t *testing.T) {
	book := load(t)
	found := map[string]bool{}
	for _, name := range householdCrops {
		c, _, err := book.Find(name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		found[c.ID] = true
	}
	if len(found) < 80 {
		t.Errorf("%d crops, fewer than eighty", len(found))
	}
}
