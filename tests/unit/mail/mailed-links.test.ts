/** Invitations and reset links by e-mail, over a real SMTP server: what arrives opens its door, and what was refused is said. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { listRecord } from "#db/repos/record-repo.ts";
import type { SmtpOptions } from "#server/mail/smtp.ts";
import { readJoin } from "#server/people/join.ts";
import { forgottenPassword, inviteByMail, resetByMail } from "#server/people/mailed-links.ts";
import { listResetLinks } from "#server/people/open-resets.ts";
import { readResetLink, resetPassword } from "#server/people/reset-password.ts";
import { eventually } from "#tests/support/eventually.ts";
import { ADDRESS, type MailStudio, openMailStudio } from "#tests/support/mail-studio.ts";
import { must } from "#tests/support/plan-studio.ts";

let m: MailStudio;
let wire: SmtpOptions;
beforeEach(async () => {
  m = await openMailStudio();
  wire = { ca: m.server.ca, waitMs: 2000 };
});
afterEach(() => m.stop());

const petra = () => ({ actor: m.s.people.petra, name: "Petra Vale" });
const ask = (email: string, from = "192.0.2.7") =>
  forgottenPassword(m.s.app, { email }, new Headers({ "x-springline-network": from }), wire);
/** The link in a mail: the same in its text and in its HTML. */
function linkIn(n: number): string {
  const mail = m.server.arrived[n]?.mail;
  const [link = ""] = /https:\/\/\S+/.exec(mail?.text ?? "") ?? [];
  expect(mail?.html).toContain(`href="${link}"`);
  expect(link.startsWith(`${ADDRESS}/`)).toBe(true);
  return link;
}
const lastOf = (link: string) => link.split("/").at(-1) ?? "";

test("an invitation arrives, says who sends it, and its link opens the door", async () => {
  const asked = { email: "noa@tholepin.example", name: "Noa Lind", roles: ["trainee" as const], send: true };
  const made = must(await inviteByMail(m.s.app, petra(), asked, wire));
  expect(made.mailed).toEqual({ sent: true });
  expect(m.server.arrived).toMatchObject([{ to: ["noa@tholepin.example"], encrypted: true }]);
  const { mail } = m.server.arrived[0] ?? {};
  expect(mail?.text).toContain("Petra Vale invites you to join");
  expect(mail?.subject).toBe("Springline: an invitation for you");
  // It was asked for by a person and is no list's: RFC 2369 has nothing to say about it.
  expect(mail?.headers.has("list")).toBe(false);
  const link = linkIn(0);
  expect(new URL(link).pathname).toBe(new URL(made.link).pathname);
  expect(must(readJoin(m.s.app, lastOf(link)))).toMatchObject({ email: "noa@tholepin.example" });
});

test("not asked for: not sent; without the right: neither made nor sent", async () => {
  const asked = { email: "noa@tholepin.example", roles: ["trainee" as const] };
  expect(must(await inviteByMail(m.s.app, petra(), asked, wire)).mailed).toBeUndefined();
  const other = { actor: m.s.people.jonas, name: "Jonas" };
  expect(await inviteByMail(m.s.app, other, { ...asked, send: true }, wire)).toMatchObject({ error: { status: 403 } });
  expect(await resetByMail(m.s.app, other, "marta", { send: true }, wire)).toMatchObject({ error: { status: 403 } });
  expect(m.server.arrived).toEqual([]);
});

test("refused by the mail server: the link is made all the same, and the manager is told what was said", async () => {
  m.server.next.push({ at: "rcpt", code: 550, says: "No such mailbox" });
  const made = must(await resetByMail(m.s.app, petra(), "marta", { send: true }, wire));
  expect(made.mailed).toEqual({ sent: false, says: expect.stringContaining("No such mailbox") });
  expect(must(readResetLink(m.s.app, lastOf(made.link))).name).toBeTruthy();
  await m.server.stop();
  const again = must(await resetByMail(m.s.app, petra(), "marta", { send: true }, wire));
  expect(again.mailed).toEqual({ sent: false, says: "No mail server is listening at this name and port." });
});

test("a forgotten password: one mail to its person, works once, on record; nothing for an address that nobody has", async () => {
  expect(ask("nobody@tholepin.example")).toEqual(ask("marta@tholepin.example"));
  await eventually("it arrives", () => m.server.arrived.length === 1);
  expect(m.server.arrived[0]?.to).toEqual(["marta@tholepin.example"]);
  const token = lastOf(linkIn(0));
  expect(must(listResetLinks(m.s.app, m.s.people.petra))).toMatchObject([{ byMail: true, byName: null }]);
  must(await resetPassword(m.s.app, token, "quite another password"));
  expect(await resetPassword(m.s.app, token, "once more, please")).toMatchObject({ error: { code: "reset-used" } });
  const kinds = listRecord(m.s.db, 0, 1000).map(({ kind }) => kind);
  expect(kinds.slice(-2)).toEqual(["reset-asked", "password-reset"]);
});

test("it works for an hour, is replaced by the next, and takes no manager's link away", async () => {
  const byManager = must(await resetByMail(m.s.app, petra(), "marta", {}, wire));
  ask("marta@tholepin.example");
  await eventually("it arrives", () => m.server.arrived.length === 1);
  ask("marta@tholepin.example");
  await eventually("so does the next", () => m.server.arrived.length === 2);
  const [first, second] = [linkIn(0), linkIn(1)].map(lastOf);
  expect(readResetLink(m.s.app, first ?? "")).toMatchObject({ error: { code: "reset-unknown" } });
  must(readResetLink(m.s.app, second ?? ""));
  must(readResetLink(m.s.app, lastOf(byManager.link)));
  m.s.advance(60 * 60_000);
  expect(readResetLink(m.s.app, second ?? "")).toMatchObject({ error: { code: "reset-expired" } });
  must(readResetLink(m.s.app, lastOf(byManager.link)));
});

test("asked for in a loop: the person gets two mails in a while, a network is told to wait, others are not", async () => {
  const answers = Array.from({ length: 12 }, () => ask("marta@tholepin.example"));
  expect(answers.slice(0, 10).every(({ ok }) => ok)).toBe(true);
  expect(answers.slice(10)).toMatchObject([{ error: { status: 429 } }, { error: { code: "too-many-asked" } }]);
  must(ask("jonas@tholepin.example", "198.51.100.4"));
  await eventually("they arrive", () => m.server.arrived.length === 3);
  expect(m.server.arrived.flatMap(({ to }) => to).sort()).toEqual([
    "jonas@tholepin.example",
    ...["marta@tholepin.example", "marta@tholepin.example"],
  ]);
});

test("using one link ends the person's others", async () => {
  const byManager = must(await resetByMail(m.s.app, petra(), "marta", {}, wire));
  ask("marta@tholepin.example");
  await eventually("it arrives", () => m.server.arrived.length === 1);
  must(await resetPassword(m.s.app, lastOf(linkIn(0)), "quite another password"));
  expect(readResetLink(m.s.app, lastOf(byManager.link))).toMatchObject({ error: { code: "reset-unknown" } });
});

test("a database that refuses to write: the answer is the same, nothing is mailed, and the program goes on", async () => {
  m.s.db.raw.pragma("query_only = ON");
  expect(ask("marta@tholepin.example")).toEqual({ ok: true, value: { asked: true } });
  await new Promise((done) => setTimeout(done, 50));
  m.s.db.raw.pragma("query_only = OFF");
  expect(m.server.arrived).toEqual([]);
  must(ask("jonas@tholepin.example"));
  await eventually("the next arrives", () => m.server.arrived.length === 1);
});
