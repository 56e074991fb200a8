// The drawing of a site: things are moved, made longer, turned and given other
// corners by mouse, pen, finger or keys. Each change is sent as a form and is one
// entry that can be taken back; the server answers with the parts of the page as
// they stand then. What it refuses is back where it was, with the reason beside it.

import { spot, type Shape } from "./plan_shape";
import { Sheet } from "./plan_sheet";
import { inHand, named, send, sending, show, unsent } from "./plan_send";
import * as keys from "./plan_keys";

const threshold = 4; // pixels before a press is a move

interface Hold {
  sheet: Sheet;
  thing: SVGAElement;
  pointer: number;
  start: DOMPoint;
  was: Shape;
  now: Shape;
  ring: string; // what is held: body, length, width, turn, or the number of a corner
  moving: boolean;
}

let hold: Hold | undefined;
let swallow = false; // the click that ends a drag

export function start(): void {
  const home = document.querySelector<HTMLElement>("[data-draw]");
  if (!home) return;
  home.classList.add("live");
  home.addEventListener("pointerdown", press);
  document.addEventListener("pointermove", move);
  document.addEventListener("pointerup", release);
  document.addEventListener("pointercancel", cancel);
  home.addEventListener("click", click);
  home.addEventListener("submit", submit);
  // A finger on the chosen thing drags it and does not sweep the plan.
  home.addEventListener("touchstart", (event) => {
    if (event.touches.length === 1 && event.target instanceof Element && event.target.closest(".thing.chosen, .site-rings .ring")) event.preventDefault();
  }, { passive: false });
  home.addEventListener("dragstart", (event) => {
    if (event.target instanceof Element && event.target.closest(".thing")) event.preventDefault();
  });
  keys.start(home);
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && hold) letGo();
  });
  window.addEventListener("resize", () => Sheet.at()?.rings());
  Sheet.at()?.rings();
  Sheet.at()?.chosen()?.scrollIntoView({ block: "nearest", inline: "center" });
}

/** The thing or the ring that is pressed. Without a mouse only what is chosen
 * can be dragged, so that a finger can still sweep the plan. */
function press(event: PointerEvent): void {
  const target = event.target;
  const sheet = Sheet.at();
  if (!sheet || event.button !== 0 || !(target instanceof Element)) return;
  if (hold && hold.pointer !== event.pointerId) return; // a second finger
  letGo();
  swallow = false;
  const ring = target.closest<SVGElement>(".site-rings .ring");
  const thing = ring ? sheet.chosen() : (target.closest<SVGAElement>("a.thing") ?? undefined);
  if (!thing || (!ring && event.pointerType !== "mouse" && !thing.classList.contains("chosen"))) return;
  if (ring) event.preventDefault();
  const was = spot(thing);
  hold = {
    sheet, thing, pointer: event.pointerId, start: sheet.metres(event.clientX, event.clientY),
    was, now: was, ring: (ring && sheet.nearest(event.clientX, event.clientY)) ?? "body", moving: false,
  };
  // From the press on: an answer to an earlier change would take away what is held.
  inHand("drag", true);
}

function move(event: PointerEvent): void {
  if (!hold || event.pointerId !== hold.pointer) return;
  const at = hold.sheet.metres(event.clientX, event.clientY);
  const far = Math.hypot(at.x - hold.start.x, at.y - hold.start.y) * hold.sheet.pixels();
  if (!hold.moving && far < threshold) return;
  if (!hold.moving) {
    hold.moving = true;
    hold.sheet.choose(hold.thing);
  }
  event.preventDefault();
  hold.now = hold.sheet.dragged(hold.was, hold.ring, hold.start, at, event.altKey);
  hold.sheet.put(hold.thing, hold.now, hold.ring === "body" ? "spot" : hold.ring === "turn" ? "turned" : "size");
}

function release(event: PointerEvent): void {
  const done = hold;
  if (!done || event.pointerId !== done.pointer) return;
  hold = undefined;
  if (done.moving) {
    swallow = true;
    setTimeout(() => (swallow = false), 50);
    done.thing.focus({ preventScroll: true });
    void send(done.thing, done.was, done.now);
  }
  inHand("drag", false);
}

function cancel(event: PointerEvent): void {
  if (hold && event.pointerId === hold.pointer) letGo();
}

/** Puts what is held back where it was. */
function letGo(): void {
  const done = hold;
  hold = undefined;
  if (!done) return;
  done.sheet.put(done.thing, done.was, "");
  inHand("drag", false);
}

/** Choosing a thing, or looking closer, loads the parts of that address alone. */
function click(event: MouseEvent): void {
  if (!(event.target instanceof Element)) return;
  const link = event.target.closest<HTMLAnchorElement | SVGAElement>("a.thing, a[data-pick]");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
  event.preventDefault();
  if (swallow) return;
  const address = link.getAttribute("href") ?? "";
  void unsent().then(() => show(new URL(address, location.href)));
}

/** Forms of the page are sent without leaving it. */
function submit(event: SubmitEvent): void {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || !form.hasAttribute("data-sent")) return;
  event.preventDefault();
  const by = event.submitter;
  // Pressed again before the answer was there, it is the button as it stands then.
  const put = sending() ? named(by) : "";
  const data = new FormData(form, by);
  void unsent().then(() => {
    const again = put ? document.querySelector<HTMLButtonElement>(put) : null;
    if (put && (!again || again.disabled)) return undefined;
    return again?.form ? show(new URL(again.form.action), new FormData(again.form, again)) : show(new URL(form.action), data);
  });
}
