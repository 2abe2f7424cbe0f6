/**
 * What others set of mine without having known it: said once, with who and both values; after a cut, after the page was
 * closed meanwhile, and where two act in the same second.
 */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import * as Y from "yjs";
import type { MonthSession } from "#app/_month/month-session.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { copyName } from "#lib/client/doc-session/copy-name.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { PLAN_DOC_VERSION, planParts, THEME_OF_V1 } from "#lib/doc/layout.ts";
import { readItemById } from "#lib/doc/read.ts";
import { setItemField, setSpring, setText } from "#lib/doc/write.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { addSlot, changeSlot } from "#lib/programme/write.ts";
import type { DeadLine } from "#tests/support/dead-line.ts";
import { type DocPages, docPages, type Page, type PageOptions, reaches } from "#tests/support/doc-pages.ts";
import { eventually } from "#tests/support/eventually.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";

let line: DeadLine;
let pages: DocPages;
beforeEach(async () => {
  pages = await docPages();
  ({ line } = pages);
});
afterEach(() => pages.stop());

const openPlan = (user: string, options: PageOptions = {}) => pages.openPlan(user, options);
const setRow = ({ session }: Page<PlanSession>, seconds: number) =>
  session.act((w) => setItemField(w, "a", "seconds", seconds));
const lockRow = ({ session }: Page<PlanSession>) => session.act((w) => setItemField(w, "a", "locked", true));
const secondsOf = (doc: Y.Doc) => (readItemById(doc, "a") as MoveItem).seconds;
const toldTo = ({ session }: Page<PlanSession>) => session.getSnapshot().overtaken.map((one) => one.sentence);
const sameSeconds = (a: Page<PlanSession>, b: Page<PlanSession>) =>
  eventually("both read the same", () => secondsOf(a.session.doc) === secondsOf(b.session.doc));
async function cut(mine: Page<PlanSession>): Promise<void> {
  line.die();
  mine.edge.tellNetwork();
  await reaches(mine, "offline");
}

/** Of two that know nothing of each other the page with the greater id wins in yjs 13.6: one that wins over `mine`. */
function openWinner(user: string, mine: Page<PlanSession>): Page<PlanSession> {
  for (;;) {
    const other = openPlan(user, { straight: true });
    if (other.session.doc.clientID > mine.session.doc.clientID) return other;
    other.session.end();
  }
}

describe("values", () => {
  beforeEach(() => void pages.server.addPlan("p"));

  test("values of mine that others set while I was offline are told once, with who and both values; several as one summary", async () => {
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
    expect(second.said).toBe("Others have changed 2 values that you set.");
  });

  const SENTENCE = "Name of jonas set Kneeling row to 45 s; you had 55 s.";

  test("a page closed offline and opened again tells it, on every opening until the notice is closed", async () => {
    const device = { kept: new Map<string, Uint8Array>(), notes: new Map<string, unknown>() };
    const mine = openPlan("ines", device);
    const jonas = openWinner("jonas", mine);
    await Promise.all([reaches(mine, "saved"), reaches(jonas, "saved")]);
    await eventually("ines sees jonas", () => mine.session.getSnapshot().places.length === 1);
    expect(device.notes.size).toBe(0);
    await cut(mine);
    setRow(mine, 50);
    setRow(mine, 55);
    mine.session.act((w) => setItemField(w, "b", "seconds", 70));
    setRow(jonas, 45);
    mine.session.end();
    await reaches(jonas, "saved");
    // Whoever did it has gone before the page is opened: the name is known from before.
    jonas.session.end();

    const next = openPlan("ines", { ...device, straight: true });
    await reaches(next, "saved");
    await eventually("it is told", () => toldTo(next).length > 0);
    expect(toldTo(next)).toEqual([SENTENCE]);
    expect(next.session.getSnapshot().said).toBe(SENTENCE);
    next.session.end();

    const third = openPlan("ines", { ...device, straight: true });
    await reaches(third, "saved");
    await eventually("it lies there until it is closed", () => toldTo(third).length > 0);
    third.session.closeOvertaken();
    expect(toldTo(third)).toEqual([]);
    expect([...device.notes]).toEqual([]);
    third.session.end();

    const last = openPlan("ines", { ...device, straight: true });
    await reaches(last, "saved");
    expect(toldTo(last)).toEqual([]);
  });

  test("notes that are not ours are skipped and removed", async () => {
    const rubbish: [string, unknown][] = [
      ["own 7 x", { at: 3 }],
      ["own ", null],
      ["names 7", "?"],
      ["else", 1],
    ];
    const device = { kept: new Map<string, Uint8Array>(), notes: new Map(rubbish) };
    const mine = openPlan("ines", device);
    await reaches(mine, "saved");
    await eventually("they are gone", () => device.notes.size === 0);
    expect(toldTo(mine)).toEqual([]);
  });

  test("a lock that somebody set meanwhile is told: my seconds are kept but do not count", async () => {
    const mine = openPlan("ines");
    const jonas = openPlan("jonas", { straight: true });
    await Promise.all([reaches(mine, "saved"), reaches(jonas, "saved")]);
    await eventually("ines sees jonas", () => mine.session.getSnapshot().places.length === 1);
    const before = secondsOf(mine.session.doc);
    await cut(mine);
    setRow(mine, before + 15);
    lockRow(jonas);
    await reaches(jonas, "saved");
    line.live();
    mine.edge.tellNetwork();
    await reaches(mine, "saved");
    await sameSeconds(mine, jonas);
    expect(secondsOf(mine.session.doc)).toBe(before);
    expect(toldTo(mine)).toEqual([`Name of jonas locked Kneeling row at ${before} s; you had ${before + 15} s.`]);
    expect(toldTo(jonas)).toEqual([]);
    // Whoever sets it with the lock in sight sets what it is locked at, and there is nothing to be told.
    mine.session.closeOvertaken();
    setRow(mine, before + 20);
    await sameSeconds(mine, jonas);
    expect(secondsOf(jonas.session.doc)).toBe(before + 20);
    expect([toldTo(mine), toldTo(jonas)]).toEqual([[], []]);
  });

  test.each(["lock", "seconds"] as const)(
    "in one tick, both online: whose seconds do not count hears of the %s",
    async (how) => {
      const mine = openPlan("ines");
      const jonas = openWinner("jonas", mine);
      await Promise.all([reaches(mine, "saved"), reaches(jonas, "saved")]);
      await eventually("ines sees jonas", () => mine.session.getSnapshot().places.length === 1);
      const before = secondsOf(mine.session.doc);
      setRow(mine, before + 15);
      if (how === "lock") lockRow(jonas);
      else setRow(jonas, before + 5);
      await eventually("it is told", () => toldTo(mine).length > 0);
      const did = how === "lock" ? `locked Kneeling row at ${before} s` : `set Kneeling row to ${before + 5} s`;
      expect(toldTo(mine)).toEqual([`Name of jonas ${did}; you had ${before + 15} s.`]);
      await reaches(jonas, "saved");
      expect(toldTo(jonas)).toEqual([]);
    },
  );

  test("taking turns online tells nothing: whoever sets a value has read the one before", async () => {
    const mine = openPlan("ines");
    const jonas = openWinner("jonas", mine);
    await Promise.all([reaches(mine, "saved"), reaches(jonas, "saved")]);
    const both = async () => {
      await sameSeconds(mine, jonas);
      await Promise.all([reaches(mine, "saved"), reaches(jonas, "saved")]);
      for (const { edge } of [mine, jonas]) edge.wait(10_000);
    };
    for (const seconds of [50, 60, 70]) {
      setRow(mine, seconds);
      await both();
      setRow(jonas, seconds + 5);
      await both();
    }
    mine.session.act((w) => setText(w, planParts(w.doc).theme, "Pull"));
    jonas.session.act((w) => setText(w, planParts(w.doc).theme, "Press"));
    await both();
    lockRow(jonas);
    await both();
    setRow(jonas, 80);
    await both();
    expect([toldTo(mine), toldTo(jonas)]).toEqual([[], []]);
  });
});

describe("one class of a month", () => {
  const startOf = ({ session }: Page<MonthSession>) => session.getSnapshot().file.slots[0]?.start;
  const setStart = ({ session }: Page<MonthSession>, start: string) =>
    session.act((w) => changeSlot(w, "a", { start }));
  const notices = ({ session }: Page<MonthSession>) => session.getSnapshot().overtaken.map((one) => one.sentence);
  const both = (a: Page<MonthSession>, b: Page<MonthSession>, start: string) =>
    eventually(`both read ${start}`, () => startOf(a) === start && startOf(b) === start);

  async function twoPages() {
    const doc = createMonthDoc("2026-12");
    addSlot({ doc, origin: "maker" }, { id: "a", date: "2026-12-01", start: "12:00", minutes: 45 }, 0);
    pages.server.rooms.create({ kind: "month", key: "2026-12" }, doc, "maker");
    const [ines, marta] = [pages.openMonth("ines", "2026-12"), pages.openMonth("marta", "2026-12", { straight: true })];
    await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
    return { ines, marta };
  }

  test("whoever loses a time that both set in the same second is told, each time anew", async () => {
    const { ines, marta } = await twoPages();
    for (const hour of ["13", "14", "15", "16"]) {
      setStart(ines, `${hour}:00`);
      await both(ines, marta, `${hour}:00`);
      await reaches(ines, "saved");
      // Hers has arrived at Marta's page, but nobody reads so fast.
      setStart(marta, `${hour}:30`);
      await both(ines, marta, `${hour}:30`);
      await eventually("it is told", () => notices(ines).some((one) => one.includes(`${hour}:30`)));
      expect(notices(ines)).toEqual([
        `Name of marta set the beginning of the ${hour}:30 class on Tuesday 1 December to ${hour}:30; you had ${hour}:00.`,
      ]);
      expect(notices(marta)).toEqual([]);
    }
  });

  test("a notice follows the value, and goes with it", async () => {
    const { ines, marta } = await twoPages();
    setStart(ines, "13:00");
    await both(ines, marta, "13:00");
    setStart(marta, "13:30");
    await eventually("it is told", () => notices(ines).length === 1);
    setStart(marta, "13:45");
    await eventually("as it is now", () => notices(ines)[0]?.includes("13:45") === true);
    expect(notices(ines)).toHaveLength(1);
    setStart(marta, "13:00");
    await eventually("she has her time", () => notices(ines).length === 0);
    setStart(marta, "13:30");
    await both(ines, marta, "13:30");
    setStart(ines, "14:00");
    await both(ines, marta, "14:00");
    expect(notices(ines), "her own stands").toEqual([]);
  });
});

describe("a device copy from before themes were shared texts", () => {
  const PLAN = { kind: "plan", key: "p" } as const;

  /** A plan stored by version 1, and this device's copy of it, with a theme set in the copy. */
  function oldPlan(user: string): Map<string, Uint8Array> {
    const old = createPlanDoc(SMALL_PLAN, { carry: false });
    planParts(old).meta.set("version", 1);
    planParts(old).head.set(THEME_OF_V1, "Upper body");
    const copy = new Y.Doc();
    Y.applyUpdate(copy, Y.encodeStateAsUpdate(old));
    pages.server.rooms.create(PLAN, old, "maker");
    planParts(copy).head.set(THEME_OF_V1, "Upper body and core");
    const name = copyName({ ...PLAN, generation: pages.generation("plan", "p"), userId: user });
    return new Map([[name, Y.encodeStateAsUpdate(copy)]]);
  }
  const themeRead = ({ session }: Page<PlanSession>) => session.getSnapshot().plan.theme?.name;
  const themeOf = ({ session }: Page<PlanSession>) => planParts(session.doc).theme.toString();

  test("is read-only until the server has migrated it, and loses nothing", async () => {
    const kept = oldPlan("ines");
    line.die();
    const mine = openPlan("ines", { kept });
    await eventually("the copy was read", () => planParts(mine.session.doc).head.has(THEME_OF_V1));
    await reaches(mine, "opening");
    expect([mine.session.getSnapshot().ready, mine.session.canWrite]).toEqual([false, false]);
    expect(mine.session.act((w) => setText(w, planParts(w.doc).theme, "x"))).toBe(false);
    line.live();
    mine.edge.tellNetwork();
    await reaches(mine, "saved", 15_000);
    await eventually("its theme is carried", () => themeOf(mine) === "Upper body and core");
    const jonas = openPlan("jonas", { straight: true });
    await reaches(jonas, "saved");
    await eventually("others read it", () => themeRead(jonas) === "Upper body and core");
    const { meta } = planParts(jonas.session.doc);
    expect(meta.get("version")).toBe(PLAN_DOC_VERSION);
    const actors = pages.server.db.raw.prepare("select actor_id from doc_update where name = 'plan/p'").pluck().all();
    expect(actors).toEqual(["maker", "program", "ines", "program"]);
  });

  test("comes back in the tick in which another writes in the theme: both people's words are there", async () => {
    const kept = oldPlan("ines");
    const jonas = openPlan("jonas", { straight: true });
    await reaches(jonas, "saved");
    expect(themeOf(jonas)).toBe("Upper body");
    const mine = openPlan("ines", { kept });
    jonas.session.act((w) => setText(w, planParts(w.doc).theme, "Slow upper body"));
    await Promise.all([reaches(mine, "saved"), reaches(jonas, "saved")]);
    await eventually("both read the same", () => themeOf(mine) === themeOf(jonas) && themeOf(mine).includes("core"));
    expect(themeOf(mine)).toBe("Slow upper body, Upper body and core");
  });

  test("two write in the theme in one tick: both keep their words, and neither is told of a loss", async () => {
    pages.server.addPlan("p");
    const [ines, marta] = [openPlan("ines"), openPlan("marta", { straight: true })];
    await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
    ines.session.act((w) => setText(w, planParts(w.doc).theme, "Pull"));
    marta.session.act((w) => setText(w, planParts(w.doc).theme, "Press"));
    await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
    await eventually("both read the same", () => themeOf(ines) === themeOf(marta) && themeOf(ines).length === 9);
    expect(["PullPress", "PressPull"]).toContain(themeOf(ines));
    expect([toldTo(ines), toldTo(marta)]).toEqual([[], []]);
    ines.session.undo();
    await eventually("undo takes one's own alone", () => themeOf(marta) === "Press");
  });
});
