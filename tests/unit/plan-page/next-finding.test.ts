/** Pressing a count again and again comes by every finding of that level once, then begins again. */
import { expect, test } from "vitest";
import { nextFinding } from "#app/_plan/next-finding.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";

const { findings } = checkPlan(FIRST_TRY);
const snapAt = (selectedId: string | null) =>
  ({ plan: FIRST_TRY, findings, accepted: [], selectedId }) as unknown as SessionSnapshot;

test.each(["must", "look", "info"] as const)("every %s once, then around", (level) => {
  const all = findings.filter((f) => f.level === level);
  expect(all.length).toBeGreaterThan(1);
  const came: (string | undefined)[] = [];
  let last = null as Finding | null;
  for (let press = 0; press < all.length; press++) {
    last = nextFinding(snapAt(last?.items[0] ?? null), [level], last) ?? null;
    came.push(last?.key);
  }
  expect(new Set(came)).toEqual(new Set(all.map((f) => f.key)));
  expect(nextFinding(snapAt(last?.items[0] ?? null), [level], last)?.key).toBe(came[0]);
});

test("chosen elsewhere, it goes on from there", () => {
  const place = (id: string | undefined) => FIRST_TRY.items.findIndex((item) => item.id === id);
  const here = FIRST_TRY.items[8]?.id ?? "";
  const next = nextFinding(snapAt(here), ["look"], null);
  expect(place(next?.items[0])).toBeGreaterThan(8);
});
