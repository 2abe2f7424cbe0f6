/** A room as a manager types it. */
import { describe, expect, it } from "vitest";
import { emptySpring, readRoomDraft, roomDraftOf } from "#app/studio/room-draft.ts";
import { equipmentSchema } from "#lib/plan/schema.ts";
import { ROOMS } from "#seed/studio/rooms.ts";

const harbour = ROOMS[0]?.equipment;
if (!harbour) throw new Error("the demo has a room");

describe("a room's form", () => {
  it("gives back what it was opened with", () => {
    const read = readRoomDraft(roomDraftOf("Harbour room", harbour), harbour);
    expect(read).toEqual({ ok: true, name: "Harbour room", equipment: harbour });
  });

  it("keeps timings that the form does not show", () => {
    const timed = { ...harbour, actionSeconds: { springOn: 4 } };
    const read = readRoomDraft(roomDraftOf("Harbour room", timed), timed);
    expect(read.ok && read.equipment.actionSeconds).toEqual({ springOn: 4 });
  });

  it("reads numbers with a comma and gives two springs of one name an id each", () => {
    const spring = { ...emptySpring(0), label: "Very light", count: "2", stiffness: "0,09", preload: "7,5" };
    const read = readRoomDraft({ name: "Attic", travelCm: "81,5", springs: [spring, { ...spring, row: 1 }] }, null);
    if (!read.ok) throw new Error(read.say);
    expect(equipmentSchema.safeParse(read.equipment).success).toBe(true);
    expect(read.equipment.carriageTravelMm).toBe(815);
    expect(read.equipment.springs.map(({ id, stiffnessNPerMm }) => [id, stiffnessNPerMm])).toEqual([
      ["very-light", 0.09],
      ["very-light-2", 0.09],
    ]);
  });

  it.each([
    ["a spring with no name", { label: " " }, "name"],
    ["half a spring", { count: "1.5" }, "whole number"],
    ["no stiffness", { stiffness: "" }, "stiffness"],
    ["a preload that is no number", { preload: "much" }, "preload"],
  ])("says in a sentence what is wrong with %s", (_what, part, word) => {
    const spring = { ...emptySpring(0), label: "light", stiffness: "0.1", preload: "8", ...part };
    const read = readRoomDraft({ name: "Attic", travelCm: "80", springs: [spring] }, null);
    expect(read.ok ? "" : read.say).toContain(word);
  });
});
