/**
 * Tells a page why its socket never opens though HTTP works: a proxy that does not carry upgrades, or an address that
 * is not the configured one. A browser gives no reason for a failed socket, so the server is asked over HTTP. Used by
 * every document's session and by the floor's line.
 */

/** Failed attempts before the server is asked: a single one may just be a restart of the server. */
const ATTEMPTS = 3;

export interface LiveCheckSetup {
  /** Asks the server over HTTP: a sentence that says what to do, or null when it does not answer either. May reject. */
  ask(): Promise<string | null>;
  /** Called when the sentence has changed. */
  onChange(): void;
}

export class LiveCheck {
  /** What to tell the person; null while there is nothing to tell. */
  sentence: string | null = null;
  private readonly setup: LiveCheckSetup;
  private failures = 0;
  private everOpen = false;
  private asking = false;
  /** The answer after the last attempt: shown once the next one has failed too. */
  private answered: string | null = null;

  constructor(setup: LiveCheckSetup) {
    this.setup = setup;
  }

  get barred(): boolean {
    return this.sentence !== null;
  }

  /** An address that has carried a socket to this page works, so later failures are ordinary ones. */
  opened(): void {
    this.everOpen = true;
    this.say(null);
  }

  /** A socket failed to open. */
  failed(): void {
    this.failures++;
    if (this.everOpen || this.failures < ATTEMPTS) return;
    if (this.answered !== null) this.say(this.answered);
    if (!this.asking) void this.find();
  }

  private async find(): Promise<void> {
    this.asking = true;
    const said = await this.setup.ask().catch(() => null);
    this.asking = false;
    if (this.everOpen) return;
    this.answered = said;
    if (said === null) this.say(null);
  }

  private say(sentence: string | null): void {
    if (sentence === this.sentence) return;
    this.sentence = sentence;
    this.setup.onChange();
  }
}
