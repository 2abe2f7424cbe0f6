/**
 * The same thing sent twice: by a second press, by a page that lost the answer, by two pages. Whoever sends the same again
 * within a few seconds is answered as the first time, and nothing is stored. Kept in memory: after a restart there is at most
 * one more.
 */
import { createHash } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import type { Result } from "#server/base/result.ts";

/** Nobody writes the same words twice in so short a time and means both. Our own choice, ms. */
const SAME_MS = 10_000;
/** How many answers are remembered in all; the oldest goes first. */
const REMEMBERED = 2000;

interface Answered {
  readonly at: number;
  readonly answer: Result<unknown>;
}

const answersOf = oncePerDatabase(() => new Map<string, Answered>());

interface SameSetup {
  readonly db: Db;
  /** ms since the epoch. */
  now(): number;
}

/** Who sent what to where: `sent` is the body as it was read. */
interface Sending<T> {
  readonly userId: string;
  /** What is made, and on what: "thread plan-7". */
  readonly to: string;
  readonly sent: unknown;
  /** Whether what was made still is as it was made; else the same is made again. Always, when left out. */
  stands?(made: T): boolean;
}

/** Runs `make`, which is synchronous, unless the same was made a moment ago. A refusal is not remembered. */
export function onceOnly<T>({ db, now }: SameSetup, sending: Sending<T>, make: () => Result<T>): Result<T> {
  const answers = answersOf(db);
  const { userId, to, sent, stands } = sending;
  const key = createHash("sha256")
    .update(JSON.stringify([userId, to, sent]))
    .digest("base64");
  const at = now();
  const known = answers.get(key);
  const before = known && at - known.at < SAME_MS ? (known.answer as Result<T>) : undefined; // `to` names what is made
  if (before?.ok && (stands?.(before.value) ?? true)) return before;
  const answer = make();
  if (!answer.ok) return answer;
  answers.delete(key);
  answers.set(key, { at, answer });
  for (const [old, { at: then }] of answers) {
    if (answers.size <= REMEMBERED && at - then < SAME_MS) break;
    answers.delete(old);
  }
  return answer;
}
