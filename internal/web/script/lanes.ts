// A sowing is dragged upon the lanes by its ring: along a lane in time, onto
// another lane into its bed. The arrow keys do the same, and plus and minus
// change how much ground it has. Each move tries the change, and what it does is
// shown while the finger is still down. Buttons do the same without a script.

import { address, show } from "./fragment";
import { addressOf, dateOf, dayOf, earliest, sayDay } from "./ring";

const threshold = 4; // pixels before a press is a move

interface Drag {
  planting: string;
  pointer: number;
  startX: number;
  startDay: number;
  day: number;
  startBed: string;
  bed: string;
  pixelsADay: number;
  moving: boolean;
  sheet: HTMLElement;
  from: string; // the address as it was
}

let drag: Drag | undefined;

export function start(): void {
  if (!document.querySelector(".ground-page")) return;
  document.addEventListener("pointerdown", press);
  document.addEventListener("pointermove", move);
  document.addEventListener("pointerup", release);
  document.addEventListener("pointercancel", cancel);
  document.addEventListener("keydown", key);
}

function ringOf(target: EventTarget | null): SVGElement | undefined {
  return target instanceof Element ? (target.closest<SVGElement>(".ring[data-bed]") ?? undefined) : undefined;
}

/** The ring of a planting as it now stands on the page: parts come and go. */
function ringNow(planting: string): SVGElement | undefined {
  return document.querySelector<SVGElement>(`.ring[data-planting="${CSS.escape(planting)}"]`) ?? undefined;
}

function press(event: PointerEvent): void {
  const ring = ringOf(event.target) ?? ringBelow(event);
  const lane = ring?.closest("svg");
  const sheet = ring?.closest<HTMLElement>(".lanes-sheet");
  const days = Number(ring?.dataset["days"]);
  if (!ring || !lane || !sheet || !days || event.button !== 0) return;
  if (drag && drag.pointer !== event.pointerId) return; // a second finger
  event.preventDefault();
  const day = dayOf(ring);
  const bed = ring.dataset["bed"] ?? "";
  drag = {
    planting: ring.dataset["planting"] ?? "", pointer: event.pointerId, startX: event.clientX, startDay: day, day,
    startBed: bed, bed, pixelsADay: lane.getBoundingClientRect().width / days, moving: false, sheet,
    from: address(),
  };
  // The sheet stays while its lanes are put anew, so the pointer is not lost.
  sheet.setPointerCapture(event.pointerId);
  ring.focus({ preventScroll: true });
}

/** A ring that lies beneath the line of the plan's date. */
function ringBelow(event: PointerEvent): SVGElement | undefined {
  if (!(event.target instanceof Element) || !event.target.closest(".date-mark")) return undefined;
  for (const e of document.elementsFromPoint(event.clientX, event.clientY)) {
    const ring = ringOf(e);
    if (ring) return ring;
  }
  return undefined;
}

/** Tells whether a press is for a ring, not for the line over it. */
export function takesPress(event: PointerEvent): boolean {
  return !!(ringOf(event.target) ?? ringBelow(event));
}

function bedAt(event: PointerEvent): string | undefined {
  for (const e of document.elementsFromPoint(event.clientX, event.clientY)) {
    const lane = e.closest<HTMLElement>("[data-lane]");
    if (lane) return lane.dataset["lane"];
  }
  return undefined;
}

function move(event: PointerEvent): void {
  if (!drag || event.pointerId !== drag.pointer) return;
  const far = event.clientX - drag.startX;
  const bed = bedAt(event) ?? drag.bed;
  if (!drag.moving && Math.abs(far) < threshold && bed === drag.startBed) return;
  drag.moving = true;
  const day = Math.max(drag.startDay + Math.round(far / drag.pixelsADay), earliest());
  if (day === drag.day && bed === drag.bed) return;
  drag.day = day;
  drag.bed = bed;
  follow();
  void show(tried(drag), drag.sheet).then(follow);
}

/** Puts the ring where the finger is, until the answer has it there. */
function follow(): void {
  for (const e of document.querySelectorAll(".lane-row.over")) {
    if (e.getAttribute("data-lane") !== drag?.bed) e.classList.remove("over");
  }
  if (!drag?.moving) return;
  if (drag.bed !== drag.startBed) {
    document.querySelector(`[data-lane="${CSS.escape(drag.bed)}"]`)?.classList.add("over");
  }
  const ring = ringNow(drag.planting);
  if (!ring) return;
  forget(ring);
  ring.classList.add("moving");
  ring.setAttribute("transform", `translate(${(drag.day - dayOf(ring)) * drag.pixelsADay} 0)`);
  sayDay(ring, drag.day);
}

/** Has a lane sent anew, though it comes to what it was: what is on the page is
 * no longer that. */
function forget(ring: SVGElement): void {
  ring.closest("[data-key]")?.removeAttribute("data-key");
}

function tried(d: Drag): URL {
  const date = d.day === d.startDay ? {} : { date: dateOf(d.day) };
  return addressOf(d.planting, { ...date, ...(d.bed === d.startBed ? {} : { bed: d.bed }) }, d.from);
}

function release(event: PointerEvent): void {
  const done = drag;
  if (!done || event.pointerId !== done.pointer) return;
  drag = undefined;
  follow();
  if (done.moving) void show(tried(done));
}

function cancel(event: PointerEvent): void {
  const done = drag;
  if (!done || event.pointerId !== done.pointer) return;
  putBack(done);
}

function putBack(done: Drag): void {
  drag = undefined;
  follow();
  if (done.moving) void show(tried({ ...done, day: done.startDay, bed: done.startBed }));
}

const days: Record<string, number> = { ArrowLeft: -1, ArrowRight: 1, PageUp: -7, PageDown: 7 };
const beds: Record<string, number> = { ArrowUp: -1, ArrowDown: 1 };
const sizes: Record<string, number> = { "+": 1, "=": 1, "-": -1 };

function key(event: KeyboardEvent): void {
  const ring = ringOf(event.target);
  if (!ring || event.altKey || event.ctrlKey || event.metaKey) return;
  if (event.key === "Escape" && drag) {
    putBack(drag);
    return;
  }
  const change = keyed(ring, event);
  if (!change) return;
  event.preventDefault();
  forget(ring);
  void show(addressOf(ring.dataset["planting"] ?? "", change));
}

/** What a key does to a planting. Quick presses add up on the ring itself. */
function keyed(ring: SVGElement, event: KeyboardEvent): Record<string, string> | undefined {
  if (event.key in days) {
    const day = Math.max(dayOf(ring) + (days[event.key] ?? 0) * (event.shiftKey ? 7 : 1), earliest());
    ring.dataset["date"] = dateOf(day);
    sayDay(ring, day);
    return { date: dateOf(day) };
  }
  if (event.key in beds) {
    const lanes = [...document.querySelectorAll<HTMLElement>("[data-lane]")].map((e) => e.dataset["lane"] ?? "");
    const bed = lanes[lanes.indexOf(ring.dataset["bed"] ?? "") + (beds[event.key] ?? 0)];
    if (!bed) return undefined;
    ring.dataset["bed"] = bed;
    return { bed };
  }
  if (event.key in sizes) {
    const step = Number(ring.dataset["step"]) || 0.5;
    const area = Math.max(0.1, Math.round((Number(ring.dataset["area"]) + (sizes[event.key] ?? 0) * step) * 10) / 10);
    ring.dataset["area"] = String(area);
    return { area_m2: String(area) };
  }
  return undefined;
}
