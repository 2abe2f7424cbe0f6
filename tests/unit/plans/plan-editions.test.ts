/** A plan's editions: listed with what was accepted, compared plate by plate, used as a template. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { insertEdition, readEdition } from "#db/repos/edition-repo.ts";
import { listPlanEvents } from "#db/repos/event-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { updateRoom } from "#db/repos/room-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { canonicalJson, contentHash } from "#lib/canonical/canonical.ts";
import { buildCard, sealCard } from "#lib/card/card.ts";
import type { Card } from "#lib/card/schema.ts";
import { readItems } from "#lib/doc/read.ts";
import { setHead } from "#lib/doc/write.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { compareEditions } from "#server/editions/compare-editions.ts";
import { readPlanEditions } from "#server/editions/plan-editions.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { readPlanDetail } from "#server/plans/plan-detail.ts";
import { planFromEdition } from "#server/plans/plan-from-edition.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { cpuMs } from "#tests/support/cpu-time.ts";
import { longClass } from "#tests/support/long-class.ts";
import { EQUIPMENT, must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { signedClass } from "#tests/support/signed-class.ts";

let s: PlanStudio;
let id = "";
beforeEach(async () => {
  s = openStudio();
  id = (await signedClass(s)).id;
});
afterEach(() => s.stop());

const ACCEPTED = [{ id: "a", rule: "r", message: "Two in a row.", reason: "Asked for.", byName: "Ines", at: 7 }];

function cardOf(number: number, plan: Plan): Card {
  const about = { studio: { name: "Tholepin Strength", town: "" }, planId: id, number };
  const dates = { issuedAt: s.app.now(), expiresAt: s.app.now() + 86_400_000 };
  return buildCard({ ...about, ...dates, room: { id: ROOMS.harbour, name: "Harbour room" }, plan });
}

/** Another edition of the class, signed as the studio signs. */
function sign(number: number, change: (plan: Plan) => Plan = (plan) => plan): void {
  store(cardOf(number, change(readEdition(s.db, id, 1)?.card.card.plan as Plan)));
}

function store(card: Card): void {
  const { plan } = card;
  const { number } = card.edition;
  const edition = {
    ...{ planId: id, number, hash: contentHash(plan), planJson: canonicalJson(plan), findings: [], note: null },
    ...{ signedBy: "ines", signedAt: s.app.now(), accepted: ACCEPTED, round: number },
    card: sealCard(card, s.app.keys.keyId, (bytes) => s.app.keys.sign(bytes)),
  };
  inTransaction(s.db, () => insertEdition(s.db, edition));
}

describe("the list", () => {
  it("has every edition with its round, what was accepted, and who withdrew it and why", () => {
    sign(2);
    must(withdrawEdition(s.app, s.people.ines, { planId: id, number: 1 }, "Superseded."));
    const { editions, title, origin } = must(readPlanEditions(s.app, s.people.ines, id));
    expect({ title, origin }).toEqual({ title: "Pull & press", origin: null });
    expect(editions).toMatchObject([
      { number: 2, round: 2, withdrawn: null, accepted: [{ message: "Two in a row.", reason: "Asked for." }] },
      { number: 1, round: 1, accepted: [], withdrawn: { byName: "Ines", reason: "Superseded." } },
    ]);
    expect(proveRecord(s.db).holds).toBe(true);
  });

  it("shows what was accepted to whoever reads the plan and to managers; nobody else learns that it was asked for", () => {
    sign(2);
    const shown = (who: keyof PlanStudio["people"]) =>
      must(readPlanEditions(s.app, s.people[who], id)).editions[0]?.accepted.length;
    for (const who of ["ines", "petra", "jonas"] as const) expect(shown(who), who).toBe(1);
    expect(shown("sam")).toBe(0);
    expect(outcome(readPlanEditions(s.app, s.people.noor, id))).toBe("not-found");
    const never = must(createPlan(s.app, s.people.jonas, { title: "Draft", lengthSeconds: 600 })).id;
    expect(outcome(readPlanEditions(s.app, s.people.jonas, never))).toBe("not-found");
  });

  it("of fifty editions of sixty items is read, the first time too, within seconds", () => {
    const card = cardOf(2, longClass(60, 200));
    for (let number = 2; number <= 50; number++) store({ ...card, edition: { ...card.edition, number } });
    const read = () => must(readPlanEditions(s.app, s.people.ines, id)).editions;
    // 0.7 s where nothing else runs; 1.4 s were seen on a busy machine.
    expect(cpuMs(read)).toBeLessThan(5000);
    expect(read()).toHaveLength(50);
    expect(read().filter(({ damaged }) => damaged)).toEqual([]);
  });
});

describe("two editions", () => {
  it("are compared plate by plate, with what is about the whole class apart", () => {
    sign(2, (plan) => ({
      ...plan,
      title: "Press & pull",
      items: plan.items.flatMap((item) => {
        if (item.id === "m2" && item.kind === "move") return [{ ...item, seconds: 125, springs: { light: 2 } }];
        return item.id === "m4" ? [] : [item];
      }),
    }));
    const { whole, plates } = must(
      compareEditions(s.app, s.people.sam, { planId: id, from: 1, to: 2 }, STANDARD_FORMATS),
    );
    expect(whole).toEqual(["The title: “Pull & press” became “Press & pull”."]);
    expect(plates).toMatchObject([
      { id: "m2", name: "Kneeling press", was: true, is: true, setUp: true },
      { id: "m4", name: "Kneeling press", was: true, is: false, sentences: ["Kneeling press was removed."] },
    ]);
    expect(plates[0]?.sentences).toEqual([
      "Kneeling press: 2 min became 2 min 5 s.",
      "Kneeling press, springs: one firm became two light.",
    ]);
    const back = must(compareEditions(s.app, s.people.sam, { planId: id, from: 2, to: 1 }, STANDARD_FORMATS)).plates;
    expect(back.find((plate) => plate.id === "m4")).toMatchObject({ was: false, is: true });
    expect(back.find((plate) => plate.id === "m4")?.sentences[0]).toMatch(/^Kneeling press was added after/);
  });

  it("that are the same have no difference; one that moved is said to stand elsewhere", () => {
    sign(2);
    sign(3, (plan) => ({ ...plan, items: plan.items.toSpliced(1, 1).toSpliced(3, 0, plan.items[1] as never) }));
    expect(must(compareEditions(s.app, s.people.ines, { planId: id, from: 1, to: 2 }, STANDARD_FORMATS))).toMatchObject(
      {
        whole: [],
        plates: [],
      },
    );
    const { plates } = must(compareEditions(s.app, s.people.ines, { planId: id, from: 2, to: 3 }, STANDARD_FORMATS));
    expect(plates.flatMap(({ sentences }) => sentences)).toEqual(["Kneeling row stands in another place."]);
    expect(outcome(compareEditions(s.app, s.people.ines, { planId: id, from: 1, to: 9 }, STANDARD_FORMATS))).toBe(
      "not-found",
    );
    expect(outcome(compareEditions(s.app, s.people.noor, { planId: id, from: 1, to: 2 }, STANDARD_FORMATS))).toBe(
      "not-found",
    );
  });
});

describe("a template", () => {
  it("is a new plan of whoever takes it, with the class as it was signed, and keeps where it came from", async () => {
    await s.write(planDoc(id), s.people.jonas, (w) => setHead(w, "level", "open"));
    const made = must(planFromEdition(s.app, s.people.marta, { planId: id, number: 1 })).id;
    const signed = readEdition(s.db, id, 1)?.card.card.plan as Plan;
    expect(s.rooms.withDoc(planDoc(made), (doc) => readItems(doc))).toEqual(signed.items);
    expect(readPlanRow(s.db, made)).toMatchObject({
      ...{ title: "Pull & press (from edition 1)", ownerId: "marta", state: "in-writing", origin: `${id}/1` },
      ...{ roomId: ROOMS.harbour, team: false, sharedWith: [] },
    });
    expect(must(readPlanDetail(s.app, s.people.marta, made)).origin).toEqual({
      ...{ planId: id, number: 1, title: "Pull & press" },
    });
    expect(listPlanEvents(s.db, made)).toMatchObject([{ kind: "from-edition", note: `${id}/1`, actorId: "marta" }]);
    expect(listRecord(s.db, 0, 1000).at(-1)).toMatchObject({ subject: `plan/${made}`, kind: "from-edition" });
    // It is read with the studio's own moves and machines, and nothing is wrong with it.
    expect(s.rooms.withDoc(planDoc(made), (doc) => [...doc.getMap("carried").keys()])).toEqual([]);
    expect((await s.findings(made)).filter(({ level }) => level === "must")).toEqual([]);
  });

  it("brings the machines and moves of the edition where the studio no longer has them", () => {
    const springs = EQUIPMENT.springs.filter((spring) => spring.id === "light");
    updateRoom(s.db, { id: ROOMS.harbour, name: "Harbour room", equipment: { ...EQUIPMENT, springs } });
    const made = must(planFromEdition(s.app, s.people.jonas, { planId: id, number: 1 })).id;
    expect(s.rooms.withDoc(planDoc(made), (doc) => doc.getMap("carried").has("equipment"))).toBe(true);
  });

  it("needs the right to read the edition and to write plans", () => {
    const which = { planId: id, number: 1 };
    expect(outcome(planFromEdition(s.app, s.people.noor, which))).toBe("not-found");
    for (const who of ["sam", "petra"] as const) {
      expect(outcome(planFromEdition(s.app, s.people[who], which)), who).toBe("no-right");
    }
    expect(outcome(planFromEdition(s.app, s.people.ines, { planId: id, number: 4 }))).toBe("not-found");
  });
});
