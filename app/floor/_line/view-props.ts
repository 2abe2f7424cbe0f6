/** What every view of a class led by another screen is given. */
import type { Card } from "#lib/card/schema.ts";
import type { Followed } from "./use-followed.ts";

export interface ViewProps extends Followed {
  readonly card: Card;
  /** From how far this screen is read, metres. */
  readonly distanceM: number;
  /** Nobody confirms what is shown, so nothing of it may look certain. */
  readonly unsure: boolean;
}
