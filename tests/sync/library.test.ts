/** The library's commands with real documents, editions and sessions: who may, what is refused, what never changes. */

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as archiveRoute from "#app/api/library/[id]/archive/route.ts";
import * as moveRoute from "#app/api/library/[id]/route.ts";
import * as usedRoute from "#app/api/library/[id]/used/route.ts";
import * as compareRoute from "#app/api/library/compare/route.ts";
import * as libraryRoute from "#app/api/library/route.ts";
import { readEdition } from "#db/repos/edition-repo.ts";
import { listMoveEvents, readMoveRow } from "#db/repos/move-repo.ts";
import { offsetAt } from "#lib/calendar/zone.ts";
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { verifyCard } from "#lib/card/verify-card.ts";
import { deleteItem, insertItems } from "#lib/doc/write.ts";
import type { Move } from "#lib/plan/schema.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { monthDoc, planDoc } from "#server/context/live-documents.ts";
import { setSpringline } from "#server/context/springline.ts";
import { editionFile } from "#server/editions/editions.ts";
import { addToLibrary } from "#server/library/add-move.ts";
import { archiveMove } from "#server/library/archive-move.ts";
import { changeInLibrary } from "#server/library/change-move.ts";
import { compareMoves } from "#server/library/compare-moves.ts";
import { putMoves } from "#server/library/library.ts";
import { readMoveDetail } from "#server/library/read-move.ts";
import { whereUsed } from "#server/library/where-used.ts";
import { studioZone } from "#server/month-facts/month-settings.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { exportPlan } from "#server/plans/export-plan.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { handIn } from "#server/sign-off/hand-in.ts";
import { readForSignOff } from "#server/sign-off/read-for-sign-off.ts";
import { signPlan } from "#server/sign-off/sign-plan.ts";
import { studioContext } from "#server/studio-data/studio-context.ts";
import { addShown } from "#tests/support/shown-slot.ts";
import { GOOD_ITEMS, writeGoodClass } from "../support/good-class.ts";
import { MOVES, must, openStudio, outcome, type PlanStudio, ROOMS, START, type Who } from "../support/plan-studio.ts";
import { signInAll } from "../support/sign-in.ts";

let s: PlanStudio;
beforeEach(() => {
  s = openStudio({ clock: Date.now() });
  setSpringline(s.app);
});
afterEach(async () => {
  setSpringline(undefined);
  await s.stop();
});

const ROW = "kneeling-row";
const row = () => {
  const found = readMoveRow(s.db, ROW);
  if (!found) throw new Error("the row is gone");
  return found;
};
const change = (change: Partial<Move>, base = row().updatedAt, who: Who = "ines") =>
  changeInLibrary(s.app, s.people[who], ROW, { move: { ...row().move, ...change }, base });

/** A class by Jonas and Marta with the row in it, in writing. */
async function planWithRow(title = "Pull and press"): Promise<string> {
  const { id } = must(createPlan(s.app, s.people.jonas, { title, lengthSeconds: 600, roomId: ROOMS.harbour }));
  must(sharePlan(s.app, s.people.jonas, id, { userId: "marta", on: true }));
  await writeGoodClass(s, planDoc(id), [s.people.jonas, s.people.marta]);
  return id;
}
async function sign(id: string): Promise<void> {
  must(await handIn(s.app, s.people.jonas, id));
  const { hash } = must(await readForSignOff(s.app, s.people.ines, id));
  must(await signPlan(s.app, s.people.ines, id, { hash }));
}

describe("a signed edition", () => {
  test("[INV-13] is the same to the byte after its move is changed and taken out, and its card still verifies", async () => {
    const id = await planWithRow();
    await sign(id);
    const before = readEdition(s.db, id, 1);
    if (!before) throw new Error("nothing was signed");
    const forms = ["plan", "card", "cues.vtt", "chapters.vtt"] as const;
    const files = () =>
      forms.map((form) => must(editionFile(s.app, s.people.sam, { planId: id, number: 1, form })).text);
    const text = files();

    const { updatedAt } = must(change({ name: "Row on the knees", tempo: { outSeconds: 9, backSeconds: 9 } }));
    must(archiveMove(s.app, s.people.ines, ROW, { archived: true, base: updatedAt }));

    const after = readEdition(s.db, id, 1);
    expect(after).toEqual(before);
    expect(files()).toEqual(text);
    expect(after?.planJson).toContain("Kneeling row");
    expect(sha256Hex(after?.planJson ?? "")).toBe(before.hash);
    const key = s.app.keys.publicKey;
    expect(verifyCard(after?.card, key, s.app.now())).toMatchObject({ ok: true });
    // The plan itself, should it be written on, goes by the library as it is now.
    expect(must(exportPlan(s.app, s.people.ines, id)).moves[ROW]?.name).toBe("Row on the knees");
  });
});

describe("changing a move", () => {
  test("from the state it began with; the second of two is told what the first did, and may save over it", () => {
    const base = row().updatedAt;
    must(change({ name: "Row on the knees" }, base, "petra"));
    const second = change({ name: "Knee row", met: 4 }, base);
    expect(second).toMatchObject({
      ok: false,
      error: { code: "move-changed", status: 409, details: { byName: "Petra", archived: false } },
    });
    const now = row();
    expect(second.ok ? null : second.error.details).toMatchObject({ move: now.move, updatedAt: now.updatedAt });
    must(change({ name: "Knee row", met: 4 }, now.updatedAt));
    expect(row().move).toMatchObject({ name: "Knee row", met: 4 });
  });

  test("sent twice because the answer got lost is one change", () => {
    const base = row().updatedAt;
    const move = { ...row().move, met: 4 };
    const first = must(changeInLibrary(s.app, s.people.ines, ROW, { move, base }));
    expect(must(changeInLibrary(s.app, s.people.ines, ROW, { move, base }))).toEqual(first);
    expect(listMoveEvents(s.db, ROW).map((e) => e.kind)).toEqual(["changed", "added"]);
  });

  test("a wrong one is refused with the fault of each field, and nothing is stored", () => {
    const before = row();
    const refused = changeInLibrary(s.app, s.people.ines, ROW, {
      move: { ...before.move, name: " ", tempo: { outSeconds: 0, backSeconds: 2 } },
      base: before.updatedAt,
    });
    expect(refused).toMatchObject({
      error: {
        code: "bad-move",
        status: 422,
        details: { faults: [{ place: "tempo.outSeconds", say: "Give a number from 0.1 to 120 seconds." }] },
      },
    });
    expect(row()).toEqual(before);
    expect(outcome(change({ name: "kneeling  PRESS" }))).toBe("name-taken");
    expect(outcome(changeInLibrary(s.app, s.people.ines, "nowhere", { move: MOVES.row, base: 0 }))).toBe("not-found");
  });

  test("is on record with who, when and what, the first state too", () => {
    s.advance(1000);
    must(change({ tempo: { outSeconds: 3, backSeconds: 2 } }));
    const { record } = must(readMoveDetail(s.app, s.people.jonas, ROW));
    expect(record).toMatchObject([
      { kind: "changed", byName: "Ines", changes: [{ label: "tempo", after: "3 s out, 2 s back: 5 s a repetition" }] },
      { kind: "added", byName: null, at: START },
    ]);
    for (const sql of ["DELETE FROM move", "DELETE FROM move_event", "UPDATE move_event SET at = 0"]) {
      expect(() => s.db.raw.exec(sql)).toThrow(/never deleted|only added to/);
    }
  });

  test("is told to the pages of open plans by their studio's new mark, and only when something changed", async () => {
    const id = await planWithRow();
    const mark = () => s.last(planDoc(id), "studio")?.mark;
    must(change({ met: 5 }));
    const first = mark();
    expect(first).toBeDefined();
    must(change({ met: 6 }));
    const second = mark();
    expect(second).not.toBe(first);
    must(change({ met: 6 }));
    expect(mark()).toBe(second);
  });
});

describe("adding a move", () => {
  test("makes its id from its name, once, and a second time another one", () => {
    const made = must(addToLibrary(s.app, s.people.petra, { move: { ...MOVES.row, name: "Seated row" } }));
    expect(made.id).toBe("seated-row");
    must(
      changeInLibrary(s.app, s.people.ines, made.id, {
        move: { ...MOVES.row, name: "Long row" },
        base: made.updatedAt,
      }),
    );
    expect(must(addToLibrary(s.app, s.people.ines, { move: { ...MOVES.row, name: "Seated row", met: 4 } })).id).toBe(
      "seated-row-2",
    );
    expect(outcome(addToLibrary(s.app, s.people.ines, { move: { ...MOVES.row, name: "LONG ROW", met: 5 } }))).toBe(
      "name-taken",
    );
  });
  test("sent twice is one move", () => {
    const move = { ...MOVES.row, name: "Seated row" };
    expect(must(addToLibrary(s.app, s.people.ines, { move }))).toEqual(
      must(addToLibrary(s.app, s.people.ines, { move })),
    );
  });
});

describe("taking a move out", () => {
  test("it is not offered, plans that use it read it, and it can be put back", async () => {
    const id = await planWithRow();
    const { updatedAt } = must(archiveMove(s.app, s.people.ines, ROW, { archived: true, base: row().updatedAt }));
    expect(studioContext(s.db, ROOMS.harbour).archived).toEqual([ROW]);
    const { plan, findings } = must(await readForSignOff(s.app, s.people.ines, id));
    expect(plan.moves[ROW]?.name).toBe("Kneeling row");
    expect(findings.map((f) => f.rule)).not.toContain("unknown-move-data");
    expect(outcome(archiveMove(s.app, s.people.petra, ROW, { archived: false, base: 1 }))).toBe("move-changed");
    must(archiveMove(s.app, s.people.petra, ROW, { archived: false, base: updatedAt }));
    expect(studioContext(s.db, ROOMS.harbour).archived).toBeUndefined();
    expect(listMoveEvents(s.db, ROW).map((e) => e.kind)).toEqual(["restored", "archived", "added"]);
  });
  test("its name is free meanwhile; it comes back only under one that is", () => {
    const { updatedAt } = must(archiveMove(s.app, s.people.ines, ROW, { archived: true, base: row().updatedAt }));
    must(addToLibrary(s.app, s.people.ines, { move: { ...MOVES.row, met: 4 } }));
    expect(outcome(archiveMove(s.app, s.people.ines, ROW, { archived: false, base: updatedAt }))).toBe("name-taken");
  });
});

describe("where a move is used", () => {
  test("plans, editions and classes, each title only for those who may read it", async () => {
    const id = await planWithRow("Jonas writes");
    await sign(id);
    const other = must(
      createPlan(s.app, s.people.noor, { title: "Noor alone", lengthSeconds: 600, roomId: ROOMS.loft }),
    );
    const [first] = GOOD_ITEMS.filter((item) => item.kind === "move");
    if (!first) throw new Error("no move");
    s.advance(1000);
    await s.write(planDoc(other.id), s.people.noor, (w) => insertItems(w, null, [first]));
    s.advance(1000);
    const day = new Date(s.app.now() + 86_400_000).toISOString().slice(0, 10);
    const month = day.slice(0, 7);
    s.app.documents.create(monthDoc(month), createMonthDoc(month), "ines");
    s.app.documents.transact(monthDoc(month), "ines", (doc) =>
      addShown(
        { doc, origin: "test" },
        {
          id: "x1",
          date: day,
          time: "07:00",
          minutes: 10,
          theme: "",
          coachId: null,
          roomId: ROOMS.loft,
          planId: id,
          note: "",
        },
      ),
    );
    const used = async (who: Who) => must(await whereUsed(s.app, s.people[who], ROW));

    expect(await used("ines")).toMatchObject({
      plans: [
        { title: "Noor alone", items: 1 },
        { title: "Jonas writes", items: 2, carried: false },
      ],
      editions: [{ title: "Jonas writes", number: 1, planId: id }],
      classes: [{ title: "Jonas writes", planId: id, date: day, time: "07:00", roomName: "Loft" }],
      hidden: { plans: 0, editions: 0, classes: 0 },
      unread: 0,
    });
    expect(await used("noor")).toMatchObject({
      plans: [{ title: "Noor alone" }],
      editions: [],
      classes: [],
      hidden: { plans: 1, editions: 1, classes: 1 },
    });
    // A manager reads what is signed, and no plan.
    expect(await used("petra")).toMatchObject({
      plans: [],
      editions: [{ title: "Jonas writes" }],
      classes: [{ title: "Jonas writes" }],
      hidden: { plans: 2, editions: 0, classes: 0 },
    });
    expect(outcome(await whereUsed(s.app, s.people.sam, ROW))).toBe("no-right");
    expect(JSON.stringify(await used("noor"))).not.toContain("Jonas");

    // To its last second, and no longer.
    const end = Date.parse(`${day}T07:00Z`) - offsetAt(Date.parse(`${day}T07:00Z`), studioZone(s.app)) + 10 * 60_000;
    s.advance(end - 1000 - s.app.now());
    expect((await used("ines")).classes).toHaveLength(1);
    s.advance(1000);
    expect((await used("ines")).classes).toEqual([]);

    // Looked at again after a change of one plan only.
    await s.write(planDoc(other.id), s.people.noor, (w) => deleteItem(w, first.id, s.app.now()));
    expect((await used("ines")).plans.map((p) => p.title)).toEqual(["Jonas writes"]);
  });

  test("a plan from a file keeps its own copy, and says so", async () => {
    const id = await planWithRow();
    const file = must(exportPlan(s.app, s.people.ines, id));
    const copy = must(importPlan(s.app, s.people.marta, file, ROOMS.harbour));
    expect(must(await whereUsed(s.app, s.people.ines, ROW)).plans.find((p) => p.planId === copy.id)).toMatchObject({
      carried: true,
    });
  });
});

describe("moves of a plan file", () => {
  test("are shown with their differences, and stored only from what was seen", async () => {
    const file = must(exportPlan(s.app, s.people.ines, await planWithRow()));
    const brought = {
      ...file,
      moves: { ...file.moves, [ROW]: { ...MOVES.row, met: 4 }, "long-plank": { ...MOVES.press, name: "Long plank" } },
    };
    const { moves } = must(compareMoves(s.app, s.people.ines, brought));
    expect(moves.map(({ id, kind }) => `${id} ${kind}`).sort()).toEqual([
      "chest-press same",
      "kneeling-row differs",
      "long-plank new",
    ]);
    expect(moves.find((m) => m.id === ROW)?.changes).toEqual([
      { key: "met", label: "effort", before: "nothing", after: "4 MET" },
    ]);
    const some = moves.filter((m) => m.kind !== "same");
    const store = () =>
      putMoves(
        s.app,
        s.people.ines,
        Object.fromEntries(some.map((m) => [m.id, m.move])),
        Object.fromEntries(some.map((m) => [m.id, m.seen])),
      );
    must(change({ met: 7 }));
    expect(store()).toMatchObject({ error: { code: "moves-changed", details: { ids: [ROW] } } });
    expect(readMoveRow(s.db, "long-plank")).toBeUndefined();
    const again = must(compareMoves(s.app, s.people.ines, brought)).moves;
    must(
      putMoves(s.app, s.people.ines, { [ROW]: MOVES.row }, { [ROW]: again.find((m) => m.id === ROW)?.seen ?? null }),
    );
    expect(outcome(compareMoves(s.app, s.people.ines, { ...brought, title: 5 }))).toBe("bad-plan-file");
  });
});

describe("over HTTP, with their own sessions", () => {
  type Route = (request: Request, context?: { params: Promise<Record<string, string>> }) => Promise<Response>;
  let cookies: ReadonlyMap<Who, string>;
  beforeEach(async () => {
    cookies = await signInAll(s, ["jonas", "marta", "sam", "petra"]);
  });
  async function ask(route: Route, method: string, who: Who, body?: unknown): Promise<string> {
    const headers = { origin: s.app.env.origin, "content-type": "application/json", cookie: cookies.get(who) ?? "" };
    const init = { method, headers, ...(body === undefined ? {} : { body: JSON.stringify(body) }) };
    const response = await route(new Request(`${s.app.env.origin}/api`, init), {
      params: Promise.resolve({ id: ROW }),
    });
    return response.ok ? String(response.status) : `${response.status} ${(await response.json()).error.code}`;
  }
  const writes = (): [string, Route, string, unknown][] => [
    ["add", libraryRoute.POST, "POST", { move: { ...MOVES.row, name: "Another row" } }],
    ["change", moveRoute.PUT, "PUT", { move: { ...MOVES.row, met: 4 }, base: row().updatedAt }],
    ["several", libraryRoute.PUT, "PUT", { moves: { [ROW]: { ...MOVES.row, met: 5 } } }],
    ["take out", archiveRoute.POST, "POST", { archived: true, base: row().updatedAt }],
    ["compare", compareRoute.POST, "POST", {}],
  ];

  test("a trainee, a coach and the crew are refused every write by the server; nothing changes", async () => {
    const before = row();
    for (const who of ["jonas", "marta", "sam"] as const) {
      for (const [what, route, method, body] of writes()) {
        expect(`${who} ${what}: ${await ask(route, method, who, body)}`).toBe(`${who} ${what}: 403 no-right`);
      }
    }
    expect(row()).toEqual(before);
    expect(listMoveEvents(s.db, ROW)).toEqual([]);
  });

  test("they read it, but for the crew; a manager writes", async () => {
    for (const who of ["jonas", "marta"] as const) {
      expect(await ask(moveRoute.GET, "GET", who)).toBe("200");
      expect(await ask(usedRoute.GET, "GET", who)).toBe("200");
    }
    expect(await ask(moveRoute.GET, "GET", "sam")).toBe("403 no-right");
    expect(await ask(moveRoute.PUT, "PUT", "petra", { move: { ...MOVES.row, met: 4 }, base: row().updatedAt })).toBe(
      "200",
    );
    expect(await ask(moveRoute.PUT, "PUT", "petra", { move: {}, base: row().updatedAt })).toBe("422 bad-move");
    expect(await ask(moveRoute.PUT, "PUT", "petra", { base: "x" })).toBe("422 invalid");
  });
});
