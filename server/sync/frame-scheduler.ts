/**
 * What people's frames cost the one thread that serves everybody, told in milliseconds of it. In a turn of the event loop
 * only so much is worked through, one frame of each person after the other; and whoever has used up what one person may
 * have is read no further until that is paid off. Nothing is refused and nothing lost: their own sockets wait.
 */
import type { Limits } from "./limits.ts";

/** What is asked of a socket: to hand over nothing for a while. */
export interface Readable {
  pause(): void;
  resume(): void;
}
export type FrameSchedulerLimits = Pick<Limits, "turnMs" | "personBurstMs" | "personPercent">;

/** One socket's work, in order. */
export interface FrameLane {
  /** Now where its person may, else in its turn. */
  take(work: () => void): void;
  /** Now, at its person's expense: what they have said already. */
  pay(work: () => void): void;
  /** The socket has gone, and with it what still waits. */
  end(): void;
}

/** One person's: work of all their sockets, and what they owe. */
interface Purse {
  owedMs: number;
  /** When that was told. */
  at: number;
  lanes: number;
  /** Sockets with work that waits, the one whose turn is next first. */
  readonly waiting: Set<SocketLane>;
}

/** At least this long (ms) between two looks at whoever owes too much. */
const LOOK_MS = 10;
/** People that are remembered although they have no socket: coming back costs what leaving left. */
const REMEMBERED = 1000;

export class FrameScheduler {
  private readonly purses = new Map<string, Purse>();
  /** People with work that waits, in turn. */
  private readonly waiting = new Set<Purse>();
  private spentMs = 0;
  private turn: NodeJS.Immediate | undefined;
  private look: NodeJS.Timeout | undefined;
  private readonly limits: FrameSchedulerLimits;
  private readonly now: () => number;

  constructor(limits: FrameSchedulerLimits, now: () => number = () => performance.now()) {
    this.limits = limits;
    this.now = now;
  }

  lane(socket: Readable, userId: string): FrameLane {
    const purse = this.purses.get(userId) ?? { owedMs: 0, at: this.now(), lanes: 0, waiting: new Set() };
    if (this.purses.size > REMEMBERED) this.forget();
    this.purses.set(userId, purse);
    purse.lanes++;
    return new SocketLane(this, purse, socket);
  }

  mayGo(purse: Purse): boolean {
    return this.spentMs < this.limits.turnMs && this.solvent(purse);
  }

  /** Does a piece of work at its person's expense. */
  run(purse: Purse, work: () => void): void {
    const from = this.payOff(purse);
    try {
      work();
    } finally {
      const ms = this.now() - from;
      this.spentMs += ms;
      purse.owedMs += ms;
      this.turn ??= setImmediate(() => this.nextTurn());
    }
  }

  wait(purse: Purse, lane: SocketLane): void {
    purse.waiting.add(lane);
    this.waiting.add(purse);
    this.turn ??= setImmediate(() => this.nextTurn());
  }

  private solvent(purse: Purse): boolean {
    if (purse.owedMs >= this.limits.personBurstMs) this.payOff(purse);
    return purse.owedMs < this.limits.personBurstMs;
  }

  /** What time alone has paid. Gives the time. */
  private payOff(purse: Purse): number {
    const now = this.now();
    purse.owedMs = Math.max(0, purse.owedMs - ((now - purse.at) * this.limits.personPercent) / 100);
    purse.at = now;
    return now;
  }

  private nextTurn(): void {
    this.turn = undefined;
    // What one frame took beyond a turn's share is taken off the next ones: others are heard between two such frames.
    this.spentMs = Math.max(0, this.spentMs - this.limits.turnMs);
    let owing = 0;
    for (const purse of this.waiting) {
      if (this.spentMs >= this.limits.turnMs || owing === this.waiting.size) break;
      // Behind all others, to be come to again: a set is gone through to its end, wherever that is by then.
      this.waiting.delete(purse);
      if (purse.waiting.size === 0) continue;
      this.waiting.add(purse);
      if (this.solvent(purse)) this.workOff(purse);
      owing = this.solvent(purse) ? 0 : owing + 1;
    }
    if (owing < this.waiting.size || this.spentMs > 0) this.turn ??= setImmediate(() => this.nextTurn());
    else if (this.waiting.size > 0) this.look ??= setTimeout(() => this.lookAgain(), LOOK_MS).unref();
  }

  private lookAgain(): void {
    this.look = undefined;
    this.nextTurn();
  }

  /** One piece of work of one socket. */
  private workOff(purse: Purse): void {
    const [lane] = purse.waiting;
    if (!lane) return;
    purse.waiting.delete(lane);
    this.run(purse, lane.next());
    if (lane.isWaiting) purse.waiting.add(lane);
  }

  private forget(): void {
    for (const [userId, purse] of this.purses)
      if (purse.lanes === 0 && this.payOff(purse) >= 0 && purse.owedMs === 0) this.purses.delete(userId);
  }
}

class SocketLane implements FrameLane {
  private readonly pace: FrameScheduler;
  private readonly purse: Purse;
  private readonly socket: Readable;
  private queue: (() => void)[] = [];
  private ended = false;

  constructor(pace: FrameScheduler, purse: Purse, socket: Readable) {
    this.pace = pace;
    this.purse = purse;
    this.socket = socket;
  }

  get isWaiting(): boolean {
    return this.queue.length > 0;
  }

  take(work: () => void): void {
    if (this.ended) return;
    if (!this.isWaiting && this.pace.mayGo(this.purse)) {
      this.pace.run(this.purse, work);
      return;
    }
    // What was read already still comes: one chunk of the socket layer.
    if (!this.isWaiting) this.socket.pause();
    this.queue.push(work);
    this.pace.wait(this.purse, this);
  }

  pay(work: () => void): void {
    this.pace.run(this.purse, work);
  }

  /** The first that waits. After the last one the socket is read again. */
  next(): () => void {
    const work = this.queue.shift() ?? (() => undefined);
    if (!this.isWaiting && !this.ended) this.socket.resume();
    return work;
  }

  end(): void {
    if (this.ended) return;
    this.ended = true;
    this.queue = [];
    this.purse.lanes--;
    this.purse.waiting.delete(this);
  }
}
