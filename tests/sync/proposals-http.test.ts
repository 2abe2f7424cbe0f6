/** Proposals over HTTP (INV-29): who may do what, what is refused, one winner of two, and a page that dies before it writes. */
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import * as proposalsRoute from "#app/api/plans/[id]/proposals/route.ts";
import * as declineRoute from "#app/api/proposals/[id]/decline/route.ts";
import * as takeRoute from "#app/api/proposals/[id]/take/route.ts";
import * as withdrawRoute from "#app/api/proposals/[id]/withdraw/route.ts";
import { sharePlanRow } from "#db/repos/plan-repo.ts";
import { readProposal } from "#db/repos/proposal-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { PROPOSAL_KEY, planParts } from "#lib/doc/layout.ts";
import { takenProposals } from "#lib/doc/proposal-marks.ts";
import { readItemById } from "#lib/doc/read.ts";
import { takeProposal } from "#lib/doc/take-proposal.ts";
import { deleteItem, setItemField } from "#lib/doc/write.ts";
import type { ProposalPart } from "#lib/proposal/parts.ts";
import type { RecordRow } from "#lib/record/chain.ts";
import { recordSentence } from "#lib/record/kinds.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { writeGoodClass } from "../support/good-class.ts";
import { often } from "../support/long.ts";
import { must, openStudio, type PlanStudio, ROOMS, type Who } from "../support/plan-studio.ts";
import { signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
let planId = "";
let cookies: ReadonlyMap<Who, string>;
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["jonas", "ines", "noor", "marta", "sam"]);
  const { jonas } = s.people;
  planId = must(createPlan(s.app, jonas, { title: "Pull and press", lengthSeconds: 600, roomId: ROOMS.harbour })).id;
  await writeGoodClass(s, planDoc(planId), [jonas, jonas]);
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

type Route = (request: Request, context?: { params: Promise<Record<string, string>> }) => Promise<Response>;

function call(route: Route, who: Who | null, id: string, body?: unknown, method = "POST"): Promise<Response> {
  const headers = new Headers({ origin: s.app.env.origin, "content-type": "application/json" });
  const cookie = who && cookies.get(who);
  if (cookie) headers.set("cookie", cookie);
  const sent = body === undefined ? {} : { body: JSON.stringify(body) };
  const request = new Request(`${s.app.env.origin}/api`, { method, headers, ...sent });
  return route(request, { params: Promise.resolve({ id }) });
}
const codeOf = async (response: Promise<Response>): Promise<string> => {
  const answer = await response;
  return answer.ok ? "ok" : `${answer.status} ${(await answer.json()).error.code}`;
};
const messageOf = async (response: Promise<Response>): Promise<string> => (await (await response).json()).error.message;

const PARTS: readonly ProposalPart[] = [
  { id: "seconds", item: "m1", kind: "field", field: "seconds", was: 100, becomes: 90 },
  { id: "spring.firm", item: "m1", kind: "spring", spring: "firm", was: 1, becomes: 2 },
];
const PROPOSAL = { itemId: "m1", note: "Shorter, and heavier.", parts: PARTS };

async function proposed(body: unknown = PROPOSAL): Promise<string> {
  const made = await call(proposalsRoute.POST, "ines", planId, body);
  expect(made.status).toBe(201);
  return (await made.json()).id;
}
/** What the claimer's page does with the answer. */
function write(id: string, parts: readonly string[], who: Who = "jonas"): readonly string[] {
  let taken: readonly string[] = [];
  s.rooms.transact(planDoc(planId), s.people[who].id, (doc) => {
    const chosen = PARTS.filter((part) => parts.includes(part.id));
    taken = takeProposal({ doc, origin: who }, { id, itemId: "m1", parts: chosen });
  });
  return taken;
}
const take = (who: Who, id: string, parts: readonly string[] = ["seconds", "spring.firm"]) =>
  call(takeRoute.POST, who, id, { parts });
const itemNow = () => s.app.documents.withDoc(planDoc(planId), (doc) => readItemById(doc, "m1"));

describe("a proposal", () => {
  it("is a lead's to make, a writer's to answer, and nobody's who may not see the plan", async () => {
    for (const [who, code] of [
      ["jonas", "403 no-right"],
      ["noor", "404 not-found"],
      ["marta", "404 not-found"],
      ["sam", "404 not-found"],
      [null, "401 not-signed-in"],
    ] as const)
      expect(await codeOf(call(proposalsRoute.POST, who, planId, PROPOSAL)), `${who}`).toBe(code);
    const id = await proposed();
    for (const route of [takeRoute, declineRoute, withdrawRoute]) {
      const body = route === takeRoute ? { parts: ["seconds"] } : route === declineRoute ? { word: "No" } : undefined;
      expect(await codeOf(call(route.POST, "noor", id, body))).toBe("404 not-found");
      expect(await codeOf(call(route.POST, null, id, body))).toBe("401 not-signed-in");
    }
    expect(await codeOf(take("ines", id))).toBe("403 no-right");
    expect(await codeOf(call(declineRoute.POST, "ines", id, { word: "No" }))).toBe("403 no-right");
    expect(await codeOf(call(withdrawRoute.POST, "jonas", id))).toBe("403 not-the-proposer");
    expect(await codeOf(call(proposalsRoute.GET, "noor", planId, undefined, "GET"))).toBe("404 not-found");
    const listed = await (await call(proposalsRoute.GET, "jonas", planId, undefined, "GET")).json();
    expect(listed.proposals).toMatchObject([{ id, itemId: "m1", byName: "Ines", state: "open", note: PROPOSAL.note }]);
    expect(s.last(planDoc(planId), "proposals")?.proposals).toEqual(listed.proposals);
  });

  it("is checked against the stored plan, and bounded", async () => {
    const send = (body: unknown) => codeOf(call(proposalsRoute.POST, "ines", planId, body));
    const [seconds] = PARTS;
    expect(await send({ ...PROPOSAL, parts: [{ ...seconds, was: 70 }] })).toBe("409 ground-changed");
    expect(
      await messageOf(call(proposalsRoute.POST, "ines", planId, { ...PROPOSAL, parts: [{ ...seconds, was: 70 }] })),
    ).toContain("The time was 70 s when this was proposed; it is 100 s now.");
    expect(await send({ ...PROPOSAL, itemId: "m2" })).toBe("422 several-items");
    expect(await send({ ...PROPOSAL, parts: [] })).toBe("422 invalid");
    expect(await send({ ...PROPOSAL, parts: [seconds, seconds] })).toBe("422 invalid");
    expect(await send({ ...PROPOSAL, parts: [{ ...seconds, becomes: -4 }] })).toBe("422 invalid");
    expect(await send({ ...PROPOSAL, parts: [{ ...seconds, id: "a b" }] })).toBe("422 invalid");
    const long = (n: number) => ({ id: `added.${n}`, item: "m1", kind: "line-added", after: null, same: 0 });
    const lines = Array.from({ length: 70 }, (_, n) => ({
      ...long(n),
      becomes: { kind: "form", text: `${n} ${"word ".repeat(300)}` },
    }));
    expect(await send({ ...PROPOSAL, parts: lines })).toBe("422 too-large");
    await s.write(planDoc(planId), s.people.jonas, (w) => deleteItem(w, "m1", 1));
    expect(await send(PROPOSAL)).toBe("409 ground-changed");
    for (let n = 0; n < 100; n++)
      await proposed({ itemId: "m2", note: null, parts: [{ ...seconds, item: "m2", was: 120, becomes: n + 1 }] });
    expect(await send({ itemId: "m2", note: null, parts: [{ ...seconds, item: "m2", was: 120, becomes: 118 }] })).toBe(
      "409 too-many-proposals",
    );
  });

  it("tells the plan's people and the proposer, and each step is in the record", async () => {
    const about = (note: string) => proposed({ ...PROPOSAL, note });
    const [first, second, third] = [await about("Shorter"), await about("Heavier"), await about("Both")];
    expect(await codeOf(take("jonas", first, ["seconds"]))).toBe("ok");
    expect(await codeOf(call(declineRoute.POST, "jonas", second, { word: " " }))).toBe("422 invalid");
    expect(await codeOf(call(declineRoute.POST, "jonas", second, { word: "Too heavy for a first class." }))).toBe("ok");
    expect(await codeOf(call(withdrawRoute.POST, "ines", third))).toBe("ok");
    const rows = s.db.raw.prepare("SELECT user_id AS who, kind, data_json AS data FROM notice ORDER BY id").all();
    const { ines, jonas } = s.people;
    expect(rows.map((row) => [(row as { who: string }).who, (row as { kind: string }).kind])).toEqual([
      [jonas.id, "proposal"],
      [jonas.id, "proposal"],
      [jonas.id, "proposal"],
      [ines.id, "answer"],
      [ines.id, "answer"],
    ]);
    const record = listRecord(s.db, 0, 100).filter(({ kind }) => kind.startsWith("proposal-"));
    expect(record.map(({ kind, actorId }) => [kind, actorId])).toEqual([
      ...Array(3).fill(["proposal-made", ines.id]),
      ["proposal-taken", jonas.id],
      ["proposal-declined", jonas.id],
      ["proposal-withdrawn", ines.id],
    ]);
    expect(JSON.parse(record[3]?.bodyJson ?? "")).toEqual({
      ...{ proposal: first, item: "m1", parts: ["seconds"], of: PARTS.length, named: ["The time"] },
    });
    const names = {
      person: () => "",
      plan: () => "Arms",
      move: () => "",
      rule: () => "",
      room: () => "",
      device: () => "",
    };
    expect(recordSentence(record[3] as RecordRow, names)).toBe(
      `took 1 of ${PARTS.length} parts of a proposed change in “Arms”: The time.`,
    );
    expect(JSON.parse((rows[3] as { data: string }).data)).toMatchObject({
      part: { count: 1, of: PARTS.length, named: ["The time"] },
    });
    expect(JSON.parse(record[4]?.bodyJson ?? "")).toMatchObject({ word: "Too heavy for a first class." });
    expect(s.last(planDoc(planId), "proposals")?.proposals.map(({ id }) => id)).toEqual([first]);
    expect(await messageOf(take("jonas", second))).toContain("Jonas has declined this proposal");
    expect(await messageOf(take("jonas", third))).toContain("Ines has withdrawn this proposal");
    expect(await codeOf(take("jonas", first, ["nothing"]))).toBe("422 no-such-part");
  });

  it("[INV-29] of two who take it in the same second one wins, the other is told who, and nothing is written twice", async () => {
    sharePlanRow(s.db, planId, s.people.noor.id);
    for (let run = 0; run < often(10, 200); run++) {
      const was = run % 2 === 0 ? 100 : 90;
      const parts: readonly ProposalPart[] = [{ ...PARTS[0], was, becomes: 190 - was } as ProposalPart];
      const id = await proposed({ itemId: "m1", note: null, parts });
      const order: readonly Who[] = run % 3 === 0 ? ["jonas", "noor"] : ["noor", "jonas"];
      const answers = await Promise.all(
        order.map(async (who) => {
          const response = await take(who, id, ["seconds"]);
          const told = await response.json();
          if (response.ok)
            s.rooms.transact(planDoc(planId), s.people[who].id, (doc) =>
              takeProposal({ doc, origin: who }, { id, itemId: "m1", parts }),
            );
          return { who, ok: response.ok, told };
        }),
      );
      expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
      const winner = answers.find(({ ok }) => ok)?.who ?? "";
      const loser = answers.find(({ ok }) => !ok);
      expect(["already-taken", "being-taken"]).toContain(loser?.told.error.code);
      expect(loser?.told.error.message.toLowerCase()).toContain(winner);
      expect(itemNow()).toMatchObject({ seconds: 190 - was });
      expect(readProposal(s.db, id)?.endedBy).toBe(s.people[winner as Who].id);
    }
  });

  it("is not lost when the page dies between the claim and its writing", async () => {
    sharePlanRow(s.db, planId, s.people.noor.id);
    const id = await proposed();
    expect(await codeOf(take("jonas", id))).toBe("ok");
    // Nothing was written. Others wait, and so does the claimer for anything but the same claim.
    expect(await codeOf(take("noor", id))).toBe("409 being-taken");
    expect(await codeOf(call(declineRoute.POST, "noor", id, { word: "No" }))).toBe("409 being-taken");
    expect(await codeOf(take("jonas", id))).toBe("ok");
    s.advance(59_000);
    expect(await codeOf(take("noor", id))).toBe("409 being-taken");
    s.advance(2_000);
    expect(await codeOf(take("noor", id, ["seconds"]))).toBe("ok");
    expect(write(id, ["seconds"], "noor")).toEqual(["seconds"]);
    expect(await codeOf(take("jonas", id))).toBe("409 already-taken");
    expect(await messageOf(take("jonas", id))).toContain("Noor has taken this proposal");
    s.advance(600_000);
    expect(await codeOf(take("jonas", id))).toBe("409 already-taken");
    expect(itemNow()).toMatchObject({ seconds: 90, springs: { firm: 1 } });
    // The dead page's writer comes back and writes what it had claimed: nothing is done twice.
    expect(write(id, ["seconds", "spring.firm"])).toEqual(["spring.firm"]);
    expect(s.app.documents.withDoc(planDoc(planId), takenProposals).get(id)?.parts).toEqual(["seconds", "spring.firm"]);
  });

  it("[INV-29] is claimed once by one person, however often they press and on how many pages", async () => {
    const id = await proposed();
    const kept = () => [
      listRecord(s.db, 0, 100).filter(({ kind }) => kind.startsWith("proposal-") && kind !== "proposal-made").length,
      s.db.raw.prepare("SELECT count(*) AS n FROM notice WHERE kind = 'answer'").pluck().get(),
    ];
    for (let press = 0; press < 10; press++) expect(await codeOf(take("jonas", id))).toBe("ok");
    expect(kept()).toEqual([1, 1]);
    // Another page of theirs: it neither takes other parts nor declines what is being taken.
    expect(await codeOf(take("jonas", id, ["seconds"]))).toBe("409 being-taken");
    expect(await messageOf(call(declineRoute.POST, "jonas", id, { word: "No" }))).toContain("You are taking this");
    expect(kept()).toEqual([1, 1]);
    write(id, ["seconds", "spring.firm"]);
    expect(await codeOf(take("jonas", id))).toBe("409 already-taken");
    // Undone: theirs to answer again, at once.
    s.rooms.transact(planDoc(planId), s.people.jonas.id, (doc) => {
      planParts(doc)
        .items.get("m1")
        ?.delete(PROPOSAL_KEY + id);
    });
    expect(await codeOf(take("jonas", id, ["seconds"]))).toBe("ok");
    expect(kept()).toEqual([2, 2]);
  });

  it("is stored once when it is sent again at once, and again when it was answered meanwhile", async () => {
    const ids = new Set<string>();
    for (let press = 0; press < 20; press++) ids.add(await proposed());
    expect(ids.size).toBe(1);
    const [first = ""] = [...ids];
    expect(s.db.raw.prepare("SELECT count(*) FROM notice").pluck().get()).toBe(1);
    expect(await codeOf(call(withdrawRoute.POST, "ines", first))).toBe("ok");
    expect(await proposed()).not.toBe(first);
  });

  it("may be made for a signed plan; its mark is no part of the plan's file", async () => {
    s.db.raw.prepare("UPDATE plan SET state = 'signed-off' WHERE id = ?").run(planId);
    const id = await proposed();
    expect(await codeOf(take("jonas", id))).toBe("ok");
    write(id, ["seconds"]);
    const item = itemNow();
    expect(item).toMatchObject({ seconds: 90 });
    expect(Object.keys(item ?? {}).filter((key) => key.startsWith("proposal"))).toEqual([]);
    await s.write(planDoc(planId), s.people.jonas, (w) => setItemField(w, "m2", "seconds", 110));
    expect(s.app.documents.withDoc(planDoc(planId), takenProposals).has(id)).toBe(true);
  });
});
