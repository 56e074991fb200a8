package jobs

// ForesightD is how long after the last day that jobs are asked for the table is looked at
// [d]: what is picked is weighed until the pick after it (lookAhead), ground that comes
// free is looked for until its dressing has passed (dressAgain), and some work comes
// weeks before a crop is ready that was put in lately, such as stakes.
const ForesightD = 35
