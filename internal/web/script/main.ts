// What makes the pages answer without a reload. Every page works without it; each
// part below looks for what it serves on the page and does nothing when it is not
// there.
import { forgetSaid } from "./said";
import * as stale from "./stale";
import * as trying from "./try";

forgetSaid();
stale.start();
trying.start();
