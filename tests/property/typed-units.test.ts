/** Forms of a move and of a room in any units: opened and saved without a change, they alter nothing; what is typed comes back. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { readRoomDraft, roomDraftOf } from "#app/studio/room-draft.ts";
import { FORCE_UNITS, LENGTH_UNITS, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { typedForce, typedLength } from "#lib/formats/units.ts";
import { moveDraft, readMoveDraft } from "#lib/library/draft.ts";
import { exampleMoves } from "#lib/rules/define/example-plan.ts";

const units = fc.record({ force: fc.constantFrom(...FORCE_UNITS), length: fc.constantFrom(...LENGTH_UNITS) });
const amount = (most: number) => fc.double({ min: 0, max: most, noNaN: true });
const range = (most: number) =>
  fc.tuple(amount(most), amount(most)).map(([a, b]): [number, number] => (a < b ? [a, b] : [b, a]));

test("a move opened in any units and saved unchanged is the same to the last digit", () => {
  fc.assert(
    fc.property(units, range(5000), range(5000), (of, loadN, travelMm) => {
      const move = { ...exampleMoves.row, loadN, travelMm };
      const read = readMoveDraft(moveDraft(move, of), move);
      expect(read).toEqual({ ok: true, move });
    }),
  );
});

test("a load and a travel that were typed come back as they were typed, however often they are opened and saved", () => {
  const typed = fc.integer({ min: 1, max: 9_999 }).map((n) => n / 100);
  fc.assert(
    fc.property(units, typed, typed, (of, force, length) => {
      const draft = {
        ...moveDraft(exampleMoves.row, of),
        loadN: ["0", String(force)],
        travel: ["0", String(length)],
      } as const;
      const first = readMoveDraft(draft, exampleMoves.row);
      if (!first.ok) throw new Error(first.faults[0]?.say);
      const { loadN, travelMm } = first.move;
      expect(typedForce(loadN?.[1] ?? -1, of)).toBe(force);
      expect(typedLength(travelMm?.[1] ?? -1, of)).toBe(length);
      const again = readMoveDraft(moveDraft(first.move, of), first.move);
      expect(again).toEqual(first);
    }),
  );
});

test("a room opened in any units and saved unchanged is the same to the last digit", () => {
  fc.assert(
    fc.property(
      units,
      fc.double({ min: 200, max: 5000, noNaN: true }),
      fc.double({ min: 0.001, max: 3, noNaN: true }),
      amount(300),
      (of, travel, k, preloadN) => {
        const springs = [{ id: "light", label: "light", count: 2, stiffnessNPerMm: k, preloadN }];
        const equipment = { name: "Loft", carriageTravelMm: travel, springs };
        expect(readRoomDraft(roomDraftOf("Loft", equipment, of), equipment)).toEqual({
          ok: true,
          name: "Loft",
          equipment,
        });
      },
    ),
  );
});

test("the standard's units show a stored value as it is", () => {
  expect(moveDraft({ ...exampleMoves.row, loadN: [10.25, 160] }, STANDARD_FORMATS).loadN).toEqual(["10.25", "160"]);
});
