/**
 * The last step before a page is told "saved": what was committed is synced to the disk. Others already have the change,
 * which is in the log and survives a kill, so nobody waits for the disk to see what somebody else typed. One sync runs at
 * a time, and none begins too soon after the last: what comes meanwhile shares the next.
 */
import { setTimeout as sleep } from "node:timers/promises";
import type { EventLog } from "#server/base/log.ts";
import type { SyncMeter } from "./meter.ts";
import type { PageConnection } from "./page-connection.ts";

/** A connection, and how many of its messages are in the log. */
export interface Owed {
  readonly connection: PageConnection;
  readonly count: number;
  /** When the oldest of what is new arrived, by `performance.now()`. */
  readonly arrived: number | undefined;
}

export interface HardenerOptions {
  /** Syncs everything committed so far to the disk. */
  readonly sync: () => Promise<void>;
  readonly log: EventLog;
  readonly meter: SyncMeter;
  readonly retryMs: number;
  /** At least this long from the beginning of one sync to the next. */
  readonly everyMs: number;
}

export class Hardener {
  private waiting: Owed[] = [];
  /** Of whoever waits until all that was owed at some moment has been answered. */
  private listeners: (() => void)[] = [];
  private busy = false;
  private stopped = false;
  private readonly options: HardenerOptions;

  constructor(options: HardenerOptions) {
    this.options = options;
  }

  owe(answers: readonly Owed[]): void {
    if (answers.length === 0) return;
    sinceArrival(answers, (ms) => this.options.meter.relayed(ms));
    this.waiting.push(...answers);
    if (!this.busy) void this.run();
  }

  /** Resolves once all that is owed now has been answered, or after `limitMs`. */
  async settled(limitMs: number): Promise<void> {
    if (!this.busy) return;
    // One round may be under way, whose sync began before the newest was owed.
    const mine = new Promise<void>((resolve) => this.listeners.push(resolve));
    await Promise.race([mine, sleep(limitMs, undefined, { ref: false })]);
  }

  stop(): void {
    this.stopped = true;
  }

  private async run(): Promise<void> {
    this.busy = true;
    while (this.waiting.length > 0 && !this.stopped) {
      const [batch, listeners] = [this.waiting, this.listeners];
      [this.waiting, this.listeners] = [[], []];
      const from = performance.now();
      await this.synced();
      sinceArrival(batch, (ms) => this.options.meter.saved(ms));
      for (const { connection, count } of latest(batch)) connection.sendNews({ t: "saved", count });
      for (const heard of listeners) heard();
      const early = from + this.options.everyMs - performance.now();
      if (early > 0 && !this.stopped) await sleep(early, undefined, { ref: false });
    }
    this.busy = false;
    for (const heard of this.listeners.splice(0)) heard();
  }

  /** Retries until it succeeds: nothing is called saved before. */
  private async synced(): Promise<void> {
    while (!this.stopped) {
      try {
        return await this.options.sync();
      } catch (err) {
        this.options.log.error({ err }, "the log could not be synced to the disk; retrying");
        await new Promise((resolve) => setTimeout(resolve, this.options.retryMs));
      }
    }
  }
}

function sinceArrival(answers: readonly Owed[], measured: (ms: number) => void): void {
  const now = performance.now();
  for (const { arrived } of answers) if (arrived !== undefined) measured(now - arrived);
}

/** Counts only grow, so a connection that is owed several answers needs the last one alone. */
const latest = (batch: readonly Owed[]): Iterable<Owed> =>
  new Map(batch.map((owed) => [owed.connection, owed])).values();
