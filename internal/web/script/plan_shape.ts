// The shape of a thing on a plan, as it is written in the files: metres from the
// plan's left and bottom edge, turned anticlockwise about its middle.

export interface Point {
  x: number;
  y: number;
}

export interface Shape {
  x: number;
  y: number;
  turn: number; // degrees
  length: number;
  width: number;
  shape: string;
  outline: Point[]; // from the lower left corner of length and width
}

const roundCorners = 32;
export const leastSide = 0.05;

/** Reads a thing's shape off the page. */
export function spot(thing: Element): Shape {
  const data = (name: string): number => Number(thing.getAttribute("data-" + name)) || 0;
  return {
    x: data("x"), y: data("y"), turn: data("turn"), length: data("length"), width: data("width"),
    shape: thing.getAttribute("data-shape") ?? "", outline: corners(thing.getAttribute("data-outline") ?? ""),
  };
}

/** Writes a shape to the page, so that the next change begins from it. */
export function note(thing: Element, s: Shape): void {
  const values = { x: s.x, y: s.y, turn: s.turn, length: s.length, width: s.width };
  for (const [name, value] of Object.entries(values)) thing.setAttribute("data-" + name, String(value));
  if (s.shape === "outline") thing.setAttribute("data-outline", written(s.outline));
}

function corners(text: string): Point[] {
  return text.split(";").flatMap((pair) => {
    const [x, y] = pair.trim().split(/\s+/).map(Number);
    return x === undefined || y === undefined ? [] : [{ x, y }];
  });
}

export function written(outline: Point[]): string {
  return outline.map((p) => rounded(p.x) + " " + rounded(p.y)).join("; ");
}

export function rounded(v: number): number {
  return Math.round(v * 100) / 100 || 0;
}

/** The corners on the plan, in metres. */
export function around(s: Shape): Point[] {
  return own(s).map((p) => placed(s, p));
}

function own(s: Shape): Point[] {
  const l = s.length / 2;
  const w = s.width / 2;
  if (s.shape === "round") {
    return Array.from({ length: roundCorners }, (_, i) => {
      const angle = (2 * Math.PI * i) / roundCorners;
      return { x: l * Math.cos(angle), y: w * Math.sin(angle) };
    });
  }
  if (s.shape === "outline" && s.outline.length > 2) return s.outline.map((p) => ({ x: p.x - l, y: p.y - w }));
  return [{ x: -l, y: -w }, { x: l, y: -w }, { x: l, y: w }, { x: -l, y: w }];
}

/** Where a point of the thing's own frame, about its middle, lies on the plan. */
export function placed(s: Shape, p: Point): Point {
  const { sin, cos } = turned(s.turn);
  return { x: s.x + p.x * cos - p.y * sin, y: s.y + p.x * sin + p.y * cos };
}

/** Where a point of the plan lies in the thing's own frame. */
export function inside(s: Shape, p: Point): Point {
  const { sin, cos } = turned(s.turn);
  const x = p.x - s.x;
  const y = p.y - s.y;
  return { x: x * cos + y * sin, y: -x * sin + y * cos };
}

function turned(degrees: number): { sin: number; cos: number } {
  const angle = (degrees * Math.PI) / 180;
  return { sin: Math.sin(angle), cos: Math.cos(angle) };
}

/** The shape with another length and width. One end can stay: share is how far
 * the middle moves along with the growth, 0.5 where the far end stays. */
export function sized(s: Shape, length: number, width: number, alongShare = 0, acrossShare = 0): Shape {
  const l = Math.max(leastSide, rounded(length));
  const w = Math.max(leastSide, rounded(width));
  const middle = placed(s, { x: (l - s.length) * alongShare, y: (w - s.width) * acrossShare });
  const outline = s.outline.map((p) => ({ x: (p.x * l) / s.length, y: (p.y * w) / s.width }));
  return { ...s, x: middle.x, y: middle.y, length: l, width: w, outline };
}

/** The outline with one corner elsewhere; all others stay where they are. */
export function cornered(s: Shape, corner: number, to: Point): Shape {
  const outline = s.outline.map((p, i) => (i === corner ? to : p));
  const low = { x: Math.min(...outline.map((p) => p.x)), y: Math.min(...outline.map((p) => p.y)) };
  const high = { x: Math.max(...outline.map((p) => p.x)), y: Math.max(...outline.map((p) => p.y)) };
  const middle = placed(s, { x: (low.x + high.x - s.length) / 2, y: (low.y + high.y - s.width) / 2 });
  return {
    ...s, x: middle.x, y: middle.y,
    length: Math.max(leastSide, rounded(high.x - low.x)), width: Math.max(leastSide, rounded(high.y - low.y)),
    outline: outline.map((p) => ({ x: rounded(p.x - low.x), y: rounded(p.y - low.y) })),
  };
}
