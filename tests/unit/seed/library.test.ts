/** The demo library: enough moves, each whole and fit to be taught with care. */
import { describe, expect, it } from "vitest";
import { moveSchema } from "#lib/plan/schema.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { PHRASES } from "#seed/phrases/phrases.ts";

const moves = Object.entries(STARTER_MOVES);

describe("the demo library", () => {
  it("has at least forty moves under names of their own", () => {
    expect(moves.length).toBeGreaterThanOrEqual(40);
    expect(new Set(moves.map(([, move]) => move.name)).size).toBe(moves.length);
  });

  it.each(moves)("%s is a valid move with every fact filled in", (_id, move) => {
    expect(moveSchema.safeParse(move).error?.issues ?? []).toEqual([]);
    expect(Object.values(move.muscles)).toContain(1);
    for (const weight of Object.values(move.muscles)) expect([0.5, 1]).toContain(weight);
    for (const list of [move.spine, move.easier, move.harder]) expect(list?.length ?? 0).toBeGreaterThan(0);
    expect(move.cautions).toBeDefined();
    expect(move.met).toBeGreaterThan(0);
    expect(move.seconds).toBeDefined();
    expect(move.travelMm).toBeDefined();
    if ("holdSeconds" in move.tempo) expect(move.exhaleOn).toBeUndefined();
    else expect(move.exhaleOn).toBeDefined();
    if (move.resistance !== "bodyweight") expect(move.loadN).toBeDefined();
  });

  it.each(moves)("%s tags what its set-up asks of a body", (_id, move) => {
    const tags = move.cautions ?? [];
    if (move.position === "kneeling") expect(tags).toContain("kneeling");
    if (move.position === "supine") expect(tags).toContain("supine");
    if (move.position === "prone") expect(tags).toContain("prone");
    if ("holdSeconds" in move.tempo) expect(tags).toContain("long-hold");
    if (move.handsShare && move.handsShare.pose !== "forearm-plank") expect(tags).toContain("wrist-load");
    if (move.hands === "one-handle" && move.spine?.includes("rotation")) expect(tags).toContain("loaded-rotation");
  });

  it("has a safety line ready for every move that asks for care", () => {
    const bare = Object.keys(PHRASES).filter(
      (id) => (STARTER_MOVES[id]?.cautions ?? []).length > 0 && !PHRASES[id]?.safety,
    );
    expect(bare).toEqual([]);
    expect(Object.keys(PHRASES).filter((id) => !STARTER_MOVES[id])).toEqual([]);
  });
});
