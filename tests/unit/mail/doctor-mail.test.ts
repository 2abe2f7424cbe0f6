/** What the doctor says of e-mail: set up or not, when the last mail went, and what could not be sent. */
import { expect, test } from "vitest";
import { mailFinding } from "#server/doctor/mail.ts";
import { openMailStudio } from "#tests/support/mail-studio.ts";

test("not set up; set up; sent; failed", async () => {
  const m = await openMailStudio();
  const finding = () => mailFinding({ databaseFile: m.s.db.file });
  expect(mailFinding({ databaseFile: `${m.s.db.file}.none` }).is).toBe("unsure");
  expect(finding()).toMatchObject({ is: "right", found: "set up; none has been sent in the last 90 days." });
  m.choose("jonas", { comment: "at-once" });
  m.tell("jonas");
  await m.run(1);
  expect(finding().found).toBe("set up; the last one went 2026-11-02 09:01 UTC.");
  m.tell("jonas");
  m.server.next.push({ at: "rcpt", code: 550, says: "5.1.1 No such person here" });
  await m.run(1);
  expect(finding()).toMatchObject({ is: "wrong", found: expect.stringContaining("1 mail could not be sent") });
  m.s.db.raw.prepare("delete from studio_setting").run();
  expect(finding()).toMatchObject({ is: "right", found: expect.stringContaining("not set up") });
  await m.stop();
});
