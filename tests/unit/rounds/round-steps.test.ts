/** The steps of a round in order of time, with proposals taken; what a heading says of an edition that was withdrawn. */
import { expect, test } from "vitest";
import { sinceRead } from "#app/_margin/reading-to-sign.ts";
import { roundSteps } from "#app/_rounds/round-steps.ts";
import { changedCountWords, roundTitle } from "#app/_rounds/rounds-words.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import type { ProposalView } from "#lib/protocol/messages.ts";
import type { MomentHead, RoundView } from "#lib/rounds/rounds.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const moment = (kind: MomentHead["kind"], at: number): MomentHead => ({
  ...{ id: at, round: 1, kind, at, byId: "p", byName: "Jonas", note: null, hasText: true },
  ...{ must: 0, look: 0, info: 0, threads: 0, openThreads: 0 },
});
const round: RoundView = {
  ...{ number: 1, offeredById: "j", offeredByName: "Jonas", offeredAt: 10, readerId: "i", readerName: "Ines" },
  ...{ readSince: 20, outcome: "signed", endedByName: "Ines", endedAt: 30, mainPoints: [], edition: 2 },
  moments: [moment("offered", 10), moment("signed", 30)],
};
const proposal = (id: string, endedAt: number): ProposalView => ({
  ...{ id, itemId: "a", byId: "i", byName: "Ines", at: 5, note: null, state: "taken", word: null },
  parts: [
    { id: "seconds", kind: "field", item: "a", field: "seconds", was: 60, becomes: 75 },
    { id: "light", kind: "spring", item: "a", spring: "light", was: 1, becomes: 2 },
  ],
  ...{ taken: ["seconds"], endedByName: "Jonas", endedAt },
});

test("nothing stands before what came before it, and proposals that were taken are there", () => {
  const plan = examplePlan([]);
  const taken = new Map([
    ["one", { itemId: "a", parts: ["seconds"] }],
    ["later", { itemId: "a", parts: ["seconds", "light"] }],
  ]);
  const proposals = [proposal("one", 25), proposal("undone", 26), proposal("later", 45)];
  const told = (until: number | null) =>
    roundSteps(round, until, { plan, taken, proposals }).map((step) =>
      step.kind === "said" ? `${step.at} ${step.words}` : `${step.at} ${step.moment.kind}`,
    );
  expect(told(40)).toEqual([
    "10 offered",
    "20 Taken up by Ines",
    "25 1 of 2 parts of a proposal by Ines taken by Jonas: The time",
    "30 signed",
  ]);
  expect(told(null).at(-1)).toBe("45 Proposal by Ines taken by Jonas");
});

test("a heading says that the edition was withdrawn since", () => {
  expect(roundTitle(round)).toBe("Round 1: signed off as edition 2");
  const after = { ...round, moments: [...round.moments, moment("withdrawn", 50)] };
  expect(roundTitle(after)).toBe("Round 1: signed off as edition 2, since withdrawn");
});

test("one changed plate is counted in words", () => {
  expect([changedCountWords(1, 0), changedCountWords(1, 1), changedCountWords(2, 0)]).toEqual([
    "The one changed plate is not read yet",
    "The one changed plate is read",
    "0 of 2 changed plates read",
  ]);
});

test("what is told at a sign-off is what the plan has now that the reading has not", () => {
  const read = examplePlan([exampleMove("a")]);
  const first = { ...read, items: [exampleMove("a", { seconds: 95 })] };
  expect(sinceRead(read, read, STANDARD_FORMATS)).toEqual([]);
  expect(sinceRead(read, first, STANDARD_FORMATS).map(({ message }) => message)).toEqual([
    expect.stringMatching(/became 95 s/),
  ]);
  expect(sinceRead(read, { ...first, title: "Arms" }, STANDARD_FORMATS)).toHaveLength(2);
  // The page's library is larger than what the server read.
  expect(sinceRead({ ...read, moves: {} }, read, STANDARD_FORMATS)).toEqual([]);
});
