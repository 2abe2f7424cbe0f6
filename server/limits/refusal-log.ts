/**
 * Counts what was refused and logs one line per cause and minute, so that a flood of frames cannot fill the disk with log
 * lines.
 */
import type { EventLog } from "#server/base/log.ts";

/** How many people are named in one line; the count covers all of them. */
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
  private readonly heard: (cause: string, count: number) => void;

  /** `heard` is told of each refusal at once. */
  constructor(log: EventLog, everyMs: number, heard: (cause: string, count: number) => void = () => undefined) {
    this.log = log;
    this.everyMs = everyMs;
    this.heard = heard;
  }

  /** `cause` is one of a few fixed texts, never something that was sent. */
  note(cause: string, count = 1, userId?: string): void {
    this.total += count;
    this.heard(cause, count);
    const known = this.causes.get(cause) ?? { count: 0, people: new Set() };
    known.count += count;
    if (userId !== undefined && known.people.size < NAMED) known.people.add(userId);
    this.causes.set(cause, known);
    this.timer ??= setTimeout(() => this.tell(), this.everyMs).unref();
  }

  /** Logs what has not been logged yet. */
  tell(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    for (const [cause, { count, people }] of this.causes)
      this.log.warn({ cause, count, people: [...people] }, "refused");
    this.causes.clear();
  }
}
