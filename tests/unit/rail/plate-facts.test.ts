/** What a plate says of a move: when its lines are said, as shares of its time, and whether more is written than fits. */
import { describe, expect, test } from "vitest";
import { platesOf } from "#app/_parts/plate/plate-facts.ts";
import { saidStretches } from "#app/_parts/plate/said.ts";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";

describe("when lines are said", () => {
  const rows = [{ item: "a", start: 100, end: 160 }];
  const said = (from: number, to: number) => saidStretches({ cues: [{ item: "a", from, to }], rows }).get("a");

  test("is a share of the item's time", () => {
    expect(said(115, 130)).toEqual([{ from: 0.25, to: 0.5 }]);
  });

  test("begins and ends with the item, and what falls into the change is left out", () => {
    expect(said(90, 106)).toEqual([{ from: 0, to: 0.1 }]);
    expect(said(154, 190)).toEqual([{ from: 0.9, to: 1 }]);
    expect(said(80, 100)).toBeUndefined();
  });
});

describe("the plates of a plan", () => {
  const plan = UPPER_BODY_AND_TRUNK;
  const { rows } = classClock(plan);
  const { cues, dropped } = cueTrack(plan);
  const moves = plan.items.filter(isMoveItem);

  test("have the plan's own names, times and springs, and ink for every line said during the work", () => {
    const factsOf = platesOf(plan, { rows, cues, dropped });
    for (const item of moves) {
      const facts = factsOf(item);
      expect(facts).toMatchObject({ seconds: item.seconds, springs: item.springs, side: item.side, over: false });
      expect(facts.name).toBe(facts.move?.name);
      const row = rows.find((one) => one.item === item.id);
      const during = cues.filter((cue) => cue.item === item.id && cue.to > (row?.start ?? 0));
      expect(facts.said).toHaveLength(during.length);
    }
  });

  test("are marked where a line had to be set aside", () => {
    const [first] = moves;
    if (!first) throw new Error("no move");
    const factsOf = platesOf(plan, { rows, cues, dropped: [{ item: first.id }] });
    expect(moves.map((item) => factsOf(item).over)).toEqual(moves.map((item) => item === first));
  });
});
