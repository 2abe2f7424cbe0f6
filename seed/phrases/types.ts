/** What the demo studio's coaches usually say about a move: the lines from which its demo plans are written. */
export interface Phrases {
  /** Where the body goes, after the changes of springs, station and hands are named. */
  readonly setup: string;
  readonly start: string;
  readonly breath: string;
  readonly form: string;
  readonly focus?: string;
  /** Needed wherever the move asks something of a body that not everybody can give. */
  readonly safety?: string;
  readonly easier: string;
  readonly harder?: string;
}
