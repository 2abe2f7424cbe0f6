/** What waits at a desk, and in which order. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { cameBackWords } from "#app/desk/waiting-words.ts";
import { visitDesk } from "#db/repos/desk-repo.ts";
import { newestRound } from "#db/repos/round-repo.ts";
import { newestWithdrawals } from "#db/repos/withdrawal-repo.ts";
import { byUrgency, type Waiting } from "#lib/desk/waiting.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { readWaiting } from "#server/desk/waiting.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { must, openStudio, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

const named = (title: string, more: Partial<Waiting> = {}): Waiting =>
  ({
    kind: "named",
    planId: title,
    title,
    at: 0,
    classAt: null,
    threadId: "t",
    byName: "",
    words: "",
    ...more,
  }) as Waiting;

describe("the most urgent first", () => {
  it("goes by the next class, then by what it is, then by how long it waits, and logs come last", () => {
    const list = [
      named("log", { kind: "log", classAt: null, at: 1 }),
      named("no class, newer", { at: 9 }),
      named("no class, older", { at: 3 }),
      named("named for Friday", { classAt: "2026-12-04 07:00" }),
      named("offered for Friday", { kind: "offered", classAt: "2026-12-04 07:00" }),
      named("Thursday", { classAt: "2026-12-03 18:00" }),
    ];
    expect(list.sort(byUrgency).map(({ title }) => title)).toEqual([
      "Thursday",
      "offered for Friday",
      "named for Friday",
      "no class, older",
      "no class, newer",
      "log",
    ]);
  });

  it("is an order: whatever the list begins with, it ends the same", () => {
    const list = [1, 2, 3, 4, 5].map((at) => named(`p${at}`, { at, classAt: at % 2 ? "2026-12-01 07:00" : null }));
    const once = [...list].sort(byUrgency);
    expect([...list].reverse().sort(byUrgency)).toEqual(once);
  });
});

describe("at the desk", () => {
  let s: PlanStudio;
  beforeEach(() => {
    s = openStudio();
  });
  afterEach(() => s.stop());

  const plan = () =>
    must(createPlan(s.app, s.people.jonas, { title: "Row", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  const kinds = (who: PlanStudio["people"]["ines"]) => must(readWaiting(s.app, who)).waiting.map(({ kind }) => kind);

  it("an offered plan waits for leads and not for who offered it; a returned one for its author", async () => {
    const id = plan();
    must(await handIn(s.app, s.people.jonas, id));
    expect(kinds(s.people.ines)).toEqual(["offered"]);
    expect(kinds(s.people.jonas)).toEqual([]);
    expect(kinds(s.people.marta)).toEqual([]);
    must(await handBack(s.app, s.people.ines, id, { note: "Shorter set-ups, please." }));
    expect(kinds(s.people.ines)).toEqual([]);
    expect(must(readWaiting(s.app, s.people.jonas)).waiting).toMatchObject([
      { kind: "returned", note: "Shorter set-ups, please.", planId: id },
    ]);
    expect(newestRound(s.db, id)?.outcome).toBe("returned");
  });

  it("a plan whose edition was withdrawn came back by its reason: an earlier return is not its return", async () => {
    const { jonas, marta, ines } = s.people;
    const id = plan();
    must(sharePlan(s.app, jonas, id, { userId: marta.id, on: true }));
    await writeGoodClass(s, planDoc(id), [jonas, marta]);
    must(await handIn(s.app, jonas, id));
    must(await handBack(s.app, ines, id, { note: "Nearly", mainPoints: ["Shorter set-ups."] }));
    expect(must(readWaiting(s.app, jonas)).waiting).toMatchObject([
      { byName: "Ines", mainPoints: ["Shorter set-ups."] },
    ]);
    must(await handIn(s.app, jonas, id));
    const { hash } = must(await readForSignOff(s.app, ines, id));
    must(await signPlan(s.app, ines, id, { hash }));
    must(withdrawEdition(s.app, ines, { planId: id, number: 1 }, "A spring is worn"));
    expect(must(readWaiting(s.app, jonas)).waiting).toMatchObject([
      { kind: "returned", note: "A spring is worn", byName: "Ines", withdrawn: 1, mainPoints: [] },
    ]);
    const withdrawal = newestWithdrawals(s.db).get(id);
    expect(must(readWaiting(s.app, jonas)).waiting[0]?.at).toBe(withdrawal?.withdrawnAt);
    expect(cameBackWords(1, "Ines")).toBe("edition 1 withdrawn by Ines, so it is to be signed off again");
    expect(cameBackWords(null, "Ines")).toBe("returned by Ines");
  });

  it("what came since the visit before is new; a desk opened again within half an hour is the same visit", () => {
    expect(visitDesk(s.db, "ines", 1_000_000)).toBe(0);
    expect(visitDesk(s.db, "ines", 1_000_000 + 29 * 60_000)).toBe(0);
    expect(visitDesk(s.db, "ines", 10_000_000)).toBe(1_000_000 + 29 * 60_000);
    expect(visitDesk(s.db, "ines", 10_060_000)).toBe(1_000_000 + 29 * 60_000);
  });

  it("nobody who is not signed in, and no device, has a desk", () => {
    expect(readWaiting(s.app, null)).toMatchObject({ ok: false, error: { status: 401 } });
    expect(readWaiting(s.app, { kind: "device", id: "d", roomId: "harbour" })).toMatchObject({
      error: { status: 403 },
    });
  });
});
