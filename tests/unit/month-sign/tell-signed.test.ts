/** [INV-30] Who is told that a month was signed off, once a signing, where it leads, and by which mail. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { removeAccess, setRoles } from "#db/repos/people-repo.ts";
import { addSlot, changeSlot, takeOutSlot } from "#lib/programme/write.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import { readMonthForSignOff } from "#server/month-sign/read-month.ts";
import { signMonth } from "#server/month-sign/sign-month.ts";
import { countUnseen, listNotices, seeNoticesOf } from "#server/notices/list-notices.ts";
import { noticeChoiceOf } from "#server/notices/notice-choices.ts";
import { type MailStudio, openMailStudio } from "#tests/support/mail-studio.ts";
import { must, type PlanStudio, ROOMS, type Who } from "#tests/support/plan-studio.ts";

const MONTH = "2026-11";
const doc = monthDoc(MONTH);
let m: MailStudio;
let s: PlanStudio;
// Monday, 2 November 2026, 09:00 in London.
beforeEach(async () => {
  m = await openMailStudio();
  s = m.s;
});
afterEach(() => m.stop());

type SlotChange = Parameters<typeof changeSlot>[2];
const add = (id: string, date: string, coach: string | null, month = doc) =>
  s.app.documents.transact(month, "marta", (d) =>
    addSlot(
      { doc: d, origin: "marta" },
      { id, date, start: "18:00", minutes: 45, room: ROOMS.harbour, coach },
      s.app.now(),
    ),
  );
const change = (id: string, to: SlotChange) =>
  s.app.documents.transact(doc, "marta", (d) => changeSlot({ doc: d, origin: "marta" }, id, to));
const sign = (who: Who = "ines") => {
  const { hash, nextEdition } = must(readMonthForSignOff(s.app, s.people[who], MONTH));
  return signMonth(s.app, s.people[who], MONTH, { hash, edition: nextEdition });
};
const told = (who: Who) =>
  must(listNotices(s.app, s.people[who])).notices.filter(({ kind }) => kind === "month-signed");

describe("who is told", () => {
  test("whoever teaches in it and the managers, once a signing, not who signed", () => {
    add("one", "2026-11-20", "marta");
    add("two", "2026-11-21", "marta");
    add("hers", "2026-11-22", "ines");
    must(sign());
    const first = [["Ines signed off November 2026 as edition 1.", "/programme/2026-11"]];
    for (const who of ["marta", "petra"] as const)
      expect(told(who).map(({ sentence, path }) => [sentence, path])).toEqual(first);
    for (const who of ["ines", "jonas", "noor", "sam"] as const) expect(told(who)).toEqual([]);
    change("one", { start: "19:00" });
    must(sign());
    expect(told("marta").map(({ sentence }) => sentence)).toEqual([
      "Ines signed off November 2026 as edition 2.",
      "Ines signed off November 2026 as edition 1.",
    ]);
  });

  test("not by a class that is called off or of the month before, nor who may not open the programme", () => {
    add("off", "2026-11-20", "noor");
    add("before", "2026-10-30", "noor", monthDoc("2026-10"));
    add("stays", "2026-11-23", "jonas");
    setRoles(s.db, "noor", ["coach"]);
    s.app.documents.transact(doc, "marta", (d) =>
      takeOutSlot({ doc: d, origin: "marta" }, "off", { at: s.app.now(), signedAt: s.app.now() }),
    );
    must(sign());
    // Jonas is a trainee: he has a class, and the programme is not his to open.
    for (const who of ["noor", "jonas"] as const) expect(s.app.db.raw.prepare(OF).all(who)).toEqual([]);
    expect(told("petra")).toHaveLength(1);
  });

  test("a refused signing tells nobody", () => {
    add("one", "2026-11-20", "marta");
    add("clash", "2026-11-20", "marta");
    expect(sign().ok).toBe(false);
    expect(s.app.db.raw.prepare(OF).all("marta")).toEqual([]);
  });
});

const OF = "select id from notice where kind = 'month-signed' and user_id = ?";

describe("what becomes of it", () => {
  beforeEach(() => {
    add("one", "2026-11-20", "marta");
    must(sign());
  });

  test("opening that month marks it as seen, another month does not", () => {
    const unseen = () => told("marta").filter(({ seen }) => !seen).length;
    seeNoticesOf(s.app, s.people.marta, { kinds: ["month-signed"], month: "2026-12" });
    expect(unseen()).toBe(1);
    seeNoticesOf(s.app, s.people.marta, { kinds: ["month-signed"], month: MONTH });
    expect(unseen()).toBe(0);
  });

  test("nothing is said or counted of it to whoever may not open the programme any more, nor when the signer has left", () => {
    const before = countUnseen(s.app, s.people.marta);
    expect(countUnseen(s.app, { ...s.people.marta, roles: ["trainee"] })).toBeLessThan(before);
    removeAccess(s.db, "ines");
    expect(told("marta")[0]?.sentence).toBe("Ines signed off November 2026 as edition 1.");
  });

  test("coaches, leads and managers choose about it; others are not asked", () => {
    const asked = (who: Who) => "month-signed" in noticeChoiceOf(s.app, s.people[who]).kinds;
    expect((["marta", "ines", "petra"] as const).map(asked)).toEqual([true, true, true]);
    expect((["jonas", "sam"] as const).map(asked)).toEqual([false, false]);
    expect(noticeChoiceOf(s.app, s.people.marta).kinds["month-signed"]).toBe("digest");
  });
});

describe("by e-mail", () => {
  test("at once only to who asked for it, with a subject that names nothing", async () => {
    add("one", "2026-11-20", "marta");
    add("two", "2026-11-21", "noor");
    setRoles(s.db, "noor", ["coach"]);
    m.choose("marta", { "month-signed": "at-once" });
    m.choose("petra", { "month-signed": "off" });
    must(sign());
    await m.run(1);
    expect(m.server.arrived.map(({ to, mail }) => [to, mail.subject])).toEqual([
      [["marta@tholepin.example"], "Springline: a month is signed off"],
    ]);
    expect(m.server.arrived[0]?.mail.text).toContain("Ines signed off November 2026 as edition 1.");
    expect(m.server.arrived[0]?.mail.text).toContain("/programme/2026-11\n");
  });

  test("in the digest of who chose that", async () => {
    add("one", "2026-11-20", "marta");
    m.choose("marta", { "month-signed": "digest" }, "09:30");
    must(sign());
    await m.run(1);
    expect(m.server.arrived).toHaveLength(0);
    await m.run(40);
    expect(m.server.arrived).toHaveLength(1);
    expect(m.server.arrived[0]?.mail.text).toContain("Ines signed off November 2026 as edition 1.");
  });
});
