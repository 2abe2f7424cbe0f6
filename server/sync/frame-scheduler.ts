/**
 * Shares the one thread that serves everybody, by the time that people's frames take. A turn of the event loop handles a
 * limited amount, one frame per person in rotation. Somebody who has used up their budget is not read until time has paid
 * it off. Nothing is refused and nothing is lost: only their own sockets and costly requests wait.
 */
import type { Limits } from "./limits.ts";

/** A socket that can be told to deliver nothing for a while. */
export interface Readable {
  pause(): void;
  resume(): void;
}
export type FrameSchedulerLimits = Pick<Limits, "turnMs" | "personBurstMs" | "personPercent">;

/** The work of one socket, in order. */
export interface FrameLane {
  /** Runs the work now if its person has budget left, otherwise in turn. */
  take(work: () => void): void;
  /** Runs the work now and charges it: it was already received. */
  pay(work: () => void): void;
  /** The socket has closed: drops what is still queued. */
  end(): void;
}

/** One person's budget: the queued work of all their sockets, and what they owe. */
interface Purse {
  owedMs: number;
  /** When `owedMs` was last worked out. */
  at: number;
  lanes: number;
  /** Sockets with queued work, in order of their turn. */
  readonly waiting: Set<SocketLane>;
}

const NO_SOCKET: Readable = { pause: () => undefined, resume: () => undefined };

/** At least this long (ms) between two checks of people who owe too much. */
const LOOK_MS = 10;
/** People who are remembered without a socket: reconnecting does not clear a debt. */
const REMEMBERED = 1000;

export class FrameScheduler {
  private readonly purses = new Map<string, Purse>();
  /** People with queued work, in order of their turn. */
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

  /**
   * One piece of work that came over HTTP: now, or when its person's turn comes. What a promise does after its first wait is
   * not charged. Rejects with what `work` throws.
   */
  inTurn<T>(userId: string, work: () => T | Promise<T>): Promise<T> {
    const lane = this.lane(NO_SOCKET, userId);
    return new Promise<T>((resolve, reject) => {
      lane.take(() => {
        try {
          resolve(work());
        } catch (error) {
          reject(error);
        } finally {
          lane.end();
        }
      });
    });
  }

  mayGo(purse: Purse): boolean {
    return this.spentMs < this.limits.turnMs && this.solvent(purse);
  }

  /** Runs a piece of work and charges it to its person. */
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

  /** Reduces the debt by the time that has passed. Returns the time. */
  private payOff(purse: Purse): number {
    const now = this.now();
    purse.owedMs = Math.max(0, purse.owedMs - ((now - purse.at) * this.limits.personPercent) / 100);
    purse.at = now;
    return now;
  }

  private nextTurn(): void {
    this.turn = undefined;
    // What a frame took beyond a turn's limit counts against the next turns, so that others get a turn in between.
    this.spentMs = Math.max(0, this.spentMs - this.limits.turnMs);
    let owing = 0;
    for (const purse of this.waiting) {
      if (this.spentMs >= this.limits.turnMs || owing === this.waiting.size) break;
      // Re-inserted behind all others: iteration over a set reaches elements added meanwhile.
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
    // What the socket layer has already read, one chunk, is still delivered.
    if (!this.isWaiting) this.socket.pause();
    this.queue.push(work);
    this.pace.wait(this.purse, this);
  }

  pay(work: () => void): void {
    this.pace.run(this.purse, work);
  }

  /** The first queued work. After the last one the socket is read again. */
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
