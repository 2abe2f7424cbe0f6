/** Outlines: sound at every size, near and far told apart, springs by number and thickness, the change with what it asks. */
import { describe, expect, it } from "vitest";
import { changeFigure } from "#lib/figure/change.ts";
import { coilRows } from "#lib/figure/coil-rows.ts";
import { type Drawing, drawFigure } from "#lib/figure/drawing/draw.ts";
import { drawChange } from "#lib/figure/drawing/draw-change.ts";
import { figureOf } from "#lib/figure/figure.ts";
import { figureWords } from "#lib/figure/words.ts";
import type { Move } from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";

const SIZES = [48, 96, 240, 400];
const MOVES = Object.entries(STARTER_MOVES);
const move = (id: string): Move => {
  const found = STARTER_MOVES[id];
  if (!found) throw new Error(`no move ${id}`);
  return found;
};
const draw = (id: string, px: number, springs: Readonly<Record<string, number>> = { light: 1 }): Drawing =>
  drawFigure(figureOf(move(id)), { px, springs: coilRows(springs, STARTER_EQUIPMENT) });
const coils = (drawing: Drawing) => drawing.shapes.filter(({ stroke }) => stroke === "coil");
const extent = (d: string): number[] => (d.match(/-?\d+/g) ?? []).map(Number);

describe("a figure's outlines", () => {
  it("are whole numbers without gaps, for every move and size", () => {
    const broken = MOVES.flatMap(([id]) =>
      SIZES.flatMap((px) =>
        draw(id, px)
          .shapes.filter(({ d }) => !/^M[-\dMLQAVHaZ .]+$/.test(d))
          .map(({ d }) => `${id} ${px} ${d}`),
      ),
    );
    expect(broken).toEqual([]);
  });

  it("have lines of half a pixel at least, and of a few at most", () => {
    const off = MOVES.flatMap(([id]) =>
      SIZES.flatMap((px) => {
        const { frame, shapes } = draw(id, px);
        const widths = shapes.flatMap(({ stroke, width }) =>
          stroke && stroke !== "ground" ? [((width ?? 0) * px) / frame.width] : [],
        );
        return widths
          .filter((width) => width < 0.5 || width > 8)
          .map((width) => `${id} at ${px}: ${width.toFixed(2)} px`);
      }),
    );
    expect(off).toEqual([]);
  });

  it("keep the body inside the picture", () => {
    const cut = MOVES.flatMap(([id]) =>
      SIZES.flatMap((px) => {
        const { frame, shapes } = draw(id, px);
        const bodies = shapes.filter(({ fill }) => fill === "near" || fill === "trunk" || fill === "far");
        const xs = bodies.flatMap(({ d }) =>
          [...d.matchAll(/[ML](-?\d+) (-?\d+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
        );
        const out = xs.filter(
          ([x, y]) => x < frame.x || x > frame.x + frame.width || y < frame.y || y > frame.y + frame.height,
        );
        return out.length > 0 ? [`${id} at ${px}`] : [];
      }),
    );
    expect(cut).toEqual([]);
  });

  it("show the far limbs in another tone and slimmer, for who faces along the rails", () => {
    const tones = new Set(draw("row-kneeling", 240).shapes.map(({ fill }) => fill));
    expect(tones).toContain("near");
    expect(tones).toContain("far");
    expect(draw("side-lunge", 240).shapes.some(({ fill }) => fill === "far")).toBe(false);
  });

  it("show the other pose pale from 72 px on, and none for a hold", () => {
    const pale = (drawing: Drawing) => drawing.shapes.some(({ fill }) => fill === "ghost");
    expect(pale(draw("row-kneeling", 96))).toBe(true);
    expect(pale(draw("row-kneeling", 48))).toBe(false);
    expect(pale(draw("plank-hold", 240))).toBe(false);
  });

  it("point the arrow the way the carriage goes", () => {
    const ahead = (id: string): number => {
      const arrow = draw(id, 240).shapes.filter(({ stroke, dash }) => stroke === "motion" && !dash);
      const [x1 = 0, , x2 = 0] = extent(arrow[0]?.d ?? "");
      return Math.sign(x2 - x1);
    };
    expect(ahead("row-kneeling")).toBe(1);
    expect(ahead("plank-pike")).toBe(-1);
  });

  it("draw as many coils as springs, the stiffer the thicker", () => {
    const drawn = coils(draw("row-kneeling", 240, { light: 2, strong: 1 }));
    expect(drawn).toHaveLength(3);
    const [strong, ...light] = drawn.map(({ width }) => width ?? 0);
    expect(strong).toBeGreaterThan(1.8 * Math.max(...light));
  });

  it("differ between facing front and facing back by more than a shift", () => {
    const nose = (facing: "front" | "back") => {
      const { shapes } = drawFigure(figureOf(move("row-kneeling"), { facing }), { px: 240 });
      return shapes.filter(({ fill }) => fill === "near" || fill === "trunk").map(({ d }) => d);
    };
    const shared = nose("front").filter((d) => nose("back").includes(d));
    expect(shared).toEqual([]);
  });
});

describe("a figure in words", () => {
  it("says position, facing, hands and feet", () => {
    expect(figureWords(move("row-kneeling"))).toBe("Kneeling on the carriage, facing back, a handle in each hand");
    expect(figureWords(move("leg-press-single"), { side: "left" })).toBe(
      "Lying on the back on the carriage, facing front, hands free, one foot on the front platform, left side",
    );
  });
});

describe("the figure of a change", () => {
  const change = changeFigure(
    { move: move("triceps-press-back"), springs: { middle: 1, strong: 1 } },
    { move: move("chest-press-kneeling"), springs: { light: 2, middle: 1 } },
    STARTER_EQUIPMENT,
  );

  it("says which springs come off, go on and stay, in the order of the machine", () => {
    expect(change.springs.map(({ label, act }) => `${label} ${act}`)).toEqual([
      "light goes-on",
      "light goes-on",
      "middle stays",
      "strong comes-off",
    ]);
  });

  it("turns the short way round", () => {
    expect(change.turn).toEqual({ from: "back", quarters: 2, way: "left" });
    const turnTo = (facing: "front" | "left" | "right" | "back") =>
      changeFigure(
        { move: move("chest-press-kneeling"), springs: {} },
        { move: move("chest-press-kneeling"), springs: {}, facing },
        STARTER_EQUIPMENT,
      ).turn;
    expect(turnTo("front")).toBeNull();
    expect(turnTo("left")).toEqual({ from: "front", quarters: 1, way: "left" });
    expect(turnTo("right")).toEqual({ from: "front", quarters: 1, way: "right" });
  });

  it("draws a row and a label for each spring, the one that comes off in the tone of what is not on", () => {
    const drawing = drawChange(change, { px: 380 });
    const thick = drawing.shapes.filter(({ stroke, d }) => (stroke === "coil" || stroke === "far") && d.length > 400);
    expect(thick.filter(({ stroke }) => stroke === "coil")).toHaveLength(3);
    expect(thick.filter(({ stroke, fill }) => stroke === "far" && fill === undefined).length).toBeGreaterThanOrEqual(1);
    expect(drawing.labels.filter(({ anchor }) => anchor === "start").map(({ text }) => text)).toEqual([
      "goes on",
      "goes on",
      "stays on",
      "comes off",
    ]);
  });

  it("shows the way to another station only where there is one", () => {
    expect(change.goes).toBe(false);
    const goes = changeFigure(
      { move: move("upright-row-standing"), springs: {} },
      { move: move("forearm-plank-slide"), springs: {} },
      STARTER_EQUIPMENT,
    );
    expect(goes.goes).toBe(true);
    const dashed = (of: typeof change) =>
      drawChange(of, { px: 380 }).shapes.filter(({ dash }) => dash !== undefined).length;
    expect(dashed(goes)).toBeGreaterThan(0);
  });
});
