/** The scorer by hand-made answers, and the labels by what the plan says: neither reads a sentence. */
import { describe, expect, it } from "vitest";
import { type GotAct, inWords, isPlanned, Score, scoreMissing, scoreTold } from "#tests/support/score-acts.ts";
import {
  agrees,
  CHANGES,
  type Ends,
  endsOf,
  halfOf,
  isForWork,
  isSoAfter,
  type Label,
  SET_UPS,
  type SetUpCase,
} from "#tests/support/told-acts.ts";

const SWAP = endsOf("c07"); // carriage home, middle off, turn to the front
const home: Label = { act: "carriage-home", verdict: "told", of: "home" };
const off: Label = { act: "spring-off", spring: "middle", count: 1, verdict: "told", of: "off" };
const around: Label = { act: "turn", verdict: "told", of: "around" };

describe("told acts", () => {
  it("are right with the same act, object and verdict", () => {
    const got: GotAct[] = [
      { act: "carriage-home", verdict: "told" },
      { act: "spring-off", spring: "middle", count: 1, verdict: "told" },
      { act: "turn", facing: "front", verdict: "told" },
    ];
    expect(scoreTold([home, off, around], got, SWAP)).toEqual({ hits: 3, missed: [], spurious: [] });
  });

  it("count against precision and recall with another object or verdict", () => {
    const light: GotAct = { act: "spring-off", spring: "light", count: 1, verdict: "contradicted" };
    const late: GotAct = { act: "carriage-home", verdict: "wrong-order" };
    const { hits, missed, spurious } = scoreTold([home, off], [light, late], SWAP);
    expect([hits, missed.length, spurious]).toEqual([0, 2, [light, late]]);
  });

  it("may be twice in the answer when they are said twice", () => {
    const got: GotAct = { act: "carriage-home", verdict: "told" };
    expect(scoreTold([home], [got, got], SWAP)).toEqual({ hits: 1, missed: [], spurious: [] });
  });

  it("do not count where a label leaves them open", () => {
    const maybe: Label = { ...off, optional: true };
    const told: GotAct = { act: "spring-off", spring: "middle", count: 1, verdict: "told" };
    expect(scoreTold([maybe], [], SWAP)).toEqual({ hits: 0, missed: [], spurious: [] });
    expect(scoreTold([maybe], [told], SWAP)).toEqual({ hits: 0, missed: [], spurious: [] });
    expect(scoreTold([maybe], [{ ...told, verdict: "contradicted" }], SWAP).spurious).toHaveLength(1);
    expect(scoreTold([{ ...off, any: true }], [{ ...told, verdict: "contradicted" }], SWAP).spurious).toEqual([]);
  });

  it("that are unsure may be passed over, but are not told", () => {
    const unsure: Label = { ...off, verdict: "unsure" };
    const told: GotAct = { act: "spring-off", spring: "middle", count: 1, verdict: "told" };
    expect(scoreTold([unsure], [], SWAP).missed).toEqual([]);
    expect(scoreTold([unsure], [{ ...told, verdict: "unsure" }], SWAP).hits).toBe(1);
    expect(scoreTold([unsure], [told], SWAP).spurious).toEqual([told]);
  });

  it("may say again what is so and does not change", () => {
    const kneel: GotAct = { act: "position", position: "kneeling", verdict: "told" };
    const stay: Label = { act: "stay", verdict: "told", of: "stay kneeling" };
    expect(scoreTold([], [kneel], SWAP).spurious).toEqual([]);
    expect(scoreTold([stay], [kneel], SWAP).hits).toBe(1);
    const sit: GotAct = { act: "position", position: "seated", verdict: "told" };
    expect(scoreTold([stay], [sit], SWAP)).toEqual({ hits: 0, missed: [stay], spurious: [sit] });
    const front: GotAct = { act: "turn", facing: "front", verdict: "told" };
    expect(scoreTold([], [front], SWAP).spurious).toEqual([front]);
  });
});

describe("missing acts", () => {
  it("are compared with their object, and open ones do not count", () => {
    const missing = [{ act: "spring-on", spring: "light", count: 2 }];
    const open = [{ act: "carriage-home" }];
    const got = [{ act: "carriage-home" }, { act: "spring-on", spring: "light", count: 1 }];
    expect(scoreMissing({ missing, open }, got)).toEqual({ hits: 0, missed: missing, spurious: [got[1]] });
    expect(scoreMissing({ missing, open }, missing)).toEqual({ hits: 1, missed: [], spurious: [] });
  });
});

it("precision and recall are the plain shares", () => {
  const score = new Score();
  score.add({ hits: 3, missed: [1], spurious: [] });
  score.add({ hits: 0, missed: [], spurious: [1, 2, 3] });
  expect([score.precision, score.recall]).toEqual([0.5, 0.75]);
  expect([new Score().precision, new Score().recall]).toEqual([1, 1]);
});

describe("every label", () => {
  it("has an id and a text of its own", () => {
    expect(SET_UPS.length).toBeGreaterThanOrEqual(420);
    expect(new Set(SET_UPS.map(({ id }) => id)).size).toBe(SET_UPS.length);
    expect(new Set(SET_UPS.map(({ lines }) => lines.join("\n").toLowerCase())).size).toBe(SET_UPS.length);
    expect(new Set(SET_UPS.map(({ habit }) => habit)).size).toBeGreaterThanOrEqual(8);
    expect([...CHANGES.keys()].filter((id) => !SET_UPS.some(({ change }) => change === id))).toEqual([]);
  });

  it("falls into one of two halves of about the same size", () => {
    const split = SET_UPS.filter(({ id }) => !isForWork(id));
    const unseen = split.filter(({ id }) => halfOf(id) === "unseen").length;
    expect(unseen / split.length).toBeGreaterThan(0.45);
    expect(unseen / split.length).toBeLessThan(0.55);
  });

  it("is its own best answer", () => {
    const score = new Score();
    for (const { change, told, missing, open } of SET_UPS) {
      score.add(scoreTold(told, told, endsOf(change)));
      score.add(scoreMissing({ missing, open }, missing));
    }
    expect([score.precision, score.recall]).toEqual([1, 1]);
  });

  it("agrees with the plan", () => {
    expect(SET_UPS.flatMap(faultsOf)).toEqual([]);
  });
});

/** What is wrong with the labels of one case. */
function faultsOf({ id, change, lines, told, missing, open }: SetUpCase): string[] {
  const ends = endsOf(change);
  const sure = told.filter(({ optional, any }) => !optional && !any);
  const covering = sure.filter(({ verdict }) => verdict === "told" || verdict === "wrong-order");
  const uncovered = ends.planned.filter((act) => !covering.some((label) => isPlanned(label, [act], ends)));
  const listed = uncovered.filter((act) => [...missing, ...open].some((one) => agrees(one, act) && agrees(act, one)));
  return [
    ...told.filter(({ of }) => !lines.some((line) => line.includes(of))).map(({ of }) => `${id}: no “${of}” in it`),
    ...sure.filter((label) => !holds(label, ends)).map((label) => `${id}: not so: ${inWords(label)}`),
    ...(listed.length === missing.length + open.length && listed.length === uncovered.length
      ? []
      : [`${id}: what is missing or open is not what nothing tells`]),
    ...(open.length > 0 && told.length === covering.length ? [`${id}: nothing makes an act open`] : []),
  ];
}

/** Whether the verdict of a label follows from the plan; of "stay" and unsure words the plan does not say. */
function holds(label: Label, ends: Ends): boolean {
  const planned = isPlanned(label, ends.planned, ends);
  if (label.act === "stay" || label.verdict === "unsure") return true;
  if (label.verdict === "told") return planned || isSoAfter(label, ends);
  return label.verdict === "wrong-order" ? planned : !planned && !isSoAfter(label, ends);
}
