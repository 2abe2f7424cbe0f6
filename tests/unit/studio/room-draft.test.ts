/** A room as a manager types it: read back as it was, and asked about in one sentence where no machine is like that. */

import { describe, expect, it } from "vitest";
import { emptySpring, type RoomDraft, readRoomDraft, roomDraftOf } from "#app/studio/room-draft.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { equipmentSchema } from "#lib/plan/schema.ts";
import { ROOMS } from "#seed/studio/rooms.ts";

const loft = ROOMS[0]?.equipment;
if (!loft) throw new Error("the demo has a room");

const TYPED = roomDraftOf("Loft", loft, STANDARD_FORMATS);
const withSpring = (change: Partial<RoomDraft["springs"][number]>): RoomDraft => ({
  ...TYPED,
  springs: TYPED.springs.map((spring, i) => (i === 0 ? { ...spring, ...change } : spring)),
});

describe("a room's form", () => {
  it("gives back what it was opened with", () => {
    expect(readRoomDraft(TYPED, loft)).toEqual({ ok: true, name: "Loft", equipment: loft });
  });

  it("keeps timings that the form does not show", () => {
    const timed = { ...loft, actionSeconds: { springOn: 4 } };
    const read = readRoomDraft(roomDraftOf("Loft", timed, STANDARD_FORMATS), timed);
    expect(read.ok && read.equipment.actionSeconds).toEqual({ springOn: 4 });
  });

  it("reads numbers with a comma and gives two springs of one name an id each", () => {
    const spring = { ...emptySpring(0), label: "Very light", count: "2", stiffness: "0,09", preload: "7,5" };
    const read = readRoomDraft(
      { name: "Attic", units: STANDARD_FORMATS, travel: "81,5", springs: [spring, { ...spring, row: 1 }] },
      null,
    );
    if (!read.ok) throw new Error(read.say);
    expect(equipmentSchema.safeParse(read.equipment).success).toBe(true);
    expect(read.equipment.carriageTravelMm).toBe(815);
    expect(read.equipment.springs.map(({ id, stiffnessNPerMm }) => [id, stiffnessNPerMm])).toEqual([
      ["very-light", 0.09],
      ["very-light-2", 0.09],
    ]);
  });

  it.each([
    ["a travel in metres", { ...TYPED, travel: "0.9" }, /20 and 500/],
    ["a travel in millimetres", { ...TYPED, travel: "900" }, /Check the unit/],
    ["no travel", { ...TYPED, travel: "" }, /centimetres/],
    ["a spring that never pulls more", withSpring({ stiffness: "0" }), /stiffness of light/],
    ["a spring with no stiffness", withSpring({ stiffness: "" }), /stiffness/],
    ["a preload that is no number", withSpring({ preload: "much" }), /preload/],
    ["half a spring", withSpring({ count: "1.5" }), /whole number/],
    ["a spring with no name", withSpring({ label: " " }), /needs a name/],
  ])("says in a sentence what is wrong with %s", (_what, draft, say) => {
    expect(readRoomDraft(draft, loft)).toEqual({ ok: false, say: expect.stringMatching(say) });
  });
});
