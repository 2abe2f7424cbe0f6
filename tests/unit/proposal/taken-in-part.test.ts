/** What is said of a proposal that was taken in part: how much of it, and which parts; never that all of it was. */

import { expect, test } from "vitest";
import { LIST, TAKE } from "#app/_propose/propose-words.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { noticeSentence } from "#lib/notices/notice-words.ts";
import { takenInPart } from "#lib/proposal/part-words.ts";
import type { ProposalPart } from "#lib/proposal/parts.ts";
import { examplePlan } from "#lib/rules/define/example-plan.ts";

const plan = examplePlan([]);
const parts: readonly ProposalPart[] = [
  { id: "seconds", kind: "field", item: "a", field: "seconds", was: 60, becomes: 75 },
  { id: "light", kind: "spring", item: "a", spring: "light", was: 1, becomes: 2 },
  { id: "heavy", kind: "spring", item: "a", spring: "heavy", was: 1, becomes: 0 },
];

test("all of it is just taken", () => {
  const all = takenInPart(plan, parts, ["seconds", "light", "heavy"]);
  expect(all).toBeNull();
  expect(TAKE.taken("Ines", all)).toBe("Taken from Ines. Undo takes it back.");
});

test("a part of it is said as such on the plate, in the list and in the notice, and named", () => {
  const part = takenInPart(plan, parts, ["light", "seconds", "of another"]);
  if (!part) throw new Error("not in part");
  const at = "30 Nov";
  expect(part.count).toBe(2);
  expect(TAKE.taken("Ines", part)).toMatch(
    /^2 of 3 parts taken from Ines: The time, Springs: .+\. Undo takes it back\.$/,
  );
  expect(TAKE.sign("Ines", at, part)).toMatch(/^2 of 3 parts taken from Ines, 30 Nov: The time, Springs: /);
  expect(LIST.taken("Jonas", at, part)).toMatch(/^2 of 3 parts taken by Jonas, 30 Nov: The time, /);
  const data = { byId: "j", taken: true, part };
  expect(noticeSentence("answer", data, { by: "Jonas", title: "Arms", formats: STANDARD_FORMATS })).toMatch(
    /^Jonas took 2 of 3 parts of your proposal for “Arms”: The time, Springs: /,
  );
});
