/**
 * Limits how often a password may be guessed, per account and per network; only wrong guesses count. A browser that has
 * signed in to the account before is counted separately, so that strangers cannot lock its owner out.
 *
 * NIST SP 800-63B (5.2.2) allows at most 100 consecutive wrong guesses on an account and suggests waits that grow from
 * 30 seconds to an hour. The limits per account stay close to that within a day; those per network are our own choice.
 */
import { availableParallelism } from "node:os";
import type { Db } from "#db/connection.ts";
import { userIdByEmail } from "#db/repos/people-repo.ts";
import type { Env } from "#server/base/env.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import { type BackoffRules, GuessBackoff, waitInWords } from "#server/limits/guess-backoff.ts";
import { KeyedQueue } from "#server/limits/keyed-queue.ts";
import { CLIENT_NETWORK_HEADER } from "#server/limits/network.ts";
import { knownBrowser } from "./known-browser.ts";

const MINUTE = 60_000;
const ACCOUNT: BackoffRules = {
  free: 5,
  firstWaitMs: MINUTE / 2,
  longestWaitMs: 15 * MINUTE,
  forgetMs: 24 * 60 * MINUTE,
  keys: 100_000,
};
/**
 * Addresses that belong to nobody are counted too, or the wait would reveal who has an account. They are counted
 * separately, so that a flood of them cannot make the server forget a real account.
 */
const NOBODY: BackoffRules = { ...ACCOUNT, keys: 10_000 };
const NETWORK: BackoffRules = {
  free: 20,
  firstWaitMs: 5000,
  longestWaitMs: 2 * MINUTE,
  forgetMs: 60 * MINUTE,
  keys: 10_000,
};
/** Guesses of one network that run at once: a team signing in together need not queue, yet a flood is still counted. */
const NETWORK_WIDTH = 4;

/**
 * Passwords hashed at once. Each takes a tenth of a second of a processor, on the threads that also write to the disk.
 * Unknown browsers queue behind each other; a known browser does not wait for them.
 */
const HASHES = availableParallelism() > 2 ? 2 : 1;

/** The result of a guess. `neither`: the password was never compared, so it does not count. */
export type GuessOutcome = "right" | "wrong" | "neither";

type Guess<T> = () => Promise<{ readonly verdict: GuessOutcome; readonly value: T }>;
interface App {
  readonly db: Db;
  readonly env: Env;
  now(): number;
}

/** One thing that is counted, and the message for somebody who has to wait because of it. */
interface Count {
  readonly tries: GuessBackoff;
  readonly key: string;
  readonly width: number;
  /** The browser has signed in before. */
  readonly known?: boolean;
  refusal(time: string): string;
}

class GuessLimit {
  private readonly turns = new KeyedQueue();
  private readonly hashing = new KeyedQueue();
  private readonly accounts = new GuessBackoff(ACCOUNT);
  private readonly nobody = new GuessBackoff(NOBODY);
  private readonly networks = new GuessBackoff(NETWORK);

  signIn(app: App, email: string, headers: Headers): Count[] {
    const address = email.trim().toLowerCase();
    const userId = userIdByEmail(app.db, address);
    const browser = userId && knownBrowser(app.env, headers, userId);
    if (userId && browser) return [{ ...ONE, tries: this.accounts, key: `${userId} in ${browser}` }];
    const tries = userId ? this.accounts : this.nobody;
    const key = userId ? `account ${userId}` : `nobody ${address.slice(0, 254)}`;
    const network = headers.get(CLIENT_NETWORK_HEADER);
    const counts: Count[] = [{ tries, key, width: 1, refusal: accountRefusal }];
    // Where networks cannot be told apart, a limit per network would lock everybody out: only accounts are limited.
    if (network) counts.unshift({ ...ALL_OF_IT, tries: this.networks, key: `network ${network}` });
    return counts;
  }

  /** The current password of somebody signed in: a stolen session must not be a way to find it out. */
  ownPassword = (userId: string): Count[] => [{ ...ONE, tries: this.accounts, key: `${userId} signed in` }];

  /** Runs the guess unless one of the counts has to wait, and counts it. Errors: 429 too-many-tries, `details.seconds`. */
  run<T>(app: App, counts: readonly Count[], guess: Guess<T>): Promise<Result<T>> {
    const line = counts.every(({ known }) => known) ? "known" : "strangers";
    return this.counted(app, counts, () => this.hashing.take(line, HASHES, guess));
  }

  private async counted<T>(app: App, counts: readonly Count[], guess: Guess<T>): Promise<Result<T>> {
    const [count, ...others] = counts;
    if (!count) return ok((await guess()).value);
    return this.turns.take(count.key, count.width, async () => {
      const wait = count.tries.waitMs(count.key, app.now());
      if (wait > 0) return tooMany(count, wait);
      const told = async () => {
        const done = await guess();
        if (done.verdict === "wrong") count.tries.failed(count.key, app.now());
        // Only for one account: other guesses of the network may be somebody else's.
        if (done.verdict === "right" && count.width === 1) count.tries.forgive(count.key);
        return done;
      };
      return this.counted(app, others, told);
    });
  }
}

const accountRefusal = (time: string) =>
  `Too many wrong passwords for this email address. Wait ${time} and try again, or use a browser that has signed in with it before.`;
const ALL_OF_IT = {
  width: NETWORK_WIDTH,
  refusal: (time: string) => `Too many wrong passwords from this network. Wait ${time} and try again.`,
};
const ONE = {
  width: 1,
  known: true,
  refusal: (time: string) => `Too many wrong passwords. Wait ${time} and try again.`,
};

function tooMany(count: Count, waitMs: number): Result<never> {
  const seconds = Math.ceil(waitMs / 1000);
  return fail(429, "too-many-tries", count.refusal(waitInWords(waitMs)), { seconds });
}

const limits = new WeakMap<Db, GuessLimit>();

/** The limit of the running program: one per database. */
export function guessLimitOf(app: { readonly db: Db }): GuessLimit {
  const limit = limits.get(app.db) ?? new GuessLimit();
  limits.set(app.db, limit);
  return limit;
}
