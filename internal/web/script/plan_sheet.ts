// The drawing on the page: metres to pixels and back, and the rings on stems by
// which the chosen thing is made longer, wider and turned.

import { around, cornered, inside, note, placed, rounded, sized, spot, type Point, type Shape } from "./plan_shape";

const svgSpace = "http://www.w3.org/2000/svg";
const stem = 26; // pixels on the screen

/** How far from its middle a ring is hit: half of 44 pixels for a finger. */
function reach(): number {
  return matchMedia("(any-pointer: coarse)").matches ? 22 : 14;
}

export class Sheet {
  private constructor(
    readonly svg: SVGSVGElement,
    private readonly scale: number,
    private readonly left: number,
    private readonly foot: number,
  ) {}

  /** The drawing that is on the page now. */
  static at(): Sheet | undefined {
    const svg = document.querySelector<SVGSVGElement>("[data-draw] svg.site");
    if (!svg) return undefined;
    return new Sheet(svg, Number(svg.dataset["scale"]), Number(svg.dataset["left"]), Number(svg.dataset["foot"]));
  }

  chosen(): SVGAElement | undefined {
    return this.svg.querySelector<SVGAElement>("a.thing.chosen") ?? undefined;
  }

  /** The name of the ring nearest to a place of the screen. */
  nearest(x: number, y: number): string | undefined {
    let best: string | undefined;
    let least = Infinity;
    for (const ring of this.svg.querySelectorAll<SVGElement>(".site-rings .ring")) {
      const box = ring.querySelector("circle")?.getBoundingClientRect();
      const far = box ? Math.hypot(box.x + box.width / 2 - x, box.y + box.height / 2 - y) : Infinity;
      if (far < least) [best, least] = [ring.dataset["ring"], far];
    }
    return best;
  }

  /** Marks a thing as the chosen one. */
  choose(thing: Element): void {
    if (thing.classList.contains("chosen")) return;
    this.chosen()?.classList.remove("chosen");
    thing.classList.add("chosen");
    this.rings();
  }

  /** Where on the plan a place of the screen lies [m]. */
  metres(x: number, y: number): DOMPoint {
    const at = new DOMPoint(x, y).matrixTransform(this.svg.getScreenCTM()?.inverse());
    return new DOMPoint((at.x - this.left) / this.scale, (this.foot - at.y) / this.scale);
  }

  /** How many pixels of the screen a metre takes. */
  pixels(): number {
    return this.scale / this.perPixel();
  }

  /** How many units of the drawing a pixel of the screen takes. */
  private perPixel(): number {
    return 1 / (this.svg.getScreenCTM()?.a || 1);
  }

  private at(p: Point): Point {
    return { x: this.left + p.x * this.scale, y: this.foot - p.y * this.scale };
  }

  /** What a shape becomes when it is dragged by its body or by a ring. */
  dragged(was: Shape, ring: string, from: Point, to: Point, fine: boolean): Shape {
    const snap = (v: number): number => (fine ? rounded(v) : rounded(Math.round(v / 0.05) * 0.05));
    const far = inside({ ...was, x: 0, y: 0 }, { x: to.x - from.x, y: to.y - from.y });
    switch (ring) {
      case "body":
        return { ...was, x: snap(was.x + to.x - from.x), y: snap(was.y + to.y - from.y) };
      case "length":
      case "length-back":
        return sized(was, snap(was.length + (ring === "length" ? far.x : -far.x)), was.width, ring === "length" ? 0.5 : -0.5);
      case "width":
      case "width-back":
        return sized(was, was.length, snap(was.width + (ring === "width" ? far.y : -far.y)), 0, ring === "width" ? 0.5 : -0.5);
      case "turn": {
        const angle = (p: Point): number => Math.atan2(p.y - was.y, p.x - was.x);
        const step = fine ? 1 : 5;
        const turn = Math.round((was.turn + ((angle(to) - angle(from)) * 180) / Math.PI) / step) * step;
        return { ...was, turn: turn - 360 * Math.round(turn / 360) };
      }
      default: {
        const corner = was.outline[Number(ring)];
        if (!corner) return was;
        return cornered(was, Number(ring), { x: snap(corner.x + far.x), y: snap(corner.y + far.y) });
      }
    }
  }

  /** Draws a thing in another shape, with figures of what changes. */
  put(thing: SVGAElement, shape: Shape, figures: string): void {
    note(thing, shape);
    const d = around(shape).map((p) => this.at(p)).map((p) => `${p.x.toFixed(1)} ${p.y.toFixed(1)}`).join("L");
    for (const path of thing.querySelectorAll("path")) path.setAttribute("d", "M" + d + "z");
    const middle = this.at(shape);
    for (const circle of thing.querySelectorAll("circle")) {
      circle.setAttribute("cx", String(middle.x));
      circle.setAttribute("cy", String(middle.y));
    }
    thing.classList.toggle("changing", figures !== "");
    this.rings(figures);
  }

  /** Draws the rings of the chosen thing, and figures beside it. */
  rings(figures = ""): void {
    const layer = this.svg.querySelector<SVGGElement>(".site-rings");
    const thing = this.chosen();
    if (!layer) return;
    layer.replaceChildren();
    if (!thing) return;
    const s = spot(thing);
    if (s.shape === "outline") {
      s.outline.forEach((p, i) => {
        const at = this.at(placed(s, { x: p.x - s.length / 2, y: p.y - s.width / 2 }));
        layer.append(this.ring(String(i), at, at));
      });
    } else {
      this.stemmed(layer, s, "length", { x: s.length / 2, y: 0 }, { x: 1, y: 0 });
      this.stemmed(layer, s, "width", { x: 0, y: -s.width / 2 }, { x: 0, y: -1 });
    }
    this.stemmed(layer, s, "turn", { x: 0, y: s.width / 2 }, { x: 0, y: 1 });
    if (figures) layer.append(this.figures(s, figures));
  }

  /** A ring on a stem outside a side; on the other side where it would lie off the sheet. */
  private stemmed(layer: SVGGElement, s: Shape, name: string, foot: Point, way: Point): void {
    const far = (stem * this.perPixel()) / this.scale;
    for (const sign of [1, -1]) {
      const from = this.at(placed(s, { x: foot.x * sign, y: foot.y * sign }));
      const to = this.at(placed(s, { x: (foot.x + way.x * far) * sign, y: (foot.y + way.y * far) * sign }));
      const box = this.svg.viewBox.baseVal;
      const room = 7 * this.perPixel();
      const on = to.x > room && to.y > room && to.x < box.width - room && to.y < box.height - room;
      if (!on && sign === 1) continue;
      // The width's ring begins on the lower side: pulling it down makes it wider.
      const back = name !== "turn" && (name === "width") === (sign === 1);
      layer.append(this.ring(back ? name + "-back" : name, from, to));
      return;
    }
  }

  private ring(name: string, from: Point, to: Point): SVGGElement {
    const g = document.createElementNS(svgSpace, "g");
    g.setAttribute("class", "ring");
    g.dataset["ring"] = name;
    const line = document.createElementNS(svgSpace, "path");
    line.setAttribute("d", `M${from.x} ${from.y}L${to.x} ${to.y}`);
    g.append(line);
    for (const [kind, r] of [["reach", reach()], ["", name === "turn" ? 8 : 6]] as const) {
      const circle = document.createElementNS(svgSpace, "circle");
      if (kind) circle.setAttribute("class", kind);
      circle.setAttribute("cx", String(to.x));
      circle.setAttribute("cy", String(to.y));
      circle.setAttribute("r", String(r * this.perPixel()));
      g.append(circle);
    }
    if (name === "turn") g.append(this.arrows(to));
    return g;
  }

  /** An arc with a head inside the ring that turns, to tell it from the others. */
  private arrows(at: Point): SVGPathElement {
    const path = document.createElementNS(svgSpace, "path");
    const u = this.perPixel();
    path.setAttribute("class", "turns");
    path.setAttribute("d", `M${at.x - 3.5 * u} ${at.y + 1 * u}a${3.5 * u} ${3.5 * u} 0 1 1 ${3.5 * u} ${3 * u}`);
    return path;
  }

  /** The figures of a change, in the page's words. */
  private figures(s: Shape, kind: string): SVGTextElement {
    const text = document.createElementNS(svgSpace, "text");
    const low = around(s).map((p) => this.at(p));
    const top = Math.min(...low.map((p) => p.y)) - (stem + 16) * this.perPixel();
    const bottom = Math.max(...low.map((p) => p.y)) + (stem + 26) * this.perPixel();
    const box = this.svg.viewBox.baseVal;
    text.setAttribute("class", "figures");
    text.setAttribute("y", String(top > 16 ? top : Math.min(bottom, box.height - 8)));
    const values = kind === "spot" ? [s.x, s.y] : kind === "turned" ? [s.turn] : [s.length, s.width];
    let words = this.svg.dataset[kind] ?? "";
    for (const v of values) words = words.replace("#", v.toLocaleString(document.documentElement.lang, { maximumFractionDigits: 2, minimumFractionDigits: kind === "turned" ? 0 : 2 }));
    text.textContent = words;
    const half = words.length * 4.2 * this.perPixel();
    text.setAttribute("x", String(Math.max(half, Math.min(box.width - half, this.at(s).x))));
    return text;
  }
}
