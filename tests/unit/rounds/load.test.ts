/** A plan of 60 items with 20 rounds and 200 threads: what its page and its review wait for. */
import { expect, test } from "vitest";
import { insertMoment } from "#db/repos/moment-repo.ts";
import { endRoundRow, insertRound } from "#db/repos/round-repo.ts";
import { insertComment, insertThread } from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { canonicalJson, sha256Hex } from "#lib/canonical/canonical.ts";
import { changedPlates } from "#lib/plan-diff/changed-plates.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { importPlan } from "#server/plans/import-plan.ts";
import { readPoint, readRounds } from "#server/rounds/read-rounds.ts";
import { cpuMs } from "#tests/support/cpu-time.ts";
import { longClass } from "#tests/support/long-class.ts";
import { must, openStudio } from "#tests/support/plan-studio.ts";

const ROUNDS = 20;
const MOST_MS = 100;

const finding = (i: number): Finding => ({
  rule: "set-up-not-said",
  level: i % 3 === 0 ? "info" : "look",
  items: [`n${i}`],
  message: `Seated row, left: it is the left side now, and no set-up line says so. Name the side, or put in the live field. ${i}`,
  values: { side: "left", seconds: i },
  key: `set-up-not-said:side:n${i}`,
});

test("[INV-27] 20 rounds of 60 plates are listed, read and compared in under 100 ms each", async () => {
  const s = openStudio();
  const { ines, jonas } = s.people;
  const plan = longClass(60, 300);
  const { id } = must(importPlan(s.app, jonas, plan));
  const findings = Array.from({ length: 80 }, (_, i) => finding(i));
  const threads = Array.from({ length: 200 }, (_, i) => ({ id: `t${i}`, settled: i % 2 === 0, comments: 3 }));
  inTransaction(s.db, () => {
    for (const thread of threads) {
      insertThread(s.db, { id: thread.id, planId: id, anchor: { kind: "plan" }, at: 1 });
      insertComment(s.db, { id: `c${thread.id}`, threadId: thread.id, authorId: ines.id, body: "Slower", at: 1 });
    }
    for (let number = 1; number <= ROUNDS; number++) {
      insertRound(s.db, { planId: id, number, offeredBy: jonas.id, offeredAt: number * 1000 });
      for (const kind of ["offered", "returned"] as const) {
        const planJson = canonicalJson({ ...plan, notes: `${number} ${kind}` });
        const at = number * 1000 + (kind === "returned" ? 500 : 0);
        const moment = { planId: id, round: number, kind, at, actorId: ines.id, note: "Slower", findings, threads };
        insertMoment(s.db, { ...moment, hash: sha256Hex(planJson), planJson });
      }
      const end = {
        outcome: "returned",
        endedBy: ines.id,
        endedAt: number * 1000 + 500,
        mainPoints: [],
        edition: null,
      } as const;
      endRoundRow(s.db, { planId: id, number }, end);
    }
  });
  must(readRounds(s.app, ines, id)); // statements are prepared once
  const listed = cpuMs(() => must(readRounds(s.app, ines, id)));
  const { rounds, usual } = must(readRounds(s.app, ines, id));
  expect(rounds).toHaveLength(ROUNDS);
  const text = cpuMs(() => must(readPoint(s.app, ines, id, usual ?? "")));
  const other = {
    ...plan,
    items: plan.items.map((item) => (item.kind === "move" ? { ...item, seconds: item.seconds + 5 } : item)),
  };
  changedPlates(plan, other);
  const compared = cpuMs(() => changedPlates(plan, other));
  const told = cpuMs(() => planChanges(plan, other));
  console.info(
    `rounds ${listed.toFixed(0)} ms, text ${text.toFixed(0)} ms, compared ${compared.toFixed(0)} ms, told ${told.toFixed(0)} ms`,
  );
  for (const ms of [listed, text, compared, told]) expect(ms).toBeLessThan(MOST_MS);
  await s.stop();
});
