/** A room as it is typed: lengths and springs that no machine has are asked about, in one sentence. */
import { expect, test } from "vitest";
import { type RoomDraft, readRoomDraft, roomDraftOf } from "#app/studio/room-draft.ts";
import { exampleEquipment } from "#lib/rules/define/example-plan.ts";

const TYPED = roomDraftOf("Harbour room", exampleEquipment);
const withSpring = (change: Partial<RoomDraft["springs"][number]>): RoomDraft => ({
  ...TYPED,
  springs: TYPED.springs.map((spring, i) => (i === 0 ? { ...spring, ...change } : spring)),
});

test("what was kept is read back as it was", () => {
  expect(readRoomDraft(TYPED, exampleEquipment)).toEqual({
    ok: true,
    name: "Harbour room",
    equipment: exampleEquipment,
  });
});

test.each([
  ["a travel in metres", { ...TYPED, travelCm: "0.9" }, /20 and 500/],
  ["a travel in millimetres", { ...TYPED, travelCm: "900" }, /Check the unit/],
  ["no travel", { ...TYPED, travelCm: "" }, /centimetres/],
  ["a spring that never pulls more", withSpring({ stiffness: "0" }), /stiffness of light/],
  ["half a spring", withSpring({ count: "1.5" }), /whole number/],
  ["no name", withSpring({ label: " " }), /needs a name/],
])("%s is asked about", (_what, draft, say) => {
  expect(readRoomDraft(draft, exampleEquipment)).toEqual({ ok: false, say: expect.stringMatching(say) });
});
