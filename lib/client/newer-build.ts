/**
 * Whether the server runs another build of the program than made this page. It says its build with every answer and whenever a
 * document is joined; the page that it made carries its own.
 */

/** The header of an answer that names the server's build. */
export const BUILD_HEADER = "x-springline-build";

export class NewerBuild {
  /** Stays true: what was loaded of this page is of the older build. */
  known = false;
  private readonly own: () => string | null;
  private readonly listeners = new Set<() => void>();

  /** `own`: the build that made this page; null where none is named, as in development. */
  constructor(own: () => string | null) {
    this.own = own;
  }

  /** The server has named its build; null for an answer that names none, such as a proxy's. */
  heard(build: string | null): void {
    const own = this.own();
    if (this.known || build === null || own === null || build === own) return;
    this.known = true;
    for (const listener of this.listeners) listener();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
}

/** Of the page that runs here. */
export const newerBuild = new NewerBuild(() =>
  typeof document === "undefined" ? null : (document.documentElement.dataset.build ?? null),
);
