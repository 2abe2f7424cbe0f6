/**
 * What was turned away, counted and told as one line a minute and cause: whoever can send frames must not be able to fill
 * the disk through the log.
 */
import type { EventLog } from "#server/base/log.ts";

/** Names in one line; how many there were is told all the same. */
const NAMED = 5;

interface Cause {
  count: number;
  readonly people: Set<string>;
}

export class RefusalLog {
  /** Since the start. */
  total = 0;
  private readonly causes = new Map<string, Cause>();
  private timer: NodeJS.Timeout | undefined;
  private readonly log: EventLog;
  private readonly everyMs: number;

  constructor(log: EventLog, everyMs: number) {
    this.log = log;
    this.everyMs = everyMs;
  }

  /** `cause` is one of a few words of ours, never what somebody sent. */
  note(cause: string, count = 1, userId?: string): void {
    this.total += count;
    const known = this.causes.get(cause) ?? { count: 0, people: new Set() };
    known.count += count;
    if (userId !== undefined && known.people.size < NAMED) known.people.add(userId);
    this.causes.set(cause, known);
    this.timer ??= setTimeout(() => this.tell(), this.everyMs).unref();
  }

  /** Says what has not been said yet. */
  tell(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    for (const [cause, { count, people }] of this.causes)
      this.log.warn({ cause, count, people: [...people] }, "turned away");
    this.causes.clear();
  }
}
