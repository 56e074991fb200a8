// The ring on a planting's lane stands at its date and can be moved: by mouse,
// pen or finger, or by the arrow keys. Each move tries the planting on another
// day; the buttons Sooner and Later do the same without a script.

import { address, show } from "./fragment";

const threshold = 5; // pixels before a press is a move
export const dayMs = 86_400_000;

interface Drag {
  ring: SVGElement;
  pointer: number;
  startX: number;
  startDay: number;
  day: number;
  pixelsADay: number;
  moving: boolean;
}

let drag: Drag | undefined;

export function start(): void {
  document.addEventListener("pointerdown", press);
  document.addEventListener("pointermove", move);
  document.addEventListener("pointerup", release);
  document.addEventListener("pointercancel", cancel);
  document.addEventListener("keydown", key);
}

function ringOf(target: EventTarget | null): SVGElement | undefined {
  if (!(target instanceof Element)) return undefined;
  return target.closest<SVGElement>(".ring[data-planting]:not([data-bed])") ?? undefined;
}

export function dayOf(ring: SVGElement): number {
  return Date.parse(ring.dataset["date"] ?? "") / dayMs;
}

export function dateOf(day: number): string {
  return new Date(day * dayMs).toISOString().slice(0, 10);
}

/** The first day a planting can be moved to: the one after today. */
export function earliest(): number {
  const today = document.querySelector<HTMLElement>("[data-today]")?.dataset["today"] ?? "";
  return Date.parse(today) / dayMs + 1 || -Infinity;
}

/** The address of this page with fields of a planting tried otherwise. */
export function addressOf(planting: string, fields: Record<string, string>, from = address()): URL {
  const url = new URL(from);
  const mine = Object.entries(fields).map(([field, value]): [string, string] => [`${planting}:${field}=`, value]);
  const others = url.searchParams.getAll("try").filter((t) => !mine.some(([field]) => t.startsWith(field)));
  url.searchParams.delete("try");
  for (const t of [...others, ...mine.map(([field, value]) => field + value)]) url.searchParams.append("try", t);
  return url;
}

/** The address of this page with a planting tried on another day. */
function tried(planting: string, day: number): URL {
  return addressOf(planting, { date: dateOf(day) });
}

function press(event: PointerEvent): void {
  const ring = ringOf(event.target);
  if (!ring || event.button !== 0) return;
  if (drag && drag.pointer !== event.pointerId) return; // a second finger
  const lane = ring.closest("svg");
  const days = Number(ring.dataset["days"]);
  if (!lane || !days) return;
  event.preventDefault();
  const day = dayOf(ring);
  drag = {
    ring, pointer: event.pointerId, startX: event.clientX, startDay: day, day,
    pixelsADay: lane.getBoundingClientRect().width / days, moving: false,
  };
  ring.focus({ preventScroll: true });
}

function move(event: PointerEvent): void {
  if (!drag || event.pointerId !== drag.pointer) return;
  const far = event.clientX - drag.startX;
  if (!drag.moving && Math.abs(far) < threshold) return;
  drag.moving = true;
  const day = Math.max(drag.startDay + Math.round(far / drag.pixelsADay), earliest());
  if (day === drag.day) return;
  drag.day = day;
  drag.ring.setAttribute("transform", `translate(${(day - drag.startDay) * drag.pixelsADay} 0)`);
  sayDay(drag.ring, day);
  void show(tried(drag.ring.dataset["planting"] ?? "", day), drag.ring);
}

function release(event: PointerEvent): void {
  const done = drag;
  if (!done || event.pointerId !== done.pointer) return;
  drag = undefined;
  if (done.moving) go(done.ring, done.day);
}

function cancel(event: PointerEvent): void {
  const done = drag;
  if (!done || event.pointerId !== done.pointer) return;
  drag = undefined;
  done.ring.removeAttribute("transform");
  if (done.moving) go(done.ring, done.startDay);
}

const steps: Record<string, number> = {
  ArrowLeft: -1, ArrowRight: 1, ArrowDown: -1, ArrowUp: 1, PageUp: 7, PageDown: -7,
};

function key(event: KeyboardEvent): void {
  const ring = ringOf(event.target);
  if (!ring || event.altKey || event.ctrlKey || event.metaKey) return;
  if (event.key === "Escape" && drag) {
    const day = drag.startDay;
    drag = undefined;
    ring.removeAttribute("transform");
    go(ring, day);
    return;
  }
  const step = steps[event.key];
  if (step === undefined) return;
  event.preventDefault();
  const day = Math.max(dayOf(ring) + step * (event.shiftKey ? 7 : 1), earliest());
  ring.dataset["date"] = dateOf(day); // so that quick presses add up
  sayDay(ring, day);
  go(ring, day);
}

/** A day in the page's own language. */
export function wordsOf(day: number): string {
  const language = document.documentElement.lang;
  return new Intl.DateTimeFormat(language === "en" ? "en-GB" : language, {
    day: "numeric", month: "long", timeZone: "UTC",
  }).format(day * dayMs);
}

/** Writes the day at the ring. */
export function sayDay(ring: SVGElement, day: number): void {
  const words = wordsOf(day);
  ring.setAttribute("aria-valuetext", words);
  let label = ring.querySelector("text");
  const handle = ring.querySelector("circle");
  if (!label && handle) {
    label = document.createElementNS("http://www.w3.org/2000/svg", "text");
    label.setAttribute("class", "t-pen halo f14 mid");
    label.setAttribute("x", handle.getAttribute("cx") ?? "0");
    label.setAttribute("y", String(Number(handle.getAttribute("cy")) - 10));
    ring.append(label);
  }
  if (label) label.textContent = words;
}

function go(ring: SVGElement, day: number): void {
  void show(tried(ring.dataset["planting"] ?? "", day));
}
