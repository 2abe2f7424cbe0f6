/**
 * Notices a socket that has died silently: a cable pulled out somewhere, a phone that lost its cell. The browser keeps
 * such a socket open for minutes. So the page asks for a sign of life when it hears nothing, sooner when its own words
 * are unanswered, and drops a socket that stays silent.
 *
 * Looks are counted, not milliseconds: a page that stood still for a while finds the messages that arrived meanwhile
 * still waiting to be read. The numbers are our own: a page says it is offline within 4 s of an edit that gets no
 * answer.
 */

/** How often to call `look`, ms. */
export const PULSE_CHECK_MS = 500;
/** Silent looks before the page asks: while something of its own is unanswered, and otherwise. */
const ASK_AFTER = { waiting: 2, idle: 10 } as const;
/** Looks to wait for the answer. */
const ANSWER_LOOKS = 6;
/**
 * Looks to wait for a new socket to open and a document to arrive: a large one on a slow connection is one long
 * message.
 */
const CONNECTING_LOOKS = 20;
const READING_LOOKS = 40;

/** A connection at the moment of a look. */
export interface PulseView {
  readonly phase: "off" | "connecting" | "reading" | "open";
  /** Changes with every message heard. */
  readonly heard: number;
  /** Bytes not yet handed to the network: while they shrink the connection is alive. */
  readonly buffered: number;
  /** Something this page sent is still unanswered. */
  readonly waiting: boolean;
}

export interface PulseActs {
  /** Asks the server for any answer. */
  ask(): void;
  /** The connection is dead. */
  lost(): void;
}

export class Pulse {
  private before: PulseView = { phase: "off", heard: 0, buffered: 0, waiting: false };
  private quiet = 0;
  /** Looks since the page asked; null when it is not waiting for an answer. */
  private asked: number | null = null;
  private readonly acts: PulseActs;

  constructor(acts: PulseActs) {
    this.acts = acts;
  }

  look(now: PulseView): void {
    const { before } = this;
    this.before = now;
    if (now.phase !== before.phase || now.heard !== before.heard || now.buffered < before.buffered) this.restart();
    else this.quiet++;
    if (this.isDead(now.phase)) this.acts.lost();
    else if (now.phase === "open") this.wonder(now.waiting);
  }

  /** Asks at the next look, however recently something was heard, since the page was hidden until now. */
  doubt(): void {
    if (this.asked === null) this.quiet = Math.max(this.quiet, ASK_AFTER.idle);
  }

  private restart(): void {
    this.quiet = 0;
    this.asked = null;
  }

  private isDead(phase: PulseView["phase"]): boolean {
    if (phase === "connecting") return this.quiet > CONNECTING_LOOKS;
    if (phase === "reading") return this.quiet > READING_LOOKS;
    return phase === "open" && this.asked !== null && this.asked >= ANSWER_LOOKS;
  }

  private wonder(waiting: boolean): void {
    if (this.asked !== null) {
      this.asked++;
      return;
    }
    if (this.quiet < (waiting ? ASK_AFTER.waiting : ASK_AFTER.idle)) return;
    this.asked = 0;
    this.acts.ask();
  }
}
