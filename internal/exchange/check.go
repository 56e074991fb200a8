package exchange

import (
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/holding"
)

// Check tells everything that is wrong with a holding: what the descriptor of
// the files demands, what contradicts itself, and what the crop book does not
// know. Places are those of the files Write would make.
func Check(h *holding.Holding, book *crop.Book) fault.List {
	c := newChecker(h, newFindings())
	c.checkSchemas()
	c.checkBook(book)
	c.checkSense()
	return c.found.all()
}

// checker looks through one holding.
type checker struct {
	h        *holding.Holding
	found    *findings
	warnings *findings
	numbers  map[string][]int          // row numbers of the tables as read; nil: as written
	unread   map[string]bool           // tables not read to the full: nothing is said of what they lack
	ids      map[string]map[string]int // of each table: id to its first row's index
}

func newChecker(h *holding.Holding, found *findings) *checker {
	c := &checker{h: h, found: found, warnings: newFindings(), numbers: map[string][]int{}, unread: map[string]bool{}}
	c.indexIDs()
	return c
}

// indexIDs notes the ids of every table.
func (c *checker) indexIDs() {
	c.ids = map[string]map[string]int{}
	for _, s := range sheets {
		ids := map[string]int{}
		for i, row := range s.cells(c.h) {
			if _, twice := ids[row[0]]; !twice && row[0] != "" {
				ids[row[0]] = i
			}
		}
		c.ids[s.schema().Name] = ids
	}
}

// place says where a cell is: the row of a table, counted from 0, and a column.
func (c *checker) place(table string, row int, column string) fault.Place {
	number := row + 2
	if numbers, read := c.numbers[table]; read && row < len(numbers) {
		number = numbers[row]
	}
	return fault.Place{File: table + ".csv", Row: number, Column: column}
}

// wrong reports a fault with a cell.
func (c *checker) wrong(table string, row int, column string, e *fault.Error) {
	c.found.add(e.In(c.place(table, row, column)))
}

// faulty tells whether a fault was found with one of the cells of a row.
func (c *checker) faulty(table string, row int, columns ...string) bool {
	for _, column := range columns {
		if c.found.known(c.place(table, row, column)) {
			return true
		}
	}
	return false
}

// has tells whether a table has an id. A table that could not be read has all.
func (c *checker) has(table, id string) bool {
	_, ok := c.ids[table][id]
	return ok || c.unread[table]
}

// checkSense finds what contradicts itself, whatever the crops are.
func (c *checker) checkSense() {
	c.checkHolding()
	c.checkSites()
	c.checkBeds()
	c.checkFeatures()
	c.checkWeather()
	c.checkReadings()
	c.checkCovers()
	c.checkPlans()
	c.checkPlantings()
	c.checkRoom()
	c.checkDrafts()
	c.checkWishes()
	c.checkJobs()
	c.checkWater()
	c.checkGroups()
	c.warnOfWants()
	c.checkVisits()
	c.checkGapsLeft()
	c.checkPurchases()
	c.checkStores()
	c.checkRecords()
	c.checkProblems()
}
