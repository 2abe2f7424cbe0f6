/** Forms of a move, of a room and of a rule in any units: opened and saved without a change, they alter nothing; what is typed comes back. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { readStandardDraft, standardDraftOf } from "#app/rules/standard-draft.ts";
import { readRoomDraft, roomDraftOf } from "#app/studio/room-draft.ts";
import { FORCE_UNITS, LENGTH_UNITS, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { typedForce, typedLength } from "#lib/formats/units.ts";
import { moveDraft, readMoveDraft } from "#lib/library/draft.ts";
import { exampleMoves } from "#lib/rules/define/example-plan.ts";
import { limitsOf, limitUnit, type NumberLimit, numberText } from "#lib/rules/limits.ts";
import { RULES } from "#lib/rules/registry.ts";

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

const UNITS_OF_ALL = new Set(["N", "mm", "kg"]);
const measured = RULES.flatMap((rule) =>
  limitsOf(rule).flatMap((limit) => (limit.kind === "number" && UNITS_OF_ALL.has(limit.unit) ? [{ rule, limit }] : [])),
);
const saved = (rule: (typeof RULES)[number], { name }: NumberLimit, value: number, of: typeof STANDARD_FORMATS) => {
  const standard = { limits: { [name]: value } };
  return readStandardDraft(rule, standardDraftOf(rule, standard, of), standard).standard?.limits?.[name];
};

test("a rule's page opened in any units and saved unchanged keeps each limit to the last digit, its bounds too", () => {
  expect(measured.map(({ limit }) => limit.name).sort()).toEqual([
    ...[
      "heavyKg",
      "leastMm",
      "lightKg",
      "maxOffsetDifferenceMm",
      "maxOffsetMm",
      "middleKg",
      "minStartN",
      "mostOffsetMm",
    ],
  ]);
  fc.assert(
    fc.property(units, fc.constantFrom(...measured), fc.double({ min: 0, max: 1, noNaN: true }), (u, one, share) => {
      const { rule, limit } = one;
      const f = { ...STANDARD_FORMATS, ...u };
      for (const value of [limit.min, limit.max, limit.min + share * (limit.max - limit.min)])
        expect(saved(rule, limit, value, f)).toBe(value);
    }),
  );
});

test("a limit that was typed comes back as it was typed, and is stored in newtons, millimetres and kilograms", () => {
  // NIST SP 811, B.8: 1 lbf is 4.448 221 615 260 5 N, 1 in is 25.4 mm, 1 lb is 0.453 592 37 kg; 1 kgf is 9.806 65 N.
  const per: Readonly<Record<string, number>> = {
    N: 1,
    kgf: 9.80665,
    lbf: 4.4482216152605,
    cm: 10,
    in: 25.4,
    kg: 1,
    lb: 0.45359237,
  };
  fc.assert(
    fc.property(
      units,
      fc.constantFrom(...measured),
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      (u, one, share) => {
        const { rule, limit } = one;
        const factor = per[limitUnit(limit, u)] ?? Number.NaN;
        const typed = Math.ceil((100 * (limit.min + share * (limit.max - limit.min))) / factor) / 100;
        const draft = standardDraftOf(rule, null, u);
        const read = readStandardDraft(
          rule,
          { ...draft, values: { ...draft.values, [limit.name]: String(typed) } },
          null,
        );
        const value = Number(read.standard?.limits?.[limit.name]);
        expect(value).toBeCloseTo(typed * factor, typed === Number(numberText(limit, limit.usual, u)) ? 0 : 9);
        expect(Number(numberText(limit, value, u))).toBe(typed);
      },
    ),
  );
});

test("the standard's units show a stored value as it is", () => {
  expect(moveDraft({ ...exampleMoves.row, loadN: [10.25, 160] }, STANDARD_FORMATS).loadN).toEqual(["10.25", "160"]);
});
