/** A mail that is refused, cut off or overtaken by what happened: tried again, given up and told of, or not sent at all. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { countMails } from "#db/repos/mail-repo.ts";
import { removeAccess } from "#db/repos/people-repo.ts";
import { startMailRuns } from "#server/mail/mail-runs.ts";
import { readMailState, tryMailAgain } from "#server/mail/manage-mail.ts";
import { listNotices, seeNoticesOf } from "#server/notices/list-notices.ts";
import { deletePlan } from "#server/plans/delete-plan.ts";
import { sharePlan } from "#server/plans/share-plan.ts";
import { eventually } from "#tests/support/eventually.ts";
import { startMailServer } from "#tests/support/mail-server.ts";
import { type MailStudio, openMailStudio } from "#tests/support/mail-studio.ts";
import { must } from "#tests/support/plan-studio.ts";

let m: MailStudio;
beforeEach(async () => {
  m = await openMailStudio();
  m.choose("jonas", { comment: "at-once" });
});
afterEach(() => m.stop());
const state = () => must(readMailState(m.s.app, m.s.people.petra));
const told = () => must(listNotices(m.s.app, m.s.people.petra)).notices.map(({ sentence }) => sentence);
const busy = { at: "rcpt", code: 451, says: "4.3.0 Try later" } as const;
const gone = { at: "rcpt", code: 550, says: "5.1.1 No such person here" } as const;

describe("refused", () => {
  test("451 (RFC 5321, 4.5.4.1): again after 1, 5 and 30 min, 2, 6, 12 and 24 h, then failed, and the manager is told", async () => {
    m.tell("jonas");
    m.server.next.push(...Array.from({ length: 8 }, () => busy));
    await m.run(1);
    for (const [tries, pause] of [1, 5, 30, 120, 360, 720, 1440].entries()) {
      await m.run(pause - 1);
      // A minute too early, and a second.
      expect(state().unsent[0]?.attempts).toBe(tries + 1);
      await m.run(59 / 60);
      expect(state().unsent[0]?.attempts).toBe(tries + 1);
      await m.run(1 / 60);
      expect(state().unsent[0]?.attempts).toBe(tries + 2);
    }
    expect(state()).toMatchObject({ failed: 1, waiting: 0, unsent: [{ to: "Jonas", attempts: 8, nextAt: null }] });
    expect(told()).toEqual([expect.stringMatching(/^A mail to Jonas could not be sent: .*451 4\.3\.0 Try later/)]);
    await m.run(7 * 24 * 60);
    expect(m.server.arrived).toEqual([]);
  });

  test("a mail that is tried again has the same Message-ID (RFC 5322, 3.6.4), and arrives once", async () => {
    m.tell("jonas");
    m.server.next.push(busy, { at: "data", cut: "midway" });
    await m.run(1);
    await m.run(1);
    expect(m.server.arrived).toEqual([]);
    const { id } = state().unsent[0] ?? {};
    await m.run(5);
    expect(m.server.arrived).toHaveLength(1);
    expect(m.server.arrived[0]?.mail.messageId).toBe(`<${id}@tholepin.example>`);
    await m.run(60);
    expect(m.server.arrived).toHaveLength(1);
    expect(state()).toMatchObject({ waiting: 0, failed: 0, lastSentAt: expect.any(Number) });
  });

  test("a server that takes a mail and breaks off before it says so gets it again under the same Message-ID", async () => {
    m.tell("jonas");
    m.server.next.push({ at: "data", cut: "before answering" });
    await m.run(1);
    await m.run(2);
    const ids = m.server.arrived.map(({ mail }) => mail.messageId);
    expect(ids).toHaveLength(2);
    expect(new Set(ids).size).toBe(1);
  });

  test("550 (RFC 5321, 4.2.1): not again, told at once; other people's mails go", async () => {
    m.choose("ines", { offered: "at-once" });
    m.tell("jonas");
    m.s.advance(1);
    m.tell("ines", "offered");
    m.server.next.push(gone);
    await m.run(2);
    expect(m.server.arrived.map(({ to }) => to[0])).toEqual(["ines@tholepin.example"]);
    expect(state()).toMatchObject({ failed: 1, unsent: [{ problem: expect.stringContaining("No such person here") }] });
    expect(told()).toHaveLength(1);
    await m.run(3 * 24 * 60);
    expect(m.server.arrived).toHaveLength(1);
  });

  test("managers are told once until they have looked, and never by mail", async () => {
    m.choose("petra", { "mail-failed": "at-once" }, "10:00");
    for (let i = 0; i < 3; i++) {
      m.tell("jonas");
      m.server.next.push(gone);
      await m.run(2);
    }
    expect(state().failed).toBe(3);
    expect(told()).toHaveLength(1);
    seeNoticesOf(m.s.app, m.s.people.petra, { kinds: ["mail-failed"] });
    m.tell("jonas");
    m.server.next.push(gone);
    await m.run(2);
    expect(told()).toHaveLength(2);
    await m.run(24 * 60);
    expect(m.server.arrived).toEqual([]);
  });

  test("Try again sends it, for a manager alone, and not twice", async () => {
    m.tell("jonas");
    m.server.next.push(gone);
    await m.run(2);
    const id = state().unsent[0]?.id ?? "";
    expect(tryMailAgain(m.s.app, m.s.people.ines, id)).toMatchObject({ error: { status: 403 } });
    expect(tryMailAgain(m.s.app, m.s.people.petra, "another")).toMatchObject({ error: { status: 404 } });
    must(tryMailAgain(m.s.app, m.s.people.petra, id));
    await m.run();
    expect(m.server.arrived).toHaveLength(1);
    expect(tryMailAgain(m.s.app, m.s.people.petra, id)).toMatchObject({ error: { code: "sent-already" } });
  });

  test("a mail server that is down stops the run at the first mail, and the manager hears of it within the hour", async () => {
    await m.server.stop();
    m.choose("ines", { offered: "at-once" });
    m.tell("jonas");
    m.tell("ines", "offered");
    await m.run(1);
    expect(
      state()
        .unsent.map(({ attempts }) => attempts)
        .sort(),
    ).toEqual([0, 1]);
    for (let minute = 0; minute < 60; minute++) await m.run(1);
    expect(state()).toMatchObject({ waiting: 2, failed: 0 });
    expect(told()).toEqual([expect.stringContaining("No mail server is listening")]);
  });

  test("a mail server that is away for an hour: soon after it is back, each mail arrives once", async () => {
    const { port } = m.server;
    await m.server.stop();
    m.choose("ines", { offered: "at-once" });
    m.tell("jonas");
    for (let minute = 0; minute < 60; minute++) {
      if (minute === 20) m.tell("ines", "offered");
      await m.run(1);
    }
    expect(state()).toMatchObject({ waiting: 2, failed: 0 });
    const back = await startMailServer({ port });
    for (let minute = 0; minute < 10; minute++) await m.run(1, { ca: back.ca });
    const to = back.arrived.flatMap((mail) => mail.to).sort();
    await back.stop();
    expect(to).toEqual(["ines@tholepin.example", "jonas@tholepin.example"]);
    expect(state()).toMatchObject({ waiting: 0, failed: 0, unsent: [] });
  });

  test("one that stays away is given up after two days at the latest, and said", async () => {
    await m.server.stop();
    m.tell("jonas");
    for (let quarter = 0; quarter < 4 * 48 && state().failed === 0; quarter++) await m.run(15);
    expect(state()).toMatchObject({ waiting: 0, failed: 1 });
    expect(told()).toHaveLength(1);
  });
});

describe("overtaken", () => {
  const dropped = async () => {
    await m.run(1);
    expect(m.server.arrived).toEqual([]);
    expect(countMails(m.s.db)).toEqual({ waiting: 0, failed: 0, lastSentAt: null });
  };
  /** Queued, and refused once, so that something can happen before the next attempt. */
  const queued = async (who: "jonas" | "noor" = "jonas") => {
    m.tell(who);
    m.server.next.push(busy);
    await m.run(1);
    expect(countMails(m.s.db).waiting).toBe(1);
  };

  test("[INV-30] rights that were lost between queueing and sending: neither title nor mail goes out", async () => {
    must(sharePlan(m.s.app, m.s.people.jonas, m.planId, { userId: "noor", on: true }));
    m.choose("noor", { comment: "at-once" });
    await queued("noor");
    must(sharePlan(m.s.app, m.s.people.jonas, m.planId, { userId: "noor", on: false }));
    await dropped();
  });

  test("a plan that was deleted", async () => {
    await queued();
    must(deletePlan(m.s.app, m.s.people.jonas, m.planId));
    await dropped();
  });

  test("somebody who has left the studio", async () => {
    await queued();
    removeAccess(m.s.db, "jonas");
    await dropped();
  });

  test("what was seen in the app", async () => {
    await queued();
    seeNoticesOf(m.s.app, m.s.people.jonas, { planId: m.planId });
    await dropped();
  });

  test("somebody who wants no mail of it any more", async () => {
    await queued();
    m.choose("jonas", { comment: "off" });
    await dropped();
  });

  test.each([
    "",
    "jonas",
    "jonas@tholepin.example, all@elsewhere.example",
    "jonas@tholepin.example\r\nRCPT TO:<x@y.example>",
  ])("an address that mail cannot go to, %j: nothing is sent, and the manager is told", async (email) => {
    m.tell("jonas");
    m.s.db.raw.prepare("update user set email = ? where id = 'jonas'").run(email);
    await m.run(2);
    expect(m.server.arrived).toEqual([]);
    expect(told()).toEqual([expect.stringContaining("no e-mail address")]);
  });

  test("a mail that cannot be written keeps no other back; a zone that is not known is told in UTC", async () => {
    m.choose("ines", { offered: "at-once" });
    m.tell("jonas");
    m.tell("ines", "offered");
    m.server.next.push(busy, busy);
    await m.run(1);
    expect(state().waiting).toBe(2);
    m.s.db.raw.prepare("update notice set data_json = '[{' where user_id = 'jonas'").run();
    m.s.db.raw.prepare("update notice_choice set time_zone = 'Nowhere/Else' where user_id = 'ines'").run();
    await m.run(2);
    expect(m.server.arrived.map(({ to }) => to[0])).toEqual(["ines@tholepin.example"]);
    expect(m.server.arrived[0]?.mail.text).toContain("Monday 2 November, 09:00");
  });

  test("a server whose secret has changed: the password is asked for again, nothing is lost", async () => {
    const own = await openMailStudio({ user: { name: "studio", password: "kelp-and-rope-9" } });
    own.choose("jonas", { comment: "at-once" });
    own.tell("jonas");
    const app = { ...own.s.app, env: { ...own.s.app.env, secret: "another secret, long enough for a server" } };
    const { mailRun } = await import("#server/mail/mail-runs.ts");
    own.s.advance(60_000);
    await mailRun(app, { ca: own.server.ca });
    const { unsent } = must(readMailState(own.s.app, own.s.people.petra));
    expect(unsent).toMatchObject([{ problem: expect.stringContaining("Type it again") }]);
    await own.run(1);
    expect(own.server.arrived).toMatchObject([{ user: "studio" }]);
    await own.stop();
  });
});

describe("the timer", () => {
  test("sends, and stops while a server hangs: soon, and without a word to the database after it", async () => {
    m.tell("jonas");
    m.s.advance(60_000);
    const runs = startMailRuns({ app: m.s.app, everyMs: 5, smtp: { ca: m.server.ca } });
    await eventually("a mail arrived", () => m.server.arrived.length === 1);
    m.server.next.push({ at: "data", hang: true });
    m.tell("jonas");
    m.s.advance(60_000);
    await eventually("the second is on its way", () => m.server.next.length === 0);
    const begun = performance.now();
    await runs.stop();
    expect(performance.now() - begun).toBeLessThan(2500);
    const before = m.s.db.raw.prepare("select total_changes() as n").get();
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(m.s.db.raw.prepare("select total_changes() as n").get()).toEqual(before);
    expect(state().unsent).toMatchObject([{ attempts: 1, problem: null }]);
  });

  test("in a damaged database nothing is sent, since it could not be noted", async () => {
    m.tell("jonas");
    const damage = { ...m.s.db.damage, known: "page 7" };
    const { mailRun } = await import("#server/mail/mail-runs.ts");
    m.s.advance(120_000);
    await mailRun({ ...m.s.app, db: { ...m.s.db, damage } } as never, { ca: m.server.ca });
    expect(m.server.arrived).toEqual([]);
  });
});
