/** One kernel under every kind of shared document, against the real server: plan, month, and a kind made up here. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type * as Y from "yjs";
import { type MonthSession, openMonth } from "#app/_month/month-session.ts";
import { PlanSession } from "#app/_plan/session.ts";
import { copyName, parseCopyName } from "#lib/client/doc-session/copy-name.ts";
import type { DocDescription, HeardOfAll, SessionUndo } from "#lib/client/doc-session/description.ts";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { DocSession } from "#lib/client/doc-session/session.ts";
import { readItemById } from "#lib/doc/read.ts";
import { setHead, setItemField, setSpring } from "#lib/doc/write.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { monthParts, type Slot } from "#lib/programme/layout.ts";
import { readSlotById } from "#lib/programme/read.ts";
import { addSlot, setSlotField } from "#lib/programme/write.ts";
import { type DeadLine, deadLine } from "#tests/support/dead-line.ts";
import { eventually } from "#tests/support/eventually.ts";
import { SMALL_PLAN, startSyncServer, type TestServer } from "#tests/support/sync-server.ts";
import { type TestEdge, testEdge } from "#tests/support/test-edge.ts";

const MONTH = "2026-11";
const SLOT: Slot = {
  ...{ id: "s1", date: "2026-11-03", time: "18:00", minutes: 45, theme: "Pull", note: "" },
  ...{ coachId: null, roomId: null, planId: null },
};

let server: TestServer;
let line: DeadLine;
const ends: (() => void)[] = [];
beforeEach(async () => {
  server = await startSyncServer();
  line = await deadLine(server.url);
  server.addPlan("p");
});
afterEach(async () => {
  for (const end of ends.splice(0)) end();
  await line.stop();
  await server.stop();
});

type AnySession = Pick<PlanSession, "saveState" | "act" | "say" | "reconnect"> & {
  getSnapshot(): { readonly said: string; readonly overtaken: readonly { readonly sentence: string }[] };
  end(): void;
};
interface Page<S> {
  readonly session: S;
  readonly edge: TestEdge;
}

interface Options {
  readonly kept?: Map<string, Uint8Array>;
  readonly slowCopies?: boolean;
  /** Past the line that can die. */
  readonly straight?: boolean;
}

function edgeOf(user: string, { straight, ...options }: Options): TestEdge {
  return testEdge({ origin: straight ? server.url : line.url, cookie: server.host.signIn(user), ...options });
}

function page<S extends AnySession>(edge: TestEdge, session: S): Page<S> {
  ends.push(() => session.end());
  return { edge, session };
}

const generation = (kind: "plan" | "month", key: string) => server.rooms.generation({ kind, key }) ?? "";
const person = (user: string) => ({ id: user, name: `Name of ${user}` });

function openPlan(user: string, options: Options = {}): Page<PlanSession> {
  const edge = edgeOf(user, options);
  const session = new PlanSession(
    {
      ...{ planId: "p", generation: generation("plan", "p"), title: "", me: { ...person(user), roles: ["coach"] } },
      studio: {
        ...{ mark: "m", roomName: "Loft", moves: SMALL_PLAN.moves, equipment: SMALL_PLAN.equipment },
      } as unknown as PlanSession["studio"],
      rights: { writes: true, comments: true },
      may: { handIn: true, handBack: false, sign: false, share: false, delete: false },
      state: { state: "in-writing", edition: 0, editionHash: null, handedInBy: null, note: null },
    },
    edge,
  );
  return page(edge, session);
}

async function openTheMonth(user: string, options: Options = {}): Promise<Page<MonthSession>> {
  server.rooms.withDoc({ kind: "month", key: MONTH }, () => undefined);
  const edge = edgeOf(user, options);
  const session = openMonth(
    {
      ...{ month: MONTH, generation: generation("month", MONTH), me: person(user), writes: true },
      ...{ people: [], rooms: [], plans: [], used: { plans: [], hidden: [] } },
    },
    edge,
    () => "2026-11-01",
  );
  return page(edge, session);
}

const reaches = ({ session }: Page<AnySession>, state: string, ms?: number) =>
  eventually(`the page is ${state} (it is ${session.saveState})`, () => session.saveState === state, ms);

const setRow = ({ session }: Page<PlanSession>, seconds: number) =>
  session.act((w) => setItemField(w, "a", "seconds", seconds));
const secondsOf = (doc: Y.Doc) => (readItemById(doc, "a") as MoveItem).seconds;

async function makeMonth(): Promise<void> {
  const { RawClient } = await import("#tests/support/raw-client.ts");
  const first = await new RawClient(
    server.url,
    { kind: "month", key: MONTH },
    { cookie: server.host.signIn("maker"), query: "d=1" },
  ).synced();
  first.edit((doc) => addSlot({ doc, origin: "maker" }, SLOT));
  await first.saved();
  first.end();
}

describe.each(["plan", "month"] as const)("a %s says where its words are", (kind) => {
  const open = async (user: string, options: Options = {}): Promise<Page<PlanSession | MonthSession>> =>
    kind === "plan" ? openPlan(user, options) : openTheMonth(user, options);
  const edit = ({ session }: Page<PlanSession | MonthSession>) =>
    session.act((w) => (kind === "plan" ? setHead(w, "lengthSeconds", 900) : setSlotField(w, "s1", "minutes", 50)));
  beforeEach(async () => {
    if (kind === "month") await makeMonth();
  });

  test("opening, saved, sending, saved; a cut that the device tells of is said within a second", async () => {
    const one = await open("ines");
    expect(one.session.saveState).toBe("opening");
    await reaches(one, "saved");
    edit(one);
    expect(one.session.getSnapshot().saveState).toBe("sending");
    await reaches(one, "saved");
    line.die();
    one.edge.tellNetwork();
    await reaches(one, "offline", 1000);
    await eventually("it says so", () => saveWords(one.session.getSnapshot()) === "offline, kept on this device", 1000);
    line.live();
    one.edge.tellNetwork();
    await reaches(one, "saved");
  });

  test("a line that dies without a word: an edit on it is never called saved, and the page says offline", async () => {
    const one = await open("ines");
    await reaches(one, "saved");
    line.die();
    const from = performance.now();
    edit(one);
    await eventually(
      "the page says offline",
      () => {
        expect(one.session.saveState).not.toBe("saved");
        return one.session.saveState === "offline";
      },
      8000,
    );
    expect(performance.now() - from).toBeLessThan(6000);
    line.live();
    await reaches(one, "saved", 15_000);
    const stored = server.rooms.withDoc({ kind, key: kind === "plan" ? "p" : MONTH }, (doc) =>
      kind === "plan" ? doc.getMap("head").get("lengthSeconds") : readSlotById(doc, "s1")?.minutes,
    );
    expect(stored).toBe(kind === "plan" ? 900 : 50);
  }, 30_000);

  test("written offline, kept on the device, sent by the next page; never called saved before the copy was read", async () => {
    const kept = new Map<string, Uint8Array>();
    const one = await open("ines", { kept });
    await reaches(one, "saved");
    line.die();
    one.edge.tellNetwork();
    edit(one);
    one.session.end();
    const next = await open("ines", { kept, straight: true, slowCopies: true });
    await eventually("the document is there", () => next.session.getSnapshot().ready);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(next.session.saveState).toBe("sending");
    next.edge.readCopies();
    await reaches(next, "saved");
    const other = await open("marta", { straight: true });
    await reaches(other, "saved");
    const { doc } = other.session;
    expect(kind === "plan" ? doc.getMap("head").get("lengthSeconds") : readSlotById(doc, "s1")?.minutes).toBe(
      kind === "plan" ? 900 : 50,
    );
  });
});

/** Of two that know nothing of each other the page with the greater id wins in yjs 13.6: one that wins over `mine`. */
function openWinner(user: string, mine: Page<PlanSession>): Page<PlanSession> {
  for (;;) {
    const other = openPlan(user, { straight: true });
    if (other.session.doc.clientID > mine.session.doc.clientID) return other;
    other.session.end();
  }
}

test("what others set of mine while I was offline is said once: who, and both values; several in one summary", async () => {
  const mine = openPlan("ines");
  const jonas = openWinner("jonas", mine);
  await Promise.all([reaches(mine, "saved"), reaches(jonas, "saved")]);
  await eventually("ines sees jonas", () => mine.session.getSnapshot().places.length === 1);
  const meet = async (ownActs: () => void, theirActs: () => void) => {
    line.die();
    mine.edge.tellNetwork();
    await reaches(mine, "offline");
    ownActs();
    theirActs();
    await reaches(jonas, "saved");
    line.live();
    mine.edge.tellNetwork();
    await reaches(mine, "saved");
    await eventually("both read the same", () => secondsOf(mine.session.doc) === secondsOf(jonas.session.doc));
    return mine.session.getSnapshot();
  };
  const sentence = "Name of jonas set Kneeling row to 45 s; you had 55 s.";
  const first = await meet(
    () => setRow(mine, 55),
    () => setRow(jonas, 45),
  );
  expect(first.overtaken.map((one) => one.sentence)).toEqual([sentence]);
  expect(first.said).toBe(sentence);
  mine.session.closeOvertaken();
  expect(mine.session.getSnapshot().overtaken).toEqual([]);

  const untouched = await meet(
    () => setRow(mine, 50),
    () => jonas.session.act((w) => setItemField(w, "b", "seconds", 70)),
  );
  expect(untouched.overtaken).toEqual([]);

  const both = ({ session }: Page<PlanSession>, seconds: number, springs: number) =>
    session.act((w) => {
      setItemField(w, "a", "seconds", seconds);
      setSpring(w, "b", "firm", springs);
    });
  const second = await meet(
    () => both(mine, 65, 1),
    () => both(jonas, 75, 3),
  );
  expect(second.overtaken.map((one) => one.sentence).sort()).toEqual([
    "Name of jonas set Kneeling row to 75 s; you had 65 s.",
    "Name of jonas set the firm springs of Kneeling row to 3; you had 1.",
  ]);
  expect(second.said).toBe("While you were offline others changed 2 values that you had set too.");
});

describe("a month's undo", () => {
  beforeEach(makeMonth);

  test("[INV-08] takes back one's own act alone, though both act in the same second, and says what it did", async () => {
    const [ines, marta] = [await openTheMonth("ines"), await openTheMonth("marta", { straight: true })];
    await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
    ines.session.act((w) => setSlotField(w, "s1", "minutes", 60));
    marta.session.act((w) => setSlotField(w, "s1", "coachId", "u-marta"));
    await eventually("both have both", () =>
      [ines, marta].every(({ session }) => {
        const slot = readSlotById(session.doc, "s1");
        return slot?.minutes === 60 && slot.coachId === "u-marta";
      }),
    );
    ines.session.takeBack();
    expect(ines.session.getSnapshot().said).toBe("Undone: the length of Pull on Tuesday 3 November is 45 min.");
    await eventually("marta reads it", () => readSlotById(marta.session.doc, "s1")?.minutes === 45);
    expect(readSlotById(marta.session.doc, "s1")?.coachId).toBe("u-marta");
    ines.session.bringBack();
    expect(ines.session.getSnapshot().said).toBe("Redone: the length of Pull on Tuesday 3 November is 60 min.");
  });

  test("[INV-07] undo of a new class takes it out; its words stay, and it can be put back", async () => {
    const ines = await openTheMonth("ines");
    await reaches(ines, "saved");
    ines.session.act((w) => addSlot(w, { ...SLOT, id: "s2", theme: "Press" }));
    ines.session.takeBack();
    expect(ines.session.getSnapshot().slots.map(({ id }) => id)).toEqual(["s1"]);
    expect(monthParts(ines.session.doc).slots.has("s2")).toBe(true);
    await reaches(ines, "saved");
    ines.session.bringBack();
    expect(ines.session.getSnapshot().slots.map(({ id }) => id)).toContain("s2");
    await reaches(ines, "saved");
  });
});

test("copies' names are read as they were built, and others' are none", () => {
  for (const kind of ["plan", "month"] as const) {
    const of = { kind, key: kind === "plan" ? "abc-1" : MONTH, generation: "g/1 %", userId: "u-ines" };
    expect(parseCopyName(copyName(of))).toEqual(of);
  }
  for (const name of ["", "springline", "springline/plan/x/g", "other/plan/x/g/u", "springline/wall/x/g/u"])
    expect(parseCopyName(name)).toBeUndefined();
});

test("a third kind of document costs one description", async () => {
  await makeMonth();
  const nothing = () => ({ done: false, stood: [] });
  const noUndo: SessionUndo = {
    ...{ canUndo: false, canRedo: false, manager: { clear: () => undefined } },
    ...{ step: (change) => change(), undo: nothing, redo: nothing, destroy: () => undefined },
  };
  const rota: DocDescription<{ readonly times: readonly string[] }, HeardOfAll, SessionUndo> = {
    ...{ kind: "month", key: MONTH, generation: generation("month", MONTH), me: person("ines") },
    heard: { rights: { writes: true, comments: false }, present: [] },
    hear: (heard) => heard,
    derive: (doc) => ({ times: [...monthParts(doc).slots.values()].map((slot) => String(slot.get("time"))) }),
    has: () => false,
    makeUndo: () => noUndo,
    values: (doc) => ({ root: null, texts: {}, entries: monthParts(doc).slots }),
    words: () => undefined,
  };
  const edge = edgeOf("ines", {});
  const third = page(edge, new DocSession(rota, edge));
  await reaches(third, "saved");
  expect(third.session.getSnapshot().times).toEqual(["18:00"]);
  await eventually("it knows who is here", () => third.session.getSnapshot().present.length === 1);
  third.session.act((w) => addSlot(w, { ...SLOT, id: "s2", time: "19:00" }));
  await reaches(third, "saved");
  line.die();
  third.edge.tellNetwork();
  await reaches(third, "offline", 1000);
});
