/** The record as people read it: a sentence for every kind, filters, pages, and who may. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { addToRecord, listRecord } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { RECORD_GROUPS, type RecordGroup, recordSentence } from "#lib/record/kinds.ts";
import { type RecordQuery, readRecord } from "#server/record/read-record.ts";
import { must, outcome } from "#tests/support/plan-studio.ts";
import { type RecordedStudio, recordedStudio } from "#tests/support/recorded-studio.ts";

let s: RecordedStudio;
beforeAll(async () => {
  s = await recordedStudio();
});
afterAll(() => s.stop());

const read = async (query: RecordQuery = {}) => must(await readRecord(s.app, s.people.petra, query));
const said = async (query: RecordQuery) => (await read(query)).lines.map(({ who, says }) => `${who} ${says}`);

test("every kind that a studio at work records has a sentence of its own", async () => {
  const lines = await said({});
  expect(lines.length).toBe(listRecord(s.db, 0, 1000).length);
  expect(lines.filter((line) => /noted “/.test(line) || /undefined|null|\[object/.test(line))).toEqual([]);
  expect(lines).toEqual(
    expect.arrayContaining([
      "Ines signed edition 1 of “Pull & press”.",
      "Ines withdrew edition 1 of “Pull & press”: “The firm spring is worn.”",
      "Petra changed the roles of Marta from coach to coach, lead.",
      "Petra removed Sam from the studio.",
      "Petra invited ona@tholepin.example as coach.",
      "The device “Screen” was paired in Harbour room, by a code of Petra.",
      "The device “Screen” sent the log of a class from edition 1 of “Pull & press”, Harbour room.",
      "Jonas shared “Pull & press” with Marta.",
      "Petra took the spring “firm” out of Loft.",
      "Ines archived “Kneeling press”.",
    ]),
  );
});

test("a kind that nobody has written a sentence for is said all the same", () => {
  const named = (id: string) => `name of ${id}`;
  const names = { person: named, plan: named, move: named, room: named, rule: named, device: named };
  const row = { kind: "looked-at", subject: "plan/p", bodyJson: "not json" };
  expect(recordSentence(row, names)).toBe("noted “looked at” for “name of p”.");
});

test("it is filtered by plan, person, kind and time; groups leave no row out and have none twice", async () => {
  const all = (await read()).lines;
  const by = async (group: RecordGroup) => (await read({ group })).lines.map(({ seq }) => seq);
  const seqs = (await Promise.all((Object.keys(RECORD_GROUPS) as RecordGroup[]).map(by))).flat();
  expect(seqs.sort((a, b) => b - a)).toEqual(all.map(({ seq }) => seq));
  expect((await read({ planId: s.planId })).lines.every(({ says }) => says.includes("Pull & press"))).toBe(true);
  const ofMarta = await said({ personId: "marta" });
  expect(ofMarta).toEqual(["Petra changed the roles of Marta from coach to coach, lead."]);
  const [newest, oldest] = [all.at(0)?.at ?? 0, all.at(-1)?.at ?? 0];
  expect((await read({ from: newest + 1 })).lines).toEqual([]);
  expect((await read({ until: oldest })).lines).toEqual([]);
  expect((await read({ from: oldest, until: newest + 1 })).lines).toEqual(all);
});

test("it is read page by page, and a rare row among many is found without looking through all at once", async () => {
  const entry = { at: 1, actorId: "ines", subject: "plan/other", kind: "marks", body: { userId: "jonas" } };
  inTransaction(s.db, () => {
    for (let n = 0; n < 45_000; n++) addToRecord(s.db, entry);
  });
  const first = await read();
  expect(first.lines).toHaveLength(50);
  const second = await read({ before: first.older ?? 0 });
  expect(second.lines[0]?.seq).toBe((first.lines.at(-1)?.seq ?? 0) - 1);
  const rare = await read({ planId: s.planId, group: "editions" });
  expect(rare.lines.map(({ href }) => href)).toContain(`/editions/${s.planId}/1`);
  expect(rare.older).toBeNull();
});

test("it is the managers' to read", async () => {
  for (const who of ["ines", "marta", "jonas", "sam"] as const) {
    expect(outcome(await readRecord(s.app, s.people[who], {})), who).toBe("no-right");
  }
});
