/**
 * How often a password may be guessed: per account and per network, wrong guesses only. A browser that has signed in to
 * the account before has a count of its own, so that strangers can use up neither its account's nor its network's.
 *
 * NIST SP 800-63B (5.2.2) asks for at most 100 wrong tries in a row on an account and names waits that grow from
 * 30 seconds up to an hour as a means; the account's numbers keep near that in a day. The network's are our own choice.
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
/** Addresses that belong to nobody are counted too, or the waiting would tell who is here; apart, so that no number of them makes the server forget an account. */
const NOBODY: BackoffRules = { ...ACCOUNT, keys: 10_000 };
const NETWORK: BackoffRules = {
  free: 20,
  firstWaitMs: 5000,
  longestWaitMs: 2 * MINUTE,
  forgetMs: 60 * MINUTE,
  keys: 10_000,
};
/** Of one network: a team that comes in together need not queue, a flood of guesses is counted before it is through. */
const NETWORK_WIDTH = 4;

/**
 * Passwords compared at once: each takes a processor for a tenth of a second, on the threads that also bring words to the
 * disk. Strangers wait for each other; whoever has been in before does not wait for strangers.
 */
const HASHES = availableParallelism() > 2 ? 2 : 1;

/** What became of a guess: one that never got to the password counts for nothing. */
export type GuessOutcome = "right" | "wrong" | "neither";

type Guess<T> = () => Promise<{ readonly verdict: GuessOutcome; readonly value: T }>;
interface App {
  readonly db: Db;
  readonly env: Env;
  now(): number;
}

/** One thing that is counted, and the sentence for whoever has to wait for it. */
interface Count {
  readonly tries: GuessBackoff;
  readonly key: string;
  readonly width: number;
  /** Of somebody who has been in before. */
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
    // Where all come by one address its limit would be everybody's: the accounts' own have to do.
    if (network) counts.unshift({ ...ALL_OF_IT, tries: this.networks, key: `network ${network}` });
    return counts;
  }

  /** The present password of somebody who is signed in: whoever took their session may not find it out here. */
  ownPassword = (userId: string): Count[] => [{ ...ONE, tries: this.accounts, key: `${userId} signed in` }];

  /** Runs the guess when no count has to wait, and counts it. Errors: 429 too-many-tries, with `details.seconds`. */
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
        // A network's other guesses may be another person's.
        if (done.verdict === "right" && count.width === 1) count.tries.forgive(count.key);
        return done;
      };
      return this.counted(app, others, told);
    });
  }
}

const accountRefusal = (time: string) =>
  `Too many wrong passwords for this e-mail address. Wait ${time} and try again, or use a browser that has signed in with it before.`;
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

/** The one limit of a running program. */
export function guessLimitOf(app: { readonly db: Db }): GuessLimit {
  const limit = limits.get(app.db) ?? new GuessLimit();
  limits.set(app.db, limit);
  return limit;
}
