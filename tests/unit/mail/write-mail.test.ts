/** What a mail holds as it arrives, and what it never holds (RFC 5322, 3834, 2369). */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { isNoticeKind, NOTICE_KINDS } from "#lib/notices/kinds.ts";
import { subjectLine } from "#server/mail/write-mail.ts";
import type { Arrived } from "#tests/support/mail-server.ts";
import { ADDRESS, type MailStudio, openMailStudio } from "#tests/support/mail-studio.ts";

let m: MailStudio;
beforeEach(async () => {
  m = await openMailStudio();
});
afterEach(() => m.stop());

/** Tells Jonas at once of something and gives the mail as it arrived. */
async function arrived(kind: Parameters<MailStudio["tell"]>[1] = "comment"): Promise<Arrived> {
  m.choose("jonas", { [kind]: "at-once" });
  m.tell("jonas", kind);
  await m.run(2);
  const mail = m.server.arrived.at(-1);
  if (!mail) throw new Error("no mail has arrived");
  return mail;
}
const setTitle = (title: string) => m.s.db.raw.prepare("update plan set title = ?").run(title);
const setName = (name: string) => m.s.db.raw.prepare("update user set name = ? where id = 'ines'").run(name);
/** The header section, unfolded (RFC 5322, 2.2.3). */
const headerLines = (raw: string) => (raw.split("\r\n\r\n")[0] ?? "").replace(/\r\n[ \t]+/g, " ").split("\r\n");

describe("headers", () => {
  test("one of each that RFC 5322, 3.6 asks for, and those of a program's mail", async () => {
    const { raw, mail } = await arrived();
    const lines = headerLines(raw);
    for (const name of ["From", "To", "Subject", "Date", "Message-ID", "MIME-Version", "Content-Type"]) {
      expect(lines.filter((line) => line.toLowerCase().startsWith(`${name.toLowerCase()}:`))).toHaveLength(1);
    }
    expect(lines).toContain("Auto-Submitted: auto-generated"); // RFC 3834, 5
    expect(lines).toContain(`List-Unsubscribe: <${ADDRESS}/notices>`); // RFC 2369, 3.2
    expect(lines.some((line) => /^X-Mailer:/i.test(line))).toBe(false);
    expect(mail.from?.value).toEqual([{ address: "studio@tholepin.example", name: "Tholepin Strength" }]);
    expect(mail.messageId).toMatch(/^<[\w-]+@tholepin\.example>$/);
  });

  test("no line is longer than 998 characters (RFC 5322, 2.1.1), with a title of 10,000", async () => {
    setTitle(`Säule ${"ü".repeat(10_000)}`);
    const { raw, mail } = await arrived();
    expect(Math.max(...raw.split("\r\n").map((line) => line.length))).toBeLessThanOrEqual(998);
    expect(mail.text).toContain("“Säule üüü");
    expect(mail.text?.length).toBeLessThan(1000);
  });

  test("what somebody typed as a title or a name adds no header, no recipient and no tag", async () => {
    setTitle("Pull\r\nBcc: all@elsewhere.example\r\n\r\n<script>alert(1)</script><img src=//elsewhere.example/x>");
    setName('Ines" <ines@elsewhere.example>,\r\nBcc: more@elsewhere.example');
    m.s.db.raw.prepare("update user set name = ? where id = 'jonas'").run("Jonas\r\nBcc: x@elsewhere.example, y");
    m.s.db.raw.prepare("update studio set name = ?").run("Tholepin\r\nReply-To: z@elsewhere.example");
    const { raw, mail, to } = await arrived();
    expect(to).toEqual(["jonas@tholepin.example"]);
    expect(headerLines(raw).filter((line) => /^(bcc|cc|reply-to):/i.test(line))).toEqual([]);
    const written = Array.isArray(mail.to) ? [] : (mail.to?.value ?? []);
    expect(written.map(({ address }) => address)).toEqual(["jonas@tholepin.example"]);
    expect(mail.html).not.toMatch(/<script|<img/);
    expect(mail.html).toContain("&lt;script&gt;");
  });
});

describe("subject", () => {
  test("[INV-30] names no person, no plan and nothing else of the studio, for every kind and number", async () => {
    setTitle("Pregnancy and back pain");
    const kinds = Object.keys(NOTICE_KINDS).filter(isNoticeKind);
    const fixed = new Set([
      ...["Springline: a plan waits to be read", "Springline: something new about a plan of yours"],
      ...["Springline: a class of yours has changed", "Springline: a month is signed off"],
      "Springline: a backup could not be made",
      ...["Springline: something new for you", "Springline: 7 things wait for you"],
    ]);
    for (const kind of kinds) {
      expect(fixed).toContain(subjectLine([{ kind }]));
      expect(fixed).toContain(subjectLine(Array.from({ length: 7 }, () => ({ kind }))));
    }
    const { mail } = await arrived("returned");
    expect(mail.subject).toBe("Springline: something new about a plan of yours");
  });
});

describe("body", () => {
  test("text and HTML say the same, with names, title and a link to the very place", async () => {
    const { mail } = await arrived();
    const place = `${ADDRESS}/plans/${m.planId}#thread-t1`;
    for (const body of [mail.text ?? "", typeof mail.html === "string" ? mail.html : ""]) {
      expect(body).toContain("Ines commented on “Pull and press”.");
      expect(body).toContain(place);
      expect(body).toContain("Monday 2 November, 09:00");
      expect(body).toContain(`${ADDRESS}/notices`);
    }
  });

  test("links lead to the studio's own address alone, and nothing is fetched when it is opened", async () => {
    setTitle('See https://elsewhere.example/x "now"');
    const { mail } = await arrived();
    const html = typeof mail.html === "string" ? mail.html : "";
    const links = [...html.matchAll(/(?:href|src|action|background)\s*=\s*"([^"]*)"/g)].map(([, link = ""]) => link);
    expect(links.length).toBeGreaterThan(1);
    for (const link of links) expect(new URL(link).origin).toBe(ADDRESS);
    expect(html).not.toMatch(/<(img|iframe|link|style|object|video|audio|form)\b|url\(|\?utm|\/track/i);
  });

  test("the words of comments and notes are in no mail", async () => {
    const { openThread } = await import("#server/threads/threads.ts");
    m.choose("jonas", { comment: "at-once" });
    openThread(m.s.app, m.s.people.ines, m.planId, { anchor: { kind: "plan" }, body: "Mind her left wrist" });
    await m.run(2);
    expect(m.server.arrived).toHaveLength(1);
    expect(m.server.arrived[0]?.raw).not.toContain("wrist");
    expect(m.server.arrived[0]?.mail.text).toContain("Ines commented on");
  });

  test("of more than fifty, fifty are written out and the rest is counted", async () => {
    m.choose("jonas", { comment: "at-once" });
    for (let i = 0; i < 62; i++) m.tell("jonas");
    await m.run(2);
    const text = m.server.arrived[0]?.mail.text ?? "";
    expect(text.match(/Ines commented/g)).toHaveLength(50);
    expect(text).toContain("And 12 more.");
    expect(m.server.arrived[0]?.mail.subject).toBe("Springline: 62 things wait for you");
  });
});
