/** Every way in which a sign-off is refused, each beside the same sign-off going through. */

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { listEditions } from "#db/repos/edition-repo.ts";
import { putMove } from "#db/repos/move-repo.ts";
import { setRoles } from "#db/repos/people-repo.ts";
import { writeStandards } from "#db/repos/studio-repo.ts";
import { setThreadSettled } from "#db/repos/thread-repo.ts";
import { deleteItem, setItemField } from "#lib/doc/write.ts";
import type { Move } from "#lib/plan/schema.ts";
import type { Person } from "#lib/policy/can.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { putMoves } from "#server/library/library.ts";
import { changePlan } from "#server/plans/change-plan.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { handBack } from "#server/sign-off/hand-back.ts";
import { handIn, takeBack } from "#server/sign-off/hand-in.ts";
import { optionalNoteSchema, requiredNoteSchema, returnSchema } from "#server/sign-off/plan-states.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan, signSchema } from "#server/sign-off/sign-plan.ts";
import { withdrawEdition, withdrawSchema } from "#server/sign-off/withdraw-edition.ts";
import { createSigningKeys } from "#server/signing/keys.ts";
import { openThread } from "#server/threads/threads.ts";
import { writeGoodClass } from "#tests/support/good-class.ts";
import { MOVES, must, openStudio, outcome, type PlanStudio, ROOMS } from "#tests/support/plan-studio.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio();
});
afterEach(() => s.stop());

interface Plan {
  readonly id: string;
  readonly doc: DocName;
}

/** A good class by `owner` and, when there is one, `other`, offered for reading unless told not to. */
async function goodPlan(owner: Person, other: Person = owner, handedIn = true): Promise<Plan> {
  const { id } = must(createPlan(s.app, owner, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour }));
  if (other.id !== owner.id) must(sharePlan(s.app, owner, id, { userId: other.id, on: true }));
  await writeGoodClass(s, planDoc(id), [owner, other]);
  if (handedIn) must(await handIn(s.app, owner, id));
  return { id, doc: planDoc(id) };
}
const read = async (id: string, who = s.people.ines) => must(await readForSignOff(s.app, who, id));
const sign = (id: string, hash: string, who = s.people.ines) => signPlan(s.app, who, id, { hash });

describe("sign-off", () => {
  it("goes through for a good plan by two, read by a lead", async () => {
    const { id } = await goodPlan(s.people.jonas, s.people.marta);
    expect(outcome(await sign(id, (await read(id)).hash))).toBe("ok");
    expect(listEditions(s.db, id)).toMatchObject([{ number: 1, signedBy: "ines", title: "Pull and press" }]);
  });

  it("is refused on a reading from before the edition was withdrawn", async () => {
    const { id } = await goodPlan(s.people.jonas, s.people.marta);
    const { hash } = await read(id);
    must(await sign(id, hash));
    s.advance(1000);
    must(withdrawEdition(s.app, s.people.ines, { planId: id, number: 1 }, "The row is too heavy."));
    must(await handIn(s.app, s.people.jonas, id));
    expect(outcome(await sign(id, hash))).toBe("withdrawn-since-read");
    s.advance(1000);
    expect(outcome(await sign(id, (await read(id)).hash))).toBe("ok");
  });

  it("[INV-12] is refused while a finding must be fixed, which it lists", async () => {
    const { id, doc } = await goodPlan(s.people.jonas, s.people.marta);
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "seconds", 700)); // far over its length
    const seen = await read(id);
    const must1 = seen.findings.filter((f) => f.level === "must");
    expect(must1.map((f) => f.rule)).toContain("total-length");
    const refused = await sign(id, seen.hash);
    expect(refused).toMatchObject({
      ok: false,
      error: { code: "must-fix", status: 409, details: { findings: must1 } },
    });
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "seconds", 100));
    expect(outcome(await sign(id, (await read(id)).hash))).toBe("ok");
  });

  it("[INV-12] is refused while threads are open, and says how many", async () => {
    const { id } = await goodPlan(s.people.jonas, s.people.marta);
    const threads = ["One", "Two"].map(
      (body) => must(openThread(s.app, s.people.ines, id, { anchor: { kind: "plan" }, body })).id,
    );
    const { hash } = await read(id);
    const refused = await sign(id, hash);
    expect(refused).toMatchObject({ error: { code: "open-threads", status: 409, details: { open: 2 } } });
    if (!refused.ok) expect(refused.error.message).toContain("2 threads are still open");
    for (const thread of threads) setThreadSettled(s.db, thread, true);
    expect(outcome(await sign(id, hash))).toBe("ok");
  });

  it("[INV-12] is refused to the only author, and allowed when somebody else wrote too or another lead signs", async () => {
    const { ines, marta } = s.people;
    const alone = await goodPlan(ines);
    expect(await sign(alone.id, (await read(alone.id)).hash)).toMatchObject({
      error: { code: "only-author", status: 403 },
    });
    await s.write(alone.doc, marta, (w) => setItemField(w, "m1", "locked", true));
    expect(outcome(await sign(alone.id, (await read(alone.id)).hash))).toBe("ok");
    // Nobody but Marta wrote this one: a lead who wrote nothing in it may sign.
    const martas = await goodPlan(marta);
    expect(outcome(await sign(martas.id, (await read(martas.id)).hash))).toBe("ok");
  });

  it("says to the only lead who allows it, and offers it to one who manages the studio too", async () => {
    const { ines } = s.people;
    const alone = await goodPlan(ines);
    const [first] = (await read(alone.id)).blockers;
    expect(first).toMatchObject({ code: "only-author", details: { mayAllow: false } });
    expect(first?.message).toContain("Ask a manager to allow it");
    setRoles(s.db, ines.id, ["lead", "manager"]);
    expect((await read(alone.id)).blockers).toMatchObject([{ code: "only-author", details: { mayAllow: true } }]);
    setRoles(s.db, s.people.noor.id, ["lead"]);
    const [among] = (await read(alone.id)).blockers;
    expect(among).toEqual({
      code: "only-author",
      message: "You are the only author of this plan. Somebody else has to sign it off.",
    });
  });

  it("is allowed to the only author where the studio says so", async () => {
    await s.stop();
    s = openStudio({ soleAuthorMaySign: true });
    const { id } = await goodPlan(s.people.ines);
    expect(outcome(await sign(id, (await read(id)).hash))).toBe("ok");
  });

  it("is refused before it is offered for reading, after it was taken back, and once it is signed", async () => {
    const { ines, marta } = s.people;
    const { id } = await goodPlan(ines, marta, false);
    const { hash, blockers } = await read(id);
    expect(blockers.map((b) => b.code)).toEqual(["not-handed-in"]);
    expect(outcome(await sign(id, hash))).toBe("not-handed-in");
    must(await handIn(s.app, ines, id)); // an owner who is a lead hands in first
    must(await takeBack(s.app, ines, id));
    expect(outcome(await sign(id, hash))).toBe("not-handed-in");
    must(await handIn(s.app, ines, id));
    expect(outcome(await sign(id, hash))).toBe("ok");
    expect(outcome(await sign(id, hash))).toBe("not-handed-in");
    expect(listEditions(s.db, id)).toHaveLength(1);
  });

  it("is refused for a hash that this signer never read", async () => {
    const { id } = await goodPlan(s.people.jonas, s.people.marta);
    expect(outcome(await sign(id, "0".repeat(64)))).toBe("not-read");
    const other: Person = { kind: "person", id: "petra", roles: ["lead"] };
    const { hash } = await read(id, other); // another lead's reading is not hers
    expect(outcome(await sign(id, hash))).toBe("not-read");
    expect(outcome(await sign(id, (await read(id)).hash))).toBe("ok");
  });

  it("[INV-12] is refused when the plan has changed since it was read, with what changed", async () => {
    const { id, doc } = await goodPlan(s.people.jonas, s.people.marta);
    const { hash } = await read(id);
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "seconds", 105));
    const refused = await sign(id, hash);
    expect(refused).toMatchObject({ error: { code: "changed-since-read", status: 409 } });
    const details = refused.ok ? undefined : (refused.error.details as { hash: string; changes: unknown[] });
    expect(details?.changes.length).toBeGreaterThan(0);
    expect(listEditions(s.db, id)).toEqual([]);
    const again = await read(id);
    expect(again.hash).toBe(details?.hash);
    expect(again.changedSince).toEqual(details?.changes);
    // Back to what was read first: the words are the same, so the first reading counts again.
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "seconds", 100));
    expect(outcome(await sign(id, hash))).toBe("ok");
  });

  it("[INV-12] is refused when somebody writes, hands back or takes back while the rules run", async () => {
    const { id, doc } = await goodPlan(s.people.jonas, s.people.marta);
    const { hash } = await read(id);
    const written = sign(id, hash);
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "seconds", 105));
    expect(outcome(await written)).toBe("changed-since-read");
    const again = (await read(id)).hash;
    const taken = takeBack(s.app, s.people.jonas, id);
    const later = sign(id, again);
    must(await taken);
    expect(outcome(await later)).toBe("not-handed-in");
    const twice = await Promise.all([1, 2].map(() => handIn(s.app, s.people.jonas, id)));
    expect(twice.map(outcome).sort()).toEqual(["ok", "wrong-state"]);
    expect(listEditions(s.db, id)).toEqual([]);
  });

  it("is refused when the library has changed under the reading: the moves are part of what is signed", async () => {
    const { id } = await goodPlan(s.people.jonas, s.people.marta);
    const { hash } = await read(id);
    putMove(s.db, "kneeling-row", { ...MOVES.row, name: "Row on the knees" }, s.app.now() + 1);
    expect(outcome(await sign(id, hash))).toBe("changed-since-read");
    expect(outcome(await sign(id, (await read(id)).hash))).toBe("ok");
  });

  it("is refused for a plan that is no whole plan file", async () => {
    const { id, doc } = await goodPlan(s.people.jonas, s.people.marta);
    writeStandards(s.db, { "unknown-move-data": { level: "off" } });
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "move", "nobody"));
    const seen = await read(id);
    expect(seen.blockers.map((b) => b.code)).toEqual(["not-a-file"]);
    expect(await sign(id, seen.hash)).toMatchObject({
      error: { code: "not-a-file", details: { pointer: "/items/1/move" } },
    });
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "move", "kneeling-row"));
    expect(outcome(await sign(id, (await read(id)).hash))).toBe("ok");
  });

  it("is not held up by standards that no file can hold: they are not the studio's; only writing the file is refused", async () => {
    const { jonas, marta } = s.people;
    const { id, doc } = await goodPlan(jonas, marta);
    const { hash } = await read(id);
    await s.write(doc, jonas, (w) => w.doc.getMap("carried").set("standards", { x: { limits: { n: Number.NaN } } }));
    expect(outcome(exportPlan(s.app, jonas, id))).toBe("not-a-file");
    expect(outcome(await sign(id, hash))).toBe("ok");
  });

  it("holds a plan to the studio's standards, whatever its file or a writer put into the document", async () => {
    const { id, doc } = await goodPlan(s.people.jonas, s.people.marta);
    await s.write(doc, s.people.jonas, (w) => setItemField(w, "m1", "move", "no-such-move"));
    const before = must(await readForSignOff(s.app, s.people.ines, id)).findings;
    expect(before.length).toBeGreaterThan(0);
    const off = Object.fromEntries(before.map(({ rule }) => [rule, { level: "off" }]));
    await s.write(doc, s.people.jonas, (w) => w.doc.getMap("carried").set("standards", off));
    expect(must(await readForSignOff(s.app, s.people.ines, id)).findings).toEqual(before);
  });

  it("is told what came with a file and is otherwise than the studio's own, move by move, fact by fact", async () => {
    const { jonas, ines, marta } = s.people;
    const { id, doc } = await goodPlan(jonas, marta);
    expect((await read(id)).fromFile).toEqual([]);
    const careful: Move = { ...MOVES.press, cautions: ["wrist-load", "kneeling"], seconds: [30, 90] };
    must(putMoves(s.app, ines, { "chest-press": careful }));
    const file = must(exportPlan(s.app, jonas, id));
    const own = must(importPlan(s.app, jonas, JSON.stringify(file), ROOMS.harbour)).id;
    expect((await read(own)).fromFile).toEqual([]);

    // A file in which the press asks for no care, may be longer, and the firm spring is a softer one.
    const [light, firm] = file.equipment.springs;
    const { cautions: _care, ...careless } = file.moves["chest-press"] ?? MOVES.press;
    const weak = {
      ...file,
      equipment: { ...file.equipment, springs: [light, { ...firm, stiffnessNPerMm: 0.2 }] },
      moves: { "kneeling-row": MOVES.row, "chest-press": { ...careless, seconds: [30, 600] } },
    };
    const softened = must(importPlan(s.app, jonas, JSON.stringify(weak), ROOMS.harbour)).id;
    expect((await read(softened)).fromFile).toEqual([
      {
        kind: "machines",
        name: "Harbour machines",
        differences: [
          {
            label: "spring firm",
            plan: "firm, 2 of them, 0.200 N per mm, preload 20 N",
            studio: "firm, 2 of them, 0.400 N per mm, preload 20 N",
          },
        ],
      },
      {
        kind: "move",
        name: "Kneeling press",
        differences: [
          { label: "time", plan: "30 to 600 s", studio: "30 to 90 s" },
          { label: "asks for care", plan: "nothing", studio: "wrist load, kneeling" },
        ],
      },
    ]);

    // What nobody in this studio knows is said to be unknown; what no item does is not said.
    const strange = { ...weak, moves: { ...weak.moves, "side-reach": { ...MOVES.row, name: "Side reach" } } };
    const [heading, first, ...rest] = file.items;
    const stranger = {
      ...strange,
      equipment: file.equipment,
      items: [heading, { ...first, move: "side-reach" }, ...rest],
    };
    const unknown = must(importPlan(s.app, jonas, JSON.stringify(stranger), ROOMS.harbour)).id;
    expect((await read(unknown, ines)).fromFile.map((part) => [part.kind, part.name])).toEqual([
      ["move", "Kneeling press"],
      ["stranger", "Side reach"],
    ]);
    await s.write(doc, jonas, (w) => deleteItem(w, "m1", 1));
    expect((await read(id)).fromFile).toEqual([]);
  });

  it("says clearly that the server's secret is another one, and signs nothing", async () => {
    const { id } = await goodPlan(s.people.jonas, s.people.marta);
    const { hash } = await read(id);
    expect(s.app.keys.keyId).toMatch(/^[0-9a-f]{16}$/);
    const wrong = createSigningKeys({ db: s.db, secret: "quite another secret", now: s.app.now });
    const app = Object.create(s.app, { keys: { value: wrong } });
    expect(await signPlan(app, s.people.ines, id, { hash })).toMatchObject({
      error: { code: "signing-key", status: 503 },
    });
    expect(listEditions(s.db, id)).toEqual([]);
    expect(outcome(await sign(id, hash))).toBe("ok");
  });

  it("takes only the shape of a hash", () => {
    expect(signSchema.safeParse({ hash: "abc" }).success).toBe(false);
    expect(signSchema.safeParse({ hash: "a".repeat(64), more: 1 }).success).toBe(false);
    expect(signSchema.safeParse({ hash: "a".repeat(64) }).success).toBe(true);
  });
});

describe("states", () => {
  it("let nobody offer for reading twice, return with notes what is not offered for reading, or take back another's hand-in", async () => {
    const { jonas, marta, ines } = s.people;
    const { id } = await goodPlan(jonas, marta);
    expect(outcome(await handIn(s.app, jonas, id))).toBe("wrong-state");
    expect(outcome(await takeBack(s.app, marta, id))).toBe("no-right"); // co-writes it, but neither owns it nor offered it for reading
    must(await takeBack(s.app, jonas, id));
    expect(outcome(await takeBack(s.app, jonas, id))).toBe("wrong-state");
    expect(outcome(await handBack(s.app, ines, id, { note: "why" }))).toBe("wrong-state");
    must(await handIn(s.app, marta, id)); // by a co-author; the owner may take that back too
    must(await takeBack(s.app, jonas, id));
    must(await handIn(s.app, jonas, id));
    must(await handBack(s.app, ines, id, { note: "why" }));
    must(await handIn(s.app, jonas, id));
  });

  it("want a note with a hand-back and allow one with a hand-in", () => {
    expect(requiredNoteSchema.safeParse({ note: "  " }).success).toBe(false);
    expect(requiredNoteSchema.safeParse({ note: "Slower" }).success).toBe(true);
    expect(optionalNoteSchema.safeParse({}).success).toBe(true);
    expect(optionalNoteSchema.safeParse({ note: "x".repeat(4001) }).success).toBe(false);
  });

  it("go back to writing when a signed plan moves to another room, whose machines it was not signed for", async () => {
    const { id, doc } = await goodPlan(s.people.jonas, s.people.marta);
    must(await sign(id, (await read(id)).hash));
    must(changePlan(s.app, s.people.jonas, id, { roomId: ROOMS.harbour })); // where it is already
    expect(s.last(doc, "state")?.state.state).toBe("signed-off");
    must(changePlan(s.app, s.people.jonas, id, { roomId: ROOMS.loft }));
    expect(s.last(doc, "state")?.state).toMatchObject({ state: "in-writing", edition: 1 });
  });

  it("notice at the next join what was written on before the server ended", async () => {
    const { id, doc } = await goodPlan(s.people.jonas, s.people.marta);
    must(await sign(id, (await read(id)).hash));
    const session = { sessionId: "x", userId: "jonas", name: "Jonas" };
    s.host.welcome?.(doc, session);
    await s.app.checks.idle();
    expect(s.last(doc, "state")).toMatchObject({ t: "state", state: { state: "signed-off" } });
    // Stored, and asked before the burst is looked at.
    s.app.documents.transact(doc, "jonas", (d) => setItemField({ doc: d, origin: 1 }, "m1", "locked", true));
    s.host.welcome?.(doc, session);
    await s.app.checks.idle();
    expect(s.last(doc, "state")).toMatchObject({ t: "state", state: { state: "in-writing" } });
  });
});

it("a reason, a note and a main point need words that can be seen", () => {
  for (const empty of ["\u200B", "\u0000", " \u2060\uFEFF ", "\u202E", "\u3164", "\u2800"]) {
    expect(withdrawSchema.safeParse({ reason: empty }).success).toBe(false);
    expect(requiredNoteSchema.safeParse({ note: empty }).success).toBe(false);
    expect(returnSchema.safeParse({ note: "x", mainPoints: [empty] }).success).toBe(false);
  }
});

it("a plan that is offered for reading is not deleted under the lead who reads it", async () => {
  const { id } = await goodPlan(s.people.jonas, s.people.marta);
  const refused = deletePlan(s.app, s.people.jonas, id);
  expect(refused).toMatchObject({ error: { status: 409, code: "wrong-state" } });
  expect(!refused.ok && refused.error.message).toContain("Take it back first, then delete it.");
  must(await takeBack(s.app, s.people.jonas, id));
  expect(outcome(deletePlan(s.app, s.people.jonas, id))).toBe("ok");
});
