/** Turns a stream of changes into one call per burst: after a quiet moment, or when the burst has gone on for long. */
export class Burst {
  private quiet: NodeJS.Timeout | undefined;
  private longest: NodeJS.Timeout | undefined;
  private readonly run: () => void;
  private readonly ms: { readonly quiet: number; readonly longest: number };

  constructor(run: () => void, ms: { quiet: number; longest: number }) {
    this.run = run;
    this.ms = ms;
  }

  /** Something changed. */
  note(): void {
    if (this.quiet) this.quiet.refresh();
    else this.quiet = setTimeout(() => this.fire(), this.ms.quiet);
    this.longest ??= setTimeout(() => this.fire(), this.ms.longest);
    this.quiet.unref();
    this.longest.unref();
  }

  /** Runs now if a call is pending. */
  settle(): void {
    if (this.quiet) this.fire();
  }

  cancel(): void {
    clearTimeout(this.quiet);
    clearTimeout(this.longest);
    this.quiet = undefined;
    this.longest = undefined;
  }

  private fire(): void {
    this.cancel();
    this.run();
  }
}
