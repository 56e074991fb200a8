// Package jobs tells what is to be done, where and when, from the plan, the season's
// computed stages and what was recorded.
//
// Jobs of the plan itself (sow, raise, plant, cover, lift, clear) come from its dates;
// care comes from rules in data/care.csv and data/ground.csv, each anchored to a day of
// the planting (raised, planted, emerged, ready, pick, over, lifted) or to a season of
// the year, with how often it comes again. A stage that lies ahead is the middle of the
// table's futures; one that comes in fewer than half of them makes no job. What was
// recorded takes the place of what was forecast. Minutes, tools and who can do a job
// stand in data/kinds.csv.
//
// A job keeps its id from one computation to the next: the rule, what it is about, and
// for one that comes again the number of its turn, or its year. A turn that was done or
// skipped moves the next one; turns that went by unanswered are not counted up.
//
// What putting a job off costs at the table is the difference of two full tables, by
// outlook's scales; only jobs whose day the plan sets can be weighed, and for picks the
// share of a week's flow that would spoil is told in its place.
//
// The weather of the week, where it is told, moves work out of rain and wind
// (data/limits.csv), opens and closes covers, and asks for fleece or the harvest before a
// frost. What was said and recorded moves the days that hang on it.
//
// Left out: weather by the hour, wet or frozen ground, going to and fro, and jobs that two
// people do together. All care is common practice; none was read in a source.
package jobs
