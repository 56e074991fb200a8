// Sending changes and putting the answer in place: parts of the page by name, as
// the server draws them. One change is sent at a time; later ones wait.

import { note, rounded, written, type Shape } from "./plan_shape";
import { Sheet } from "./plan_sheet";

let queue: Promise<void> = Promise.resolve();
let waiting = 0;
let early: (() => void) | undefined;
const busy = new Set<string>();
let stale = false; // an answer came while the plan was in somebody's hand
let refused = ""; // why a change was refused meanwhile

/** Says that the plan is in hand, by drag or by keys, and must not be replaced;
 * let go of without a change, it is brought up to date. */
export function inHand(by: string, on: boolean): void {
  if (on) busy.add(by);
  else busy.delete(by);
  if (busy.size > 0 || !stale) return;
  void show(new URL(location.href)).then(() => {
    if (refused) say(refused, true);
    refused = "";
  });
}

/** Tells whether a change is on its way. */
export function sending(): boolean {
  return waiting > 0;
}

/** Resolves when nothing is on its way any more. */
export async function unsent(): Promise<void> {
  early?.();
  await queue;
}

/** Lets keys that have not been sent yet be sent first. */
export function before(flush: (() => void) | undefined): void {
  early = flush;
}

/** Sends the change of a thing; where it is refused the thing is put back. */
export function send(thing: SVGAElement, was: Shape, now: Shape): Promise<void> {
  const key = thing.dataset["thing"] ?? "";
  const data = changed(was, now);
  if ([...data.keys()].length === 0) {
    Sheet.at()?.rings();
    return queue;
  }
  const address = new URL(thing.dataset["save"] ?? "", location.href);
  waiting++;
  queue = queue.then(async () => {
    const here = document.querySelector(`[data-thing="${CSS.escape(key)}"]`);
    data.set("base", here?.getAttribute("data-base") ?? "");
    data.set("entry", entry());
    const done = await put(address, data, waiting > 1);
    waiting--;
    if (!done && here instanceof SVGAElement) {
      note(here, was);
      Sheet.at()?.put(here, was, "");
    }
  });
  return queue;
}

/** Loads an address, or sends a form to it, and puts the parts in place. */
export function show(address: URL, data?: FormData): Promise<void> {
  waiting++;
  queue = queue.then(async () => {
    await put(address, data, false);
    waiting--;
  });
  return queue;
}

/** The cells that a change of shape comes to. */
function changed(was: Shape, now: Shape): FormData {
  const data = new FormData();
  const set = (name: string, before: number, after: number): void => {
    if (rounded(before) !== rounded(after)) data.set(name, String(rounded(after)));
  };
  set("x_m", was.x, now.x);
  set("y_m", was.y, now.y);
  set("turn_deg", was.turn, now.turn);
  set("length_m", was.length, now.length);
  set("width_m", was.width, now.width);
  if (now.shape === "outline" && written(was.outline) !== written(now.outline)) data.set("outline", written(now.outline));
  return data;
}

/** An id of the entry, so that a change sent twice is written once. */
function entry(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(24)), (b) => "abcdefghijklmnopqrstuvwxyz234567"[b & 31]).join("");
}

/** Asks and puts the answer's parts in place; false when there was none. Where
 * more is on its way only the versions are taken over. */
async function put(address: URL, data: FormData | undefined, more: boolean): Promise<boolean> {
  const home = document.querySelector<HTMLElement>("[data-draw]");
  if (!home) return false;
  home.setAttribute("aria-busy", "true");
  try {
    const request: RequestInit = { headers: { "X-Fragment": "draw" }, cache: "no-store" };
    if (data) {
      const fields = new URLSearchParams();
      for (const [name, value] of data) if (typeof value === "string") fields.append(name, value);
      request.method = "POST";
      request.body = fields;
      request.keepalive = true; // it arrives when the page is left meanwhile
    }
    const answer = await fetch(address, request);
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (!fresh.querySelector("[data-part=drawing]")) {
      if (answer.ok) {
        location.assign(answer.url); // the plan has no size any more
        return true;
      }
      say(fresh.querySelector("main p, p")?.textContent ?? "", true);
      return false;
    }
    const wrong = fresh.querySelector("main > .errs, .draw-chosen .errs, .draw-chosen .err")?.textContent ?? "";
    const undo = fresh.querySelector("#draw-undo")?.getAttribute("aria-label") ?? "";
    const shown = replace(fresh, more && answer.ok);
    if (answer.ok) remember(answer.url);
    if (data) say(answer.ok ? undo : wrong, false);
    if (!answer.ok && !shown) refused = wrong;
    return answer.ok || data === undefined;
  } catch {
    say(home.dataset["gone"] ?? "", true);
    return false;
  } finally {
    home.removeAttribute("aria-busy");
  }
}

/** Keeps the address of what is shown, without what was said on it. */
function remember(url: string): void {
  const here = new URL(url);
  here.searchParams.delete("kept");
  history.replaceState(history.state, "", here);
}

/** Puts the parts in place and tells whether it did: not what is in hand, nor
 * where more is on its way. */
function replace(fresh: Document, more: boolean): boolean {
  for (const thing of fresh.querySelectorAll("[data-thing]")) {
    const old = document.querySelector(`[data-thing="${CSS.escape(thing.getAttribute("data-thing") ?? "")}"]`);
    old?.setAttribute("data-base", thing.getAttribute("data-base") ?? "");
  }
  if (more || busy.size > 0) {
    stale = true;
    return false;
  }
  stale = false;
  const focus = named(document.activeElement);
  const seen = middle();
  for (const part of fresh.querySelectorAll<HTMLElement>("[data-part]")) {
    const old = document.querySelector<HTMLElement>(`[data-part="${part.dataset["part"]}"]`);
    if (!old || old.isEqualNode(part)) continue;
    const open = [...old.querySelectorAll("details")].map((d) => d.open);
    if (old.querySelector("[data-chosen]")?.getAttribute("data-chosen") === part.querySelector("[data-chosen]")?.getAttribute("data-chosen")) {
      part.querySelectorAll("details").forEach((d, i) => {
        if (open[i]) d.open = true;
      });
    }
    old.replaceWith(part);
  }
  Sheet.at()?.rings();
  if (seen) look(seen);
  if (focus) document.querySelector<HTMLElement>(focus)?.focus({ preventScroll: true });
  return true;
}

/** What part of the plan is in the middle of its window, as shares of its size. */
function middle(): DOMPoint | undefined {
  const e = document.querySelector(".draw-sheet");
  return e ? new DOMPoint((e.scrollLeft + e.clientWidth / 2) / e.scrollWidth, (e.scrollTop + e.clientHeight / 2) / e.scrollHeight) : undefined;
}

/** Brings the same part into the middle of a plan that is closer or further away. */
function look(at: DOMPoint): void {
  const e = document.querySelector(".draw-sheet");
  e?.scrollTo(at.x * e.scrollWidth - e.clientWidth / 2, at.y * e.scrollHeight - e.clientHeight / 2);
}

/** How what has the focus is found again after its part was replaced. */
export function named(e: Element | null): string {
  if (!e || e === document.body) return "";
  if (e.hasAttribute("data-thing")) return `[data-thing="${CSS.escape(e.getAttribute("data-thing") ?? "")}"]`;
  if (e.id) return "#" + CSS.escape(e.id);
  const value = e.getAttribute("value");
  if (e.tagName === "BUTTON" && value && e.closest(".draw-chosen")) return `.draw-chosen button[value="${CSS.escape(value)}"]`;
  if (e.tagName === "BUTTON" && e.closest(".draw-chosen form")) return ".draw-chosen form button.main";
  return "";
}

let voice: HTMLElement | undefined;

/** Tells what came of a change: to those who do not see the page, and on it where
 * nothing on the page says it. */
function say(text: string, seen: boolean): void {
  if (!voice) {
    voice = document.createElement("p");
    voice.setAttribute("role", "status");
    document.querySelector(".draw-bar")?.after(voice);
  }
  if (!voice.isConnected) document.querySelector(".draw-bar")?.after(voice);
  voice.className = seen && text ? "err" : "sr";
  voice.textContent = text.replace(/\s+/g, " ").trim();
}
