package main

import (
	"math"
	"time"
)

// Run is what one of the contestants made of a problem.
type Run struct {
	By        string   `json:"by"`
	Version   string   `json:"version,omitempty"`
	Asked     string   `json:"asked"`               // the command or the settings
	Closed    bool     `json:"closed"`              // it says that no plan can be better
	Objective *float64 `json:"objective,omitempty"` // of its plan, computed by the product
	Stated    *float64 `json:"stated,omitempty"`    // of its plan, as it says itself
	Broken    int      `json:"broken,omitempty"`    // rows that its plan overruns
	Bound     *float64 `json:"bound,omitempty"`     // no plan can cost less
	Seconds   float64  `json:"seconds"`             // from its start to its end
	Trace     []Point  `json:"trace,omitempty"`     // its better and better plans
	Trouble   string   `json:"trouble,omitempty"`   // why there is no plan of it
}

// Point is a plan that was better than all before.
type Point struct {
	Seconds   float64 `json:"seconds"`
	Objective float64 `json:"objective"`
}

// watch notes plans and bounds as they are found.
type watch struct {
	begin time.Time
	run   *Run
}

func (w *watch) seconds() float64 { return hundredths(time.Since(w.begin).Seconds()) }

func (w *watch) found(objective float64) {
	if n := len(w.run.Trace); n == 0 || objective < w.run.Trace[n-1].Objective-1e-9 {
		w.run.Trace = append(w.run.Trace, Point{w.seconds(), objective})
	}
}

func (w *watch) bounded(bound float64) {
	if math.IsInf(bound, 0) || math.IsNaN(bound) || math.Abs(bound) >= 1e30 {
		return
	}
	if w.run.Bound == nil || bound > *w.run.Bound {
		w.run.Bound = &bound
	}
}

func hundredths(x float64) float64 { return math.Round(x*100) / 100 }
