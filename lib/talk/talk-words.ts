/** An item's talk against its time, in words: the same on the rail, in the script and for screen readers. */
import { tenth } from "#lib/numbers/round.ts";
import { plainNumber } from "#lib/plan/format.ts";
import type { ItemTalk } from "./talk.ts";

/** Seconds by which talk exceeds its time; 0 when it fits. */
export const talkOver = ({ seconds, roomSeconds }: Pick<ItemTalk, "seconds" | "roomSeconds">): number =>
  Math.max(0, tenth(seconds - roomSeconds));

/** "21 s to say, 45 s of time"; "51.3 s to say, 45 s of time: 6.3 s too much". */
export function talkWords(talk: Pick<ItemTalk, "seconds" | "roomSeconds">): string {
  const over = talkOver(talk);
  const said = over > 0 ? plainNumber(talk.seconds) : String(Math.round(talk.seconds));
  const both = `${said} s to say, ${plainNumber(talk.roomSeconds)} s of time`;
  return over > 0 ? `${both}: ${plainNumber(over)} s too much` : both;
}
