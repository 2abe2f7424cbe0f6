/** What the demo studio's coaches usually say about a move, used to write the demo plans. */
export interface Phrases {
  /** The position of the body, said after the changes of springs, station and hands. */
  readonly setup: string;
  readonly start: string;
  readonly breath: string;
  readonly form: string;
  readonly focus?: string;
  /** Required when the move is not suitable for everybody. */
  readonly safety?: string;
  readonly easier: string;
  readonly harder?: string;
}
