/** Outlines as data: what is drawn, in which tone, with which line. Millimetres of the drawing, y down. No document, no colour. */

/** What a part is, for the style sheet to colour. No tone stands for a spring. */
export type Tone =
  | "ground"
  | "near"
  | "trunk"
  | "far"
  | "ghost"
  | "deck"
  | "edge"
  | "fixed"
  | "line"
  | "rail"
  | "cable"
  | "coil"
  | "motion";

export interface Shape {
  readonly d: string;
  readonly fill?: Tone;
  readonly stroke?: Tone;
  /** Width of the line. */
  readonly width?: number;
  readonly dash?: string;
}

export type Flat = readonly [x: number, y: number];
export interface Circle {
  readonly at: Flat;
  readonly r: number;
}

/** Whole millimetres are less than a quarter of a pixel at 400 px. */
const n = (x: number): string => String(Math.round(x));
export const spot = ([x, y]: Flat): string => `${n(x)} ${n(y)}`;

export const lineThrough = (points: readonly Flat[], closed = false): string =>
  `M${points.map(spot).join("L")}${closed ? "Z" : ""}`;

export const disc = ({ at: [x, y], r }: Circle): string =>
  `M${n(x - r)} ${n(y)}a${n(r)} ${n(r)} 0 1 1 ${n(2 * r)} 0a${n(r)} ${n(r)} 0 1 1 ${n(-2 * r)} 0Z`;

/** The outline of two circles and what lies between them: a limb that tapers. */
export function capsule(a: Circle, b: Circle): string {
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const d = Math.hypot(dx, dy);
  if (d <= Math.abs(a.r - b.r) + 0.5) return disc(a.r > b.r ? a : b);
  const way = Math.atan2(dy, dx);
  const off = Math.acos((a.r - b.r) / d);
  const on = ({ at: [x, y], r }: Circle, angle: number): string =>
    `${n(x + r * Math.cos(angle))} ${n(y + r * Math.sin(angle))}`;
  const [ra, rb] = [n(a.r), n(b.r)];
  return `M${on(a, way + off)}A${ra} ${ra} 0 1 1 ${on(a, way - off)}L${on(b, way - off)}A${rb} ${rb} 0 0 1 ${on(b, way + off)}Z`;
}

/** Points on each circle from which an outline is made. */
const SAMPLES = 20;

/** The outline round several circles. */
export function hull(circles: readonly Circle[]): string {
  const points = circles.flatMap(({ at: [x, y], r }) =>
    Array.from({ length: SAMPLES }, (_, i): Flat => {
      const angle = (2 * Math.PI * i) / SAMPLES;
      return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
    }),
  );
  return lineThrough(convex(points), true);
}

/** The convex outline of points: Andrew's monotone chain. */
function convex(points: readonly Flat[]): Flat[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (along: readonly Flat[]): Flat[] => {
    const chain: Flat[] = [];
    for (const p of along) {
      while (chain.length > 1 && turnsBack(chain.at(-2) as Flat, chain.at(-1) as Flat, p)) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turnsBack = (a: Flat, b: Flat, c: Flat): boolean =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) <= 0;
