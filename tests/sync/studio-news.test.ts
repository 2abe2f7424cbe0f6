/** A change of library, machines or room reaches open plan pages through a real socket, and costs nothing typed. */

import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, beforeEach, expect, test } from "vitest";
import type * as Y from "yjs";
import { deriver } from "#app/_session/derive.ts";
import { planUndo } from "#app/_session/plan-undo.ts";
import { StudioLink } from "#app/_session/studio-link.ts";
import * as studioRoute from "#app/api/plans/[id]/studio/route.ts";
import { Marker } from "#lib/analysis/marks.ts";
import { planParts } from "#lib/doc/layout.ts";
import { act, setHead } from "#lib/doc/write.ts";
import { RULES } from "#lib/rules/registry.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { putMoves } from "#server/library/library.ts";
import { changePlan } from "#server/plans/change-plan.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { readPlanStudio } from "#server/plans/read-plan-studio.ts";
import { changeRoom } from "#server/rooms/manage-rooms.ts";
import { type PlanStudio as Held, planStudio } from "#server/studio-data/plan-studio.ts";
import { attachSync } from "#server/sync/attach.ts";
import { eventually } from "../support/eventually.ts";
import { writeGoodClass } from "../support/good-class.ts";
import { EQUIPMENT, MOVES, must, openStudio, outcome, type PlanStudio, ROOMS } from "../support/plan-studio.ts";
import { RawClient } from "../support/raw-client.ts";
import { signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
let http: Server;
let url: string;
let cookies: ReadonlyMap<string, string>;
const clients: RawClient[] = [];
beforeEach(async () => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
  cookies = await signInAll(s, ["jonas", "ines"]);
  http = createServer();
  attachSync({ rooms: s.rooms, server: http });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  url = `ws://127.0.0.1:${(http.address() as AddressInfo).port}`;
});
afterEach(async () => {
  for (const client of clients.splice(0)) client.end();
  http.closeAllConnections();
  await new Promise((resolve) => http.close(resolve));
  setSpringline(undefined);
  await s.stop();
});

async function planOfJonas(): Promise<string> {
  const made = createPlan(s.app, s.people.jonas, { title: "Pull", lengthSeconds: 600, roomId: ROOMS.harbour });
  const { id } = must(made);
  await writeGoodClass(s, planDoc(id), [s.people.jonas, s.people.jonas]);
  return id;
}

async function open(who: "jonas" | "ines", id: string): Promise<RawClient> {
  const client = new RawClient(url, planDoc(id), { cookies: cookies.get(who) });
  clients.push(client);
  return client.synced();
}

/** The parts of a plan page that follow the studio, with its route in place of the network. */
function pageOf(client: RawClient, id: string, who: "jonas" | "ines") {
  const fetched: string[] = [];
  const marker = new Marker();
  const page = {
    ...{ studio: planStudio(s.db, ROOMS.harbour), findings: [] as readonly string[], fetched },
    /** As the server would name them. */
    names: () => {
      const derived = derive(client.doc, page.studio);
      return { plan: marker.plan(derived.plan), findings: marker.findings(derived.findings) };
    },
  };
  const derive = deriver(() => RULES);
  const read = (doc: Y.Doc, studio: Held) => {
    page.studio = studio;
    page.findings = derive(doc, studio).findings.map((f) => f.rule);
  };
  const link = new StudioLink(page.studio.mark, {
    async ask() {
      const headers = { cookie: cookies.get(who) ?? "" };
      const answer = await studioRoute.GET(new Request(`${s.app.env.origin}/api`, { headers }), {
        params: Promise.resolve({ id }),
      });
      fetched.push(String(answer.status));
      return answer.ok ? answer.json() : "refused";
    },
    take: (studio) => read(client.doc, studio),
    later: () => () => undefined,
  });
  read(client.doc, page.studio);
  return {
    page,
    /** Hears the newest of what the socket has brought so far. */
    catchUp: () => link.hear(client.newsOf("studio").at(-1)?.mark ?? ""),
  };
}

test("an edited move changes the findings of an open page; its words and its undo stay", async () => {
  const id = await planOfJonas();
  const client = await open("jonas", id);
  const { page, catchUp } = pageOf(client, id, "jonas");
  catchUp();
  expect(page.fetched).toEqual([]);
  expect(page.findings).not.toContain("too-short-or-long");

  const writer = { doc: client.doc, origin: { of: "this page" } };
  const undo = planUndo(writer, () => undefined);
  undo.step(() => act(writer, () => setHead(writer, "lengthSeconds", 660)));
  client.edit((doc) => planParts(doc).notes.insert(0, "half a sen"));

  must(putMoves(s.app, s.people.ines, { "kneeling-row": { ...MOVES.row, seconds: [10, 40] } }));
  await eventually("the page hears of it", () => client.newsOf("studio").at(-1)?.mark !== page.studio.mark);
  catchUp();
  await eventually("the page has it", () => page.findings.includes("too-short-or-long"));
  expect(page.fetched).toEqual(["200"]);
  await s.app.checks.idle();
  expect((await s.findings(id)).map((f) => f.rule)).toContain("too-short-or-long");
  expect(planParts(client.doc).notes.toString()).toBe("half a sen");
  expect(undo.canUndo).toBe(true);
  undo.undo();
  expect(planParts(client.doc).head.get("lengthSeconds")).toBe(600);
  undo.destroy();
});

test("changed machines and another room are heard of, by readers too; nothing changed is not fetched", async () => {
  const id = await planOfJonas();
  const [jonas, ines] = [await open("jonas", id), await open("ines", id)];
  const fewer = { ...EQUIPMENT, springs: EQUIPMENT.springs.map((spring) => ({ ...spring, count: 0 })) };
  must(changeRoom(s.app, s.people.petra, ROOMS.harbour, { equipment: fewer, seen: EQUIPMENT }));
  await s.app.checks.idle();
  const { mark } = planStudio(s.db, ROOMS.harbour);
  const kept = s.app.checks.kept(must(openPlan(s.app, s.people.jonas, id, "plan.read")).row, mark);
  expect((await s.findings(id)).map((f) => f.rule)).toContain("springs-not-there");
  for (const client of [jonas, ines])
    await eventually("the check's names", () =>
      client.newsOf("checked").some((n) => n.findings === kept?.findingsMark),
    );
  const { page, catchUp } = pageOf(ines, id, "ines");
  catchUp();
  expect(page.fetched).toEqual([]);
  // The page has worked out by itself what the server did, and both name it alike.
  expect(page.names()).toEqual({ plan: kept?.planMark, findings: kept?.findingsMark });

  must(changePlan(s.app, s.people.jonas, id, { roomId: ROOMS.loft }));
  await eventually("another room", () => ines.newsOf("studio").at(-1)?.mark !== page.studio.mark);
  catchUp();
  await eventually("the loft", () => page.studio.roomName === "Loft");
  expect(page.findings).not.toContain("springs-not-there");
});

test("who may not read the plan may not have its studio; a plan nobody has open is told nothing", async () => {
  const id = await planOfJonas();
  expect(outcome(readPlanStudio(s.app, s.people.noor, id))).toBe("not-found");
  expect(outcome(readPlanStudio(s.app, s.people.sam, id))).toBe("not-found");
  expect(outcome(readPlanStudio(s.app, null, id))).toBe("not-signed-in");
  expect(outcome(readPlanStudio(s.app, s.people.ines, id))).toBe("ok");
  const other = must(
    createPlan(s.app, s.people.jonas, { title: "Unopened", lengthSeconds: 600, roomId: ROOMS.harbour }),
  );
  s.announced.length = 0;
  must(putMoves(s.app, s.people.ines, { "kneeling-row": { ...MOVES.row, name: "Row" } }));
  expect(s.announced.map((a) => a.name)).not.toContain(`plan/${other.id}`);
});
