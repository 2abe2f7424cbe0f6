/** What the manager is shown of the log: fixed words and codes of the system, nothing that stands beside them. */
import { openSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { createLog } from "#server/base/log.ts";
import { createTroubles } from "#server/base/troubles.ts";
import { troubleLines } from "#server/health/trouble-words.ts";
import { eventually } from "#tests/support/eventually.ts";

const file = join(tmpdir(), `springline-log-${process.pid}`);
afterEach(() => rmSync(file, { force: true }));

test("errors and warnings are noted beside the log, which has everything", async () => {
  let at = 1000;
  const troubles = createTroubles(() => at);
  const log = createLog("info", { to: openSync(file, "w"), troubles });
  const full = Object.assign(new Error("write to /home/ines/plans"), { code: "ENOSPC" });
  log.info({ person: "Ines" }, "signed in");
  log.error({ err: full, document: "plan/hip-openers" }, "changes cannot be saved; they are kept and retried");
  at = 2000;
  log.error({ err: full, document: "plan/another" }, "changes cannot be saved; they are kept and retried");
  log.warn({ mail: "m1", problem: "550 <ines@tholepin.example> unknown" }, "a mail was not taken");
  log.error("user ines@tholepin.example not found");
  const said = troubleLines(troubles.list());
  expect(said.map(({ level, says }) => [level, says])).toEqual([
    ["error", "A part of the server reported an error."],
    ["warning", "A mail was not taken."],
    ["error", "Changes cannot be saved; they are kept and retried. The disk is full. 2 times since the start."],
  ]);
  expect(said[2]?.at).toBe(2000);
  expect(JSON.stringify([said, troubles.list()])).not.toMatch(/ines|hip|plan\/|550/i);
  await eventually("the log has it", () => readFileSync(file, "utf8").includes("hip-openers"));
});

test("twenty are kept, the latest, and strange codes are not taken over", () => {
  const troubles = createTroubles(() => 0);
  for (let n = 0; n < 50; n++) troubles.note([{}, `trouble ${n}`], 50);
  expect(troubles.list().length).toBe(20);
  expect(troubles.list()[0]?.words).toBe("trouble 49");
  troubles.note([{ err: { code: "Ines Prado" } }, "strange"], 40);
  troubles.note([undefined], 60);
  troubles.note([], 50);
  expect(troubles.list().find(({ words }) => words === "strange")?.code).toBeNull();
});
