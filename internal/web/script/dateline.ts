// The day of the plan is the pen's line along the lanes' own axis. It is dragged
// by mouse, pen or finger, from the axis or anywhere along the line, and moved by
// the arrow keys; the plan follows. The months and the buttons A week earlier and
// A week later do the same without a script.

import { address, show } from "./fragment";
import { takesPress } from "./lanes";
import { dateOf, dayMs, wordsOf } from "./ring";

interface Drag {
  pointer: number;
  startX: number;
  startDay: number;
  day: number;
  pixelsADay: number;
  sheet: HTMLElement;
}

let drag: Drag | undefined;

export function start(): void {
  if (!document.getElementById("date-line")) return;
  document.addEventListener("pointerdown", press);
  document.addEventListener("pointermove", move);
  document.addEventListener("pointerup", release);
  document.addEventListener("pointercancel", release);
  document.addEventListener("keydown", key);
}

function slider(): SVGElement | undefined {
  const e = document.getElementById("date-line");
  return e instanceof SVGElement ? e : undefined;
}

function dayOf(line: SVGElement): number {
  return Date.parse(line.dataset["at"] ?? "") / dayMs;
}

function press(event: PointerEvent): void {
  if (!(event.target instanceof Element) || event.button !== 0 || takesPress(event)) return;
  if (drag && drag.pointer !== event.pointerId) return; // a second finger
  const line = slider();
  const sheet = event.target.closest<HTMLElement>(".lanes-sheet");
  const days = Number(line?.dataset["days"]);
  if (!line || !sheet || !days || !event.target.closest("#date-line, .date-mark")) return;
  event.preventDefault();
  const width = line.closest("svg")?.getBoundingClientRect().width ?? 0;
  drag = { pointer: event.pointerId, startX: event.clientX, startDay: dayOf(line), day: dayOf(line), pixelsADay: width / days, sheet };
  sheet.setPointerCapture(event.pointerId);
  line.focus({ preventScroll: true });
}

function move(event: PointerEvent): void {
  if (!drag || event.pointerId !== drag.pointer) return;
  const day = within(drag.startDay + Math.round((event.clientX - drag.startX) / drag.pixelsADay));
  if (day === drag.day) return;
  drag.day = day;
  follow();
  void show(addressOn(day), drag.sheet).then(follow);
}

/** Puts the line where the finger is; the plan's answer comes after. */
function follow(): void {
  const line = slider();
  if (!drag || !line) return;
  place(line, drag.day, drag.pixelsADay);
}

function place(line: SVGElement, day: number, pixelsADay: number): void {
  const shift = `translate(${(day - dayOf(line)) * pixelsADay} 0)`;
  line.setAttribute("transform", shift);
  document.querySelector(".date-mark")?.setAttribute("transform", shift);
  line.setAttribute("aria-valuetext", wordsOf(day));
  const words = line.querySelector("text");
  if (words && day !== dayOf(line)) words.textContent = wordsOf(day);
}

function within(day: number): number {
  const line = slider();
  const from = Date.parse(line?.dataset["from"] ?? "") / dayMs;
  return Math.max(from, Math.min(day, from + Number(line?.dataset["days"]) - 1));
}

function addressOn(day: number): URL {
  const url = new URL(address());
  url.searchParams.set("at", dateOf(day));
  return url;
}

function release(event: PointerEvent): void {
  const done = drag;
  if (!done || event.pointerId !== done.pointer) return;
  drag = undefined;
  if (done.day !== done.startDay) void show(addressOn(done.day));
}

const steps: Record<string, number> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -28, PageUp: 28 };

function key(event: KeyboardEvent): void {
  const line = slider();
  if (!line || event.target !== line || event.altKey || event.ctrlKey || event.metaKey) return;
  let day = dayOf(line);
  const from = Date.parse(line.dataset["from"] ?? "") / dayMs;
  const step = steps[event.key];
  if (event.key === "Home") day = from;
  else if (event.key === "End") day = from + Number(line.dataset["days"]) - 1;
  else if (step === undefined) return;
  else day = within(day + step * (event.shiftKey ? 7 : 1));
  event.preventDefault();
  line.dataset["at"] = dateOf(day); // so that quick presses add up
  line.setAttribute("aria-valuetext", wordsOf(day));
  void show(addressOn(day));
}
