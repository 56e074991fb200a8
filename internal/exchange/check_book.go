package exchange

import (
	"errors"
	"slices"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/near"
	"garner/internal/plan"
	"garner/internal/words"
)

// checkBook finds what the crop book does not know.
func (c *checker) checkBook(book *crop.Book) {
	c.checkOverrides(book)
	for i, v := range c.h.Varieties {
		c.knownUse("varieties", i, book, v.Crop, v.Use)
	}
	for i := range c.h.Plantings {
		p := &c.h.Plantings[i]
		for _, w := range bookFaults(p, book) {
			c.wrong("plantings", i, w.column, w.fault)
		}
		if why := c.doesNotKeep(book, p.Crop, p.Use, p.Store); why != nil {
			c.warnings.add(fault.New(fault.Conflict, "exchange.does_not_keep", why).In(c.place("plantings", i, "store")))
		}
		c.stock(i, book, p)
	}
	for i, l := range c.h.OnHand {
		c.knownUse("onhand", i, book, l.Crop, l.Use)
	}
	c.checkDraftCrops(book)
	c.checkWishedCrops(book)
	vegetables := vegetablesOf(book)
	for i, w := range c.h.Wants {
		if w.Vegetable != "" && !slices.Contains(vegetables, w.Vegetable) {
			c.wrong("wants", i, "vegetable", unknownVegetable(w.Vegetable, vegetables))
		}
	}
	for i, g := range c.h.Groups {
		if slices.Contains(vegetables, g.Name) {
			c.wrong("groups", i, "name", fault.New(fault.Conflict, "exchange.group_as_vegetable", words.Args{"given": g.Name}))
		}
	}
	for i, m := range c.h.Members {
		if m.Vegetable != "" && !slices.Contains(vegetables, m.Vegetable) {
			c.wrong("members", i, "vegetable", unknownVegetable(m.Vegetable, vegetables))
		}
	}
	for i, l := range c.h.GapsLeft {
		if l.Vegetable != "" && !slices.Contains(vegetables, l.Vegetable) {
			c.wrong("gaps_left", i, "vegetable", unknownVegetable(l.Vegetable, vegetables))
		}
	}
	for i, p := range c.h.Purchases {
		if p.Vegetable != "" && !slices.Contains(vegetables, p.Vegetable) {
			c.wrong("purchases", i, "vegetable", unknownVegetable(p.Vegetable, vegetables))
		}
	}
	for i, b := range c.h.Batches {
		c.knownUse("batches", i, book, b.Crop, b.Use)
		if why := c.doesNotKeep(book, b.Crop, b.Use, b.Store); why != nil {
			why["batch"] = b.ID // what lies there has no life to reckon with
			c.wrong("batches", i, "store", fault.New(fault.Conflict, "exchange.batch_does_not_keep", why))
		}
	}
}

// checkOverrides tries the grower's own numbers on the book.
func (c *checker) checkOverrides(book *crop.Book) {
	for i := range c.h.Overrides {
		o := &c.h.Overrides[i]
		if _, e := cropOf(book, o.Crop); e != nil {
			c.wrong("crops", i, "crop", e)
			continue
		}
		if _, faults := book.With(c.h.Overrides[i : i+1]); len(faults) > 0 {
			e := faults[0]
			column := e.At.Column
			if tableNamed("crops").column(column) < 0 {
				column = "value" // numbers that contradict each other
			}
			c.wrong("crops", i, column, e)
		}
	}
	// Two numbers may be sound one by one and contradict each other.
	_, faults := book.With(c.h.Overrides)
	for _, e := range faults {
		for i := range c.h.Overrides {
			if c.h.Overrides[i].Parameter == e.At.Column {
				c.wrong("crops", i, "value", e)
				break
			}
		}
	}
}

// checkDraftCrops looks at the plantings that drafts add or change.
func (c *checker) checkDraftCrops(book *crop.Book) {
	for _, d := range c.h.Plans {
		if d.Base == "" {
			continue
		}
		resolved, _ := plan.Resolve(c.h.Plans, c.h.Plantings, c.h.Changes, d.ID)
		touched := c.touched(d.ID)
		for k := range resolved {
			rows := touched[resolved[k].ID]
			if rows == nil {
				continue
			}
			for _, w := range bookFaults(&resolved[k], book) {
				c.draftFault(rows, w)
			}
		}
	}
}

// bookFaults finds what the book does not know of a planting.
func bookFaults(p *plan.Planting, book *crop.Book) []inColumn {
	if p.Crop == "" {
		return nil
	}
	k, e := cropOf(book, p.Crop)
	if e != nil {
		return []inColumn{{"crop", e}}
	}
	u, err := k.Use(p.Use)
	if err != nil {
		return []inColumn{{"use", asFault(err)}}
	}
	if p.Method != "" && !u.Allows(string(p.Method)) {
		return []inColumn{{"method", fault.New(fault.Conflict, "exchange.method_not_for_crop",
			words.Args{"given": string(p.Method), "crop": k.Name, "use": u.Name, "allowed": u.Methods})}}
	}
	return nil
}

func (c *checker) knownUse(table string, row int, book *crop.Book, id, use string) {
	if id == "" {
		return
	}
	k, e := cropOf(book, id)
	if e != nil {
		c.wrong(table, row, "crop", e)
		return
	}
	if _, err := k.Use(use); err != nil {
		c.wrong(table, row, "use", asFault(err))
	}
}

// doesNotKeep says how a store keeps and how the crop does, where the book knows no
// life of the crop there; else nil.
func (c *checker) doesNotKeep(book *crop.Book, id, use, store string) words.Args {
	i, known := c.ids["stores"][store]
	k, e := cropOf(book, id)
	if store == "" || !known || e != nil || c.faulty("stores", i, "method") {
		return nil
	}
	u, err := k.Use(use)
	if err != nil {
		return nil
	}
	method := c.h.Stores[i].Method
	var ways []string
	for _, s := range u.Storage {
		ways = append(ways, s.Method)
	}
	if slices.Contains(ways, method) {
		return nil
	}
	return words.Args{"crop": k.Name, "method": method, "ways": ways}
}

// cropOf returns the crop with an id. A name that the book knows otherwise is
// answered with the id to write.
func cropOf(book *crop.Book, id string) (*crop.Crop, *fault.Error) {
	if k, ok := book.Crop(id); ok {
		return k, nil
	}
	k, _, err := book.Find(id)
	if err != nil {
		return nil, asFault(err)
	}
	return nil, fault.New(fault.NotFound, "exchange.crop_by_id", words.Args{"given": id, "id": k.ID})
}

func asFault(err error) *fault.Error {
	var e *fault.Error
	if errors.As(err, &e) {
		return e
	}
	return fault.New(fault.Internal, "exchange.internal", nil)
}

// vegetablesOf returns the names under which the book counts what is eaten.
func vegetablesOf(book *crop.Book) []string {
	var names []string
	for _, k := range book.Crops() {
		for _, u := range k.Uses {
			if u.Feeds() {
				names = append(names, u.Vegetable)
			}
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

func unknownVegetable(given string, names []string) *fault.Error {
	if found := near.Names(given, names, 3); len(found) > 0 {
		return fault.New(fault.NotFound, "exchange.vegetable_unknown_near", words.Args{"given": given, "near": found})
	}
	return fault.New(fault.NotFound, "exchange.vegetable_unknown", words.Args{"given": given})
}
