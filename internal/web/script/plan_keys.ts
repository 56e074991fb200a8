// The keys of a thing that has the focus. What is pressed quickly adds up and is
// sent as one change.

import { rounded, sized, spot, type Shape } from "./plan_shape";
import { Sheet } from "./plan_sheet";
import { before, inHand, send, unsent } from "./plan_send";

const pause = 450; // milliseconds without a key before the change is sent
const step = 0.1; // metres

interface Pressed {
  key: string;
  was: Shape;
  timer: number;
}

let pressed: Pressed | undefined;

export function start(home: HTMLElement): void {
  home.addEventListener("keydown", key);
  home.addEventListener("focusout", flush);
  window.addEventListener("pagehide", flush);
}

function key(event: KeyboardEvent): void {
  const thing = event.target instanceof Element ? event.target.closest<SVGAElement>("a.thing") : null;
  const sheet = Sheet.at();
  if (!thing || !sheet || event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === "Delete" || event.key === "Backspace") {
    event.preventDefault();
    remove(thing);
    return;
  }
  const was = spot(thing);
  const now = stepped(was, event.key, event.shiftKey);
  if (!now) return;
  event.preventDefault();
  if (pressed && pressed.key !== thing.dataset["thing"]) flush();
  sheet.choose(thing);
  clearTimeout(pressed?.timer);
  pressed = { key: thing.dataset["thing"] ?? "", was: pressed?.was ?? was, timer: window.setTimeout(flush, pause) };
  before(flush);
  inHand("keys", true);
  sheet.put(thing, now, now.turn !== was.turn ? "turned" : now.length !== was.length || now.width !== was.width ? "size" : "spot");
}

/** What a key makes of a shape; nothing where it means nothing. */
function stepped(s: Shape, key: string, shift: boolean): Shape | undefined {
  const far = shift ? 1 : step;
  const back = shift ? -step : step;
  switch (key) {
    case "ArrowLeft": return { ...s, x: rounded(s.x - far) };
    case "ArrowRight": return { ...s, x: rounded(s.x + far) };
    case "ArrowUp": return { ...s, y: rounded(s.y + far) };
    case "ArrowDown": return { ...s, y: rounded(s.y - far) };
    case "l": case "L": return sized(s, s.length + back, s.width);
    case "w": case "W": return sized(s, s.length, s.width + back);
    case "+": case "=": return sized(s, s.length + step, s.width + step);
    case "-": case "_": return sized(s, s.length - step, s.width - step);
    case "r": case "R": return { ...s, turn: rounded(turnedBy(s.turn, shift ? -5 : 5)) };
  }
  return undefined;
}

function turnedBy(turn: number, by: number): number {
  const at = turn + by;
  return at - 360 * Math.round(at / 360);
}

/** Sends what was pressed. */
function flush(): void {
  const done = pressed;
  pressed = undefined;
  before(undefined);
  if (!done) return;
  clearTimeout(done.timer);
  const thing = document.querySelector<SVGAElement>(`[data-thing="${CSS.escape(done.key)}"]`);
  if (thing) void send(thing, done.was, spot(thing));
  inHand("keys", false);
}

/** Goes to the page that asks before a thing is removed. */
function remove(thing: SVGAElement): void {
  flush();
  const address = thing.dataset["thing"] ?? "";
  const back = document.querySelector<HTMLElement>("[data-draw]")?.dataset["none"] ?? "";
  void unsent().then(() => location.assign("/" + address + "/remove?back=" + encodeURIComponent(back)));
}
