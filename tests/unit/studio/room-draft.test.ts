/** A room as it is typed: lengths and springs that no machine has are asked about, in one sentence. */
import { expect, test } from "vitest";
import { draftOf, type RoomDraft, readDraft } from "#app/studio/room-draft.ts";
import { exampleEquipment } from "#lib/rules/define/example-plan.ts";

const TYPED = draftOf("Harbour room", exampleEquipment);
const withSpring = (change: Partial<RoomDraft["springs"][number]>): RoomDraft => ({
  ...TYPED,
  springs: TYPED.springs.map((spring, i) => (i === 0 ? { ...spring, ...change } : spring)),
});

test("what was kept is read back as it was", () => {
  expect(readDraft(TYPED, exampleEquipment)).toEqual({ ok: true, name: "Harbour room", equipment: exampleEquipment });
});

test.each([
  ["a travel in metres", { ...TYPED, travelCm: "0.9" }, /20 and 500/],
  ["a travel in millimetres", { ...TYPED, travelCm: "900" }, /look at the unit/],
  ["no travel", { ...TYPED, travelCm: "" }, /centimetres/],
  ["a spring that never pulls more", withSpring({ stiffness: "0" }), /stiffness of light/],
  ["half a spring", withSpring({ count: "1.5" }), /whole number/],
  ["no name", withSpring({ label: " " }), /name of your own/],
])("%s is asked about", (_what, draft, say) => {
  expect(readDraft(draft, exampleEquipment)).toEqual({ ok: false, say: expect.stringMatching(say) });
});
