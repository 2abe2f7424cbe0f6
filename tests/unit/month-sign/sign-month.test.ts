/** [INV-12] [INV-28] A month signed off in a real studio: only as it was read, once, with its findings and what is accepted. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { listMonthEditions } from "#db/repos/month-edition-repo.ts";
import { setRoles } from "#db/repos/people-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { readMonthFile } from "#lib/month/file/read-month.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import type { Person } from "#lib/policy/can.ts";
import { addSlot, changeSlot, takeOutSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { acceptInMonth, endAcceptedInMonth } from "#server/month-sign/accept-in-month.ts";
import { compareMonthEditions, readMonthEditions, readSignedMonth } from "#server/month-sign/month-editions.ts";
import { readMonthForSignOff } from "#server/month-sign/read-month.ts";
import { signMonth } from "#server/month-sign/sign-month.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { signedClass } from "#tests/support/signed-class.ts";

const MONTH = "2026-11";
let s: PlanStudio;
let petra: Person;
beforeEach(() => {
  s = openStudio();
  setRoles(s.db, "petra", ["manager", "lead"]);
  petra = { ...s.people.petra, roles: ["manager", "lead"] };
});
afterEach(() => s.stop());

type Change = Parameters<typeof changeSlot>[2];
const doc = monthDoc(MONTH);
const add = (id: string, more: Partial<MonthSlot> = {}) =>
  s.app.documents.transact(doc, "marta", (d) => {
    const slot = { id, date: "2026-11-12", start: "18:00", minutes: 45, room: ROOMS.harbour, coach: "marta", ...more };
    addSlot({ doc: d, origin: "marta" }, slot, s.app.now());
  });
const change = (id: string, to: Change) =>
  s.app.documents.transact(doc, "marta", (d) => changeSlot({ doc: d, origin: "marta" }, id, to));
const read = (who: Person = s.people.ines) => must(readMonthForSignOff(s.app, who, MONTH));
const sign = (reading: { hash: string; nextEdition: number }, who: Person = s.people.ines, more = {}) =>
  signMonth(s.app, who, MONTH, { hash: reading.hash, edition: reading.nextEdition, ...more });

describe("signing", () => {
  test("keeps the month that was read, canonical, under its hash, with findings and note, on the record", () => {
    add("one");
    const reading = read();
    expect(reading).toMatchObject({ nextEdition: 1, signed: null, sinceRead: null, blockers: [] });
    must(sign(reading, s.people.ines, { note: "Good month.", leftOpen: reading.lookAgain.length }));
    const [edition] = listMonthEditions(s.db, MONTH);
    expect(edition).toMatchObject({ number: 1, hash: reading.hash, signedBy: "ines", note: "Good month." });
    expect(sha256Hex(edition?.fileJson ?? "")).toBe(reading.hash);
    // The contract's own parser takes what was signed; only this test's studio has no UUID.
    const text = (edition?.fileJson ?? "").replace(/"uid":"[^"]*"/, `"uid":"6f1d3c52-8f0a-4d8b-9a57-2b1f5f0f7a11"`);
    expect(readMonthFile(text)).toMatchObject({ ok: true });
    expect(JSON.parse(edition?.findingsJson ?? "")).toEqual(reading.findings);
    expect(reading.findings.map(({ id }) => id)).toContain("no-plan:one");
    expect(listRecord(s.db, 0, 1000).map(({ kind }) => kind)).toContain("month-signed");
    expect(s.last(doc, "month-signed")?.signed).toMatchObject({ number: 1, byName: "Ines" });
  });

  test("is refused while something must be fixed, by name, and when there is nothing", () => {
    expect(read().blockers.map(({ code }) => code)).toEqual(["no-classes"]);
    add("one");
    add("two", { start: "18:30" });
    const reading = read();
    const refused = sign(reading);
    expect(refused).toMatchObject({ ok: false, error: { status: 409, code: "must-fix" } });
    expect(refused.ok ? "" : refused.error.message).toMatch(/Harbour room/);
    change("two", { start: "19:00" });
    must(sign(read()));
  });

  test("is refused when the month changed since it was read, with the changes in sentences", () => {
    add("one");
    const reading = read();
    change("one", { start: "19:00", coach: "ines" });
    const refused = sign(reading);
    expect(refused).toMatchObject({
      error: {
        code: "changed-since-read",
        details: { changes: ["Thu 12 Nov 19:00, Harbour room: moved from Thu 12 Nov 18:00; coach Ines, was Marta."] },
      },
    });
    expect(listMonthEditions(s.db, MONTH)).toEqual([]);
    expect(outcome(sign({ ...reading, hash: "0".repeat(64) }))).toBe("not-read");
    expect(outcome(sign(read(), petra))).toBe("not-read");
  });

  test("is refused after a colleague signed meanwhile, who is named, and twice for the same", () => {
    add("one");
    const [mine, theirs] = [read(), read(petra)];
    expect(mine.hash).toBe(theirs.hash);
    must(sign(theirs, petra));
    const refused = sign(mine);
    expect(refused).toMatchObject({ error: { code: "signed-meanwhile" } });
    expect(refused.ok ? "" : refused.error.message).toMatch(/^Petra signed this month meanwhile, as edition 1/);
    expect(outcome(sign(read()))).toBe("signed-already");
    expect(listMonthEditions(s.db, MONTH)).toHaveLength(1);
  });

  test("is for leads, of months that there are", () => {
    add("one");
    const reading = read();
    for (const who of [s.people.marta, s.people.jonas, s.people.petra, s.people.sam]) {
      expect(outcome(sign(reading, who))).toBe("no-right");
      expect(outcome(readMonthForSignOff(s.app, who, MONTH))).toBe("no-right");
    }
    expect(outcome(readMonthForSignOff(s.app, null, MONTH))).toBe("not-signed-in");
    expect(outcome(readMonthForSignOff(s.app, s.people.ines, "2060-01"))).toBe("not-found");
  });

  test("does not change by itself at midnight, or when a plan is signed that nobody uses", async () => {
    add("one");
    const before = read().hash;
    s.advance(3 * 86_400_000);
    await signedClass(s);
    expect(read().hash).toBe(before);
  });
});

describe("editions", () => {
  test("any two compared, and the newest with the month now", () => {
    add("one");
    must(sign(read()));
    s.advance(2 * 86_400_000);
    change("one", { room: ROOMS.loft });
    add("two", { date: "2026-11-20" });
    must(sign(read()));
    s.app.documents.transact(doc, "marta", (d) =>
      takeOutSlot({ doc: d, origin: "marta" }, "one", { at: s.app.now(), signedAt: s.app.now() }),
    );
    const compare = (from: number, to: number | null) =>
      must(compareMonthEditions(s.app, s.people.marta, MONTH, { from, to }));
    expect(compare(1, 2).slots.map(({ id, kind, parts }) => [id, kind, parts])).toEqual([
      ["one", "changed", ["room"]],
      ["two", "new", []],
    ]);
    expect(compare(2, null).sentences).toEqual(["Called off: Thu 12 Nov 18:00, Loft."]);
    expect(compare(2, 2).sentences).toEqual([]);
    expect(outcome(compareMonthEditions(s.app, s.people.marta, MONTH, { from: 9, to: 1 }))).toBe("not-found");
    expect(must(readMonthEditions(s.app, s.people.sam, MONTH)).editions.map(({ number }) => number)).toEqual([1, 2]);
  });

  test("do not depend on who reads, and show nobody a plan that they may not read", () => {
    const draft = must(
      createPlan(s.app, s.people.jonas, { title: "Jonas’s first try", lengthSeconds: 600, roomId: ROOMS.harbour }),
    );
    add("one", { plan: draft.id });
    must(sign(read()));
    const seen = (who: Person) => must(readSignedMonth(s.app, who, MONTH, 1));
    expect(seen(s.people.ines)).toMatchObject({ whole: true });
    expect(seen(s.people.ines).file.plans[draft.id]).toMatchObject({ title: "Jonas’s first try", signed: false });
    for (const who of [s.people.marta, s.people.petra, s.people.sam]) {
      expect(seen(who)).toMatchObject({ whole: false, findings: [] });
      expect(JSON.stringify(seen(who))).not.toContain("first try");
      expect(JSON.stringify(compareMonthEditions(s.app, who, MONTH, { from: 1, to: null }))).not.toContain("first try");
    }
    expect(outcome(readSignedMonth(s.app, s.people.jonas, MONTH, 1))).toBe("no-right");
  });
});

describe("an accepted finding", () => {
  const reason = "The room fills by itself.";
  const accept = (who: Person = s.people.ines, id = "no-plan:one") => {
    const finding = found(id);
    return acceptInMonth(s.app, who, MONTH, { finding, reason });
  };
  const never = (): never => {
    throw new Error("not found");
  };
  const found = (id: string) => {
    const { level: _, slots, ...rest } = read().findings.find((one) => one.id === id) ?? never();
    return { ...rest, slots: [...slots] };
  };

  test("counts with the values that were accepted, stands again with others, and is told to open pages", () => {
    add("one");
    const { id } = must(accept());
    expect(s.last(doc, "accepted")?.accepted).toMatchObject([{ id, reason, byName: "Ines" }]);
    expect(read().lookAgain.map((one) => one.id)).not.toContain("no-plan:one");
    expect(outcome(accept())).toBe("already-accepted");
    change("one", { start: "19:00" });
    expect(read().lookAgain.map((one) => one.id)).toContain("no-plan:one");
    change("one", { start: "18:00" });
    expect(read().lookAgain.map((one) => one.id)).not.toContain("no-plan:one");
    must(sign(read()));
    expect(JSON.parse(listMonthEditions(s.db, MONTH)[0]?.acceptedJson ?? "")).toMatchObject([{ id, reason }]);
    must(endAcceptedInMonth(s.app, s.people.ines, MONTH, id));
    expect(outcome(endAcceptedInMonth(s.app, s.people.ines, MONTH, id))).toBe("already-ended");
    expect(outcome(endAcceptedInMonth(s.app, s.people.ines, "2026-12", id))).toBe("not-found");
    expect(s.last(doc, "accepted")?.accepted).toEqual([]);
    const kinds = listRecord(s.db, 0, 1000).map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(["finding-accepted", "acceptance-ended"]));
  });

  test("is refused for a must, for other values, for whoever is no lead", () => {
    add("one");
    expect(outcome(accept(s.people.marta))).toBe("no-right");
    const other = { ...found("no-plan:one"), values: { more: 1 } };
    expect(outcome(acceptInMonth(s.app, s.people.ines, MONTH, { finding: other, reason }))).toBe("finding-changed");
    add("two");
    const clash = read().findings.find(({ rule }) => rule === "room-clash") ?? never();
    expect(outcome(accept(s.people.ines, clash.id))).toBe("not-look-again");
  });
});
