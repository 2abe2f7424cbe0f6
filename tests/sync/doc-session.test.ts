/** One kernel under every kind of shared document, against the real server: plan, month, and a kind made up here. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { MonthSession } from "#app/_month/month-session.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { copyName, parseCopyName } from "#lib/client/doc-session/copy-name.ts";
import type { DocDescription, ServerFacts, SessionUndo } from "#lib/client/doc-session/description.ts";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
import { DocSession } from "#lib/client/doc-session/session.ts";
import { setHead } from "#lib/doc/write.ts";
import { MONTH_DOC_VERSION, monthParts, type Slot } from "#lib/programme/layout.ts";
import { readSlotById } from "#lib/programme/read.ts";
import type { DeadLine } from "#tests/support/dead-line.ts";
import { type DocPages, docPages, type Page, type PageOptions, person, reaches } from "#tests/support/doc-pages.ts";
import { eventually } from "#tests/support/eventually.ts";
import { addShown, setShown } from "#tests/support/shown-slot.ts";
import type { TestServer } from "#tests/support/sync-server.ts";

const MONTH = "2026-11";
const SLOT: Slot = {
  ...{ id: "s1", date: "2026-11-03", time: "18:00", minutes: 45, theme: "Pull", note: "" },
  ...{ coachId: null, roomId: null, planId: null },
};

let server: TestServer;
let line: DeadLine;
let pages: DocPages;
beforeEach(async () => {
  pages = await docPages();
  ({ server, line } = pages);
  server.addPlan("p");
});
afterEach(() => pages.stop());

const openPlan = (user: string, options: PageOptions = {}) => pages.openPlan(user, options);
const openTheMonth = (user: string, options: PageOptions = {}) => pages.openMonth(user, MONTH, options);

async function makeMonth(): Promise<void> {
  const { RawClient } = await import("#tests/support/raw-client.ts");
  const first = await new RawClient(
    server.url,
    { kind: "month", key: MONTH },
    { cookie: server.host.signIn("maker"), query: `d=${MONTH_DOC_VERSION}` },
  ).synced();
  first.edit((doc) => addShown({ doc, origin: "maker" }, SLOT));
  await first.saved();
  first.end();
}

describe.each(["plan", "month"] as const)("a %s says where its words are", (kind) => {
  const open = async (user: string, options: PageOptions = {}): Promise<Page<PlanSession | MonthSession>> =>
    kind === "plan" ? openPlan(user, options) : openTheMonth(user, options);
  const edit = ({ session }: Page<PlanSession | MonthSession>) =>
    session.act((w) => (kind === "plan" ? setHead(w, "lengthSeconds", 900) : setShown(w, "s1", "minutes", 50)));
  beforeEach(async () => {
    if (kind === "month") await makeMonth();
  });

  test("opening, saved, sending, saved; a network loss the device reports shows within a second", async () => {
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

  test("a connection that dies silently: an edit on it is never called saved, and the page says offline", async () => {
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

describe("a month's undo", () => {
  beforeEach(makeMonth);

  test("[INV-08] takes back only one's own act, though both act in the same second, and says what it did", async () => {
    const [ines, marta] = [await openTheMonth("ines"), await openTheMonth("marta", { straight: true })];
    await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
    ines.session.act((w) => setShown(w, "s1", "minutes", 60));
    marta.session.act((w) => setShown(w, "s1", "coachId", "u-marta"));
    await eventually("both have both", () =>
      [ines, marta].every(({ session }) => {
        const slot = readSlotById(session.doc, "s1");
        return slot?.minutes === 60 && slot.coachId === "u-marta";
      }),
    );
    ines.session.undo();
    expect(ines.session.getSnapshot().said).toBe("Undone: the length of Pull on Tuesday 3 November is 45 min.");
    await eventually("marta reads it", () => readSlotById(marta.session.doc, "s1")?.minutes === 45);
    expect(readSlotById(marta.session.doc, "s1")?.coachId).toBe("u-marta");
    ines.session.redo();
    expect(ines.session.getSnapshot().said).toBe("Redone: the length of Pull on Tuesday 3 November is 60 min.");
  });

  test("[INV-07] undo of a new class takes it out; its words stay, and it can be put back", async () => {
    const ines = await openTheMonth("ines");
    await reaches(ines, "saved");
    ines.session.act((w) => addShown(w, { ...SLOT, id: "s2", theme: "Press" }));
    ines.session.undo();
    expect(ines.session.getSnapshot().slots.map(({ id }) => id)).toEqual(["s1"]);
    expect(monthParts(ines.session.doc).slots.has("s2")).toBe(true);
    await reaches(ines, "saved");
    ines.session.redo();
    expect(ines.session.getSnapshot().slots.map(({ id }) => id)).toContain("s2");
    await reaches(ines, "saved");
  });
});

test("names of copies parse as they were built; other names are rejected", () => {
  for (const kind of ["plan", "month"] as const) {
    const of = { kind, key: kind === "plan" ? "abc-1" : MONTH, generation: "g/1 %", userId: "u-ines" };
    expect(parseCopyName(copyName(of))).toEqual(of);
  }
  for (const name of ["", "springline", "springline/plan/x/g", "other/plan/x/g/u", "springline/wall/x/g/u"])
    expect(parseCopyName(name)).toBeUndefined();
});

test("a third kind of document needs only a description", async () => {
  await makeMonth();
  const nothing = () => ({ done: false, stood: [] });
  const noUndo: SessionUndo = {
    ...{ canUndo: false, canRedo: false, manager: { clear: () => undefined } },
    ...{ step: (change) => change(), undo: nothing, redo: nothing, destroy: () => undefined },
  };
  const rota: DocDescription<{ readonly times: readonly string[] }, ServerFacts, SessionUndo> = {
    ...{ kind: "month", key: MONTH, generation: pages.generation("month", MONTH), me: person("ines") },
    heard: { rights: { writes: true, comments: false }, present: [] },
    hear: (heard) => heard,
    derive: (doc) => ({ times: [...monthParts(doc).slots.values()].map((slot) => String(slot.get("time"))) }),
    has: () => false,
    makeUndo: () => noUndo,
    values: (doc) => ({ root: null, texts: {}, entries: monthParts(doc).slots }),
    words: () => undefined,
  };
  const edge = pages.edgeOf("ines", {});
  const third = pages.page(edge, new DocSession(rota, edge));
  await reaches(third, "saved");
  expect(third.session.getSnapshot().times).toEqual(["18:00"]);
  await eventually("it knows who is here", () => third.session.getSnapshot().present.length === 1);
  third.session.act((w) => addShown(w, { ...SLOT, id: "s2", time: "19:00" }));
  await reaches(third, "saved");
  line.die();
  third.edge.tellNetwork();
  await reaches(third, "offline", 1000);
});
