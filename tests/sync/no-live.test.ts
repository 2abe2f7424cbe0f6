/** A page that is answered and whose socket never opens: plan, month and the floor's line say so, and stop as soon as one does. */

import { afterEach, describe, expect, test } from "vitest";
import { WebSocket } from "ws";
import { type MonthSession, openMonth } from "#app/_month/month-session.ts";
import { PlanSession } from "#app/_session/session.ts";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { openLine } from "#lib/client/line-link.ts";
import { LiveCheck } from "#lib/client/live-check.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { noLiveWords } from "#lib/protocol/address.ts";
import { eventually } from "#tests/support/eventually.ts";
import { startLineServer } from "#tests/support/line-server.ts";
import { type PlainProxy, plainProxy } from "#tests/support/plain-proxy.ts";
import { addShown } from "#tests/support/shown-slot.ts";
import { SMALL_PLAN, startSyncServer, type TestServer } from "#tests/support/sync-server.ts";
import { type TestEdge, testEdge } from "#tests/support/test-edge.ts";
import { EMPTY_STUDIO } from "../support/month-studio.ts";

const SAYS = noLiveWords("https://plans.quay.example", "https://plans.quay.example");
const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function barred(port: number): Promise<PlainProxy> {
  const proxy = await plainProxy({ to: () => port });
  ends.push(() => proxy.stop());
  return proxy;
}

async function server(): Promise<TestServer> {
  const made = await startSyncServer();
  ends.push(() => made.stop());
  made.addPlan("p");
  return made;
}

const SLOT: Slot = {
  ...{ id: "s1", date: "2026-11-03", time: "18:00", minutes: 45, theme: "Pull", note: "" },
  ...{ coachId: null, roomId: null, planId: null },
};
type Ask = () => Promise<string | null>;

function openPlan(made: TestServer, edge: TestEdge): PlanSession {
  return new PlanSession(
    {
      ...{ planId: "p", generation: made.rooms.generation({ kind: "plan", key: "p" }) ?? "", title: "" },
      outline: [],
      formats: STANDARD_FORMATS,
      me: { id: "ines", name: "Ines", roles: ["coach"] },
      studio: {
        ...{ mark: "m", roomName: "Loft", moves: SMALL_PLAN.moves, equipment: SMALL_PLAN.equipment },
      } as unknown as PlanSession["studio"],
      rights: { writes: true, comments: true },
      may: { handIn: true, handBack: false, sign: false, share: false, delete: false, propose: false },
      state: { state: "in-writing", edition: 0, editionHash: null, handedInBy: null, note: null },
    },
    edge,
  );
}

function openTheMonth(made: TestServer, edge: TestEdge): MonthSession {
  const name = { kind: "month", key: "2026-11" } as const;
  // An empty month is not stored, and would be another history when it is opened.
  made.rooms.transact(name, "maker", (doc) => addShown({ doc, origin: "maker" }, SLOT));
  const month = {
    ...{
      month: name.key,
      generation: made.rooms.generation(name) ?? "",
      me: { id: "ines", name: "Ines" },
      writes: true,
    },
    ...{
      studio: EMPTY_STUDIO,
      plans: [],
      used: { plans: [], hidden: [] },
      signed: null,
      accepted: [],
      formats: STANDARD_FORMATS,
    },
  };
  return openMonth(month, edge, () => "2026-11-01");
}

function openDoc(kind: "plan" | "month", made: TestServer, proxy: PlainProxy, askAddress: Ask) {
  const edge = testEdge({ origin: proxy.url.replace("http", "ws"), cookie: made.host.signIn("ines"), askAddress });
  const session = kind === "plan" ? openPlan(made, edge) : openTheMonth(made, edge);
  ends.push(() => session.end());
  return session;
}

/** In Node a refused handshake is an error event, which ends the process where nobody listens. */
class QuietSocket extends WebSocket {
  constructor(address: string | URL) {
    super(address);
    this.on("error", () => undefined);
  }
}

describe.each(["plan", "month"] as const)("a %s", (kind) => {
  test("says that the address carries no live connections, and what to do; opens once it does", async () => {
    const made = await server();
    const proxy = await barred(Number(new URL(made.url).port));
    const session = openDoc(kind, made, proxy, async () => SAYS);
    expect(session.getSnapshot()).toMatchObject({ noLive: null, saveState: "opening" });
    const told = await eventually("it says so", () => session.getSnapshot().noLive ?? undefined, 15_000);
    expect(told).toContain("This address does not carry live connections");
    expect(told).toContain("npm run -s doctor");
    expect(told).toContain('"Behind a proxy"');
    expect(saveWords(session.getSnapshot())).toBe("no live connection");
    proxy.carry(true);
    await eventually("it opens", () => session.getSnapshot().noLive === null && session.getSnapshot().ready, 15_000);
    expect(session.saveState).not.toBe("barred");
  });

  test("when the server does not answer at all, the page keeps opening instead", async () => {
    const made = await server();
    const proxy = await barred(Number(new URL(made.url).port));
    let asked = 0;
    const session = openDoc(kind, made, proxy, async () => {
      asked++;
      if (asked === 1) throw new Error("no network");
      return null;
    });
    await eventually("it has asked twice", () => asked >= 2, 15_000);
    expect(session.getSnapshot()).toMatchObject({ noLive: null, saveState: "opening" });
  });
});

test("the floor's line says so too, until it is connected", async () => {
  const made = await startLineServer();
  ends.push(() => made.stop());
  const proxy = await barred(Number(new URL(made.url).port));
  const link = openLine({
    ...{ origin: proxy.url.replace("http", "ws"), token: made.pair("Wall").token, view: "wall" },
    ...{ onState: () => undefined, askAddress: async () => SAYS },
    WebSocket: QuietSocket as unknown as typeof globalThis.WebSocket,
  });
  ends.push(() => link.close());
  await eventually("it says so", () => link.state.noLive === SAYS, 15_000);
  proxy.carry(true);
  await eventually("it is on the line", () => link.state.contact === "on" && link.state.noLive === null, 15_000);
});

test("once an address has carried a socket, a lost one is an ordinary loss", async () => {
  let asked = 0;
  const ask = async () => {
    asked++;
    return SAYS;
  };
  const check = new LiveCheck({ ask, onChange: () => undefined });
  check.opened();
  for (let i = 0; i < 10; i++) check.failed();
  expect([asked, check.sentence]).toEqual([0, null]);
});

test("a page at an address other than the configured one names both", () => {
  const words = noLiveWords("https://plans.quay.example", "http://192.0.2.7:4310");
  expect(words).toContain("address is https://plans.quay.example, but you opened it as http://192.0.2.7:4310");
  expect(words).toContain("SPRINGLINE_URL");
});
