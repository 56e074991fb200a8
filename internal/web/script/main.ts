// What makes the pages answer without a reload. Every page works without it; each
// part below looks for what it serves on the page and does nothing when it is not
// there.
import * as dateline from "./dateline";
import { findWhileTyping } from "./find";
import * as lanes from "./lanes";
import * as plan from "./plan";
import { forgetSaid } from "./said";
import * as stale from "./stale";
import * as beginning from "./start";
import * as trying from "./try";
import * as week from "./week";

forgetSaid();
findWhileTyping();
beginning.start();
plan.start();
stale.start();
trying.start();
lanes.start();
dateline.start();
week.start();
