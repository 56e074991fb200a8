// While new figures are being worked out the old ones stay on the page, marked as
// such; the new ones take their place when they are there.
import { put } from "./fragment";

const first = 300; // milliseconds until the first look; each further one waits longer
const longest = 5000;

export function start(): void {
  if (document.querySelector("[data-stale]")) wait(first);
}

function wait(ms: number): void {
  setTimeout(async () => {
    const there = await put({ url: new URL(location.href), held: undefined });
    if (!there) return wait(longest);
    if (document.querySelector("[data-part] .stale-note")) return wait(Math.min(longest, ms * 1.5));
    document.querySelectorAll(".stale").forEach((e) => e.classList.remove("stale"));
  }, ms);
}
