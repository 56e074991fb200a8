// Package advise says what to put where ground comes free, whether to leave a
// crop or clear it, and what to fill a hole with.
//
// Worth is the drop in expected shortage at the table [kg]: the difference of the
// full table as it stands and the full table with the candidate in it, over the
// same futures. outlook.Scales compute it; nothing here stands in for it.
//
// Which candidates are weighed is found in two stages. First every use of the
// book whose vegetable is wanted, in every way of starting it, is stepped alone
// under the bed's own weather on a range of days of the time of year in which the
// use is started, under the first futures, and its crop set against what lacks
// day by day (an estimate, never shown). Then the best of them are weighed
// exactly.
//
// A crop is usable in a future when it comes ready by the day it is due for
// winter or spring, is not lost before it has stood its time, and gives the fair
// share of its usual yield that its use asks for, as in package window. The last
// sensible day to sow is the last on which the odds of that hold.
//
// Left out: perennials, which are no filling for a space; crops under and between
// others; what a candidate would leave for the crop after it; and work.
package advise
