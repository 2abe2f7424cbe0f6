/** What others did to the plan's state while this person has it open, in a sentence. Pure. */
import type { RoundEnded, StateNews } from "#lib/protocol/messages.ts";
import type { ToldLine } from "../_session/typed/told-lines.ts";

/** `when`: the moment in words. */
export function endedWords({ outcome, byName }: RoundEnded, when: string): string {
  if (outcome === "taken-back") return `${byName} took the plan back on ${when}.`;
  return outcome === "returned"
    ? `${byName} returned the plan with notes on ${when}.`
    : `${byName} signed the plan off on ${when}.`;
}

interface Reader {
  readonly id: string;
  /** A note to the author that they have begun and not sent. */
  readonly hasNote: boolean;
}

/** Null where nothing was done that somebody has to be told, or they did it themselves. */
export function stepTold(before: StateNews, now: StateNews, me: Reader, when: (at: number) => string): ToldLine | null {
  const { round } = now;
  if (before.state === "signed-off" && now.state === "in-writing") return writtenOn(now.edition);
  if (before.state !== "handed-in" || round === undefined) return null;
  const kept = me.hasNote ? " Your note is kept for the next round." : "";
  if (now.state === "handed-in") return again(before, now, kept, when);
  const { ended } = round;
  if (!ended || ended.byId === me.id) return null;
  const sentence = endedWords(ended, when(ended.at));
  const id = `round-${round.number}`;
  if (ended.outcome === "returned")
    return { id, sentence: `${sentence} The notes stand over the class.`, points: round.mainPoints };
  return { id, sentence: `${sentence}${ended.outcome === "taken-back" ? kept : ""}` };
}

/** The page heard of nothing in between. */
function again(before: StateNews, { round }: StateNews, kept: string, when: (at: number) => string): ToldLine | null {
  if (!round || !before.round || round.number === before.round.number) return null;
  const ended = round.before ? `${endedWords(round.before, when(round.before.at))} ` : "";
  const sentence = `${ended}It is offered again, as round ${round.number}.${kept}`;
  return { id: `round-${round.number}-again`, sentence };
}

/** Also told to whoever changes the plan, as they do it: the same line, once. */
export const writtenOn = (edition: number): ToldLine => ({
  id: `written-on-${edition}`,
  sentence: `Edition ${edition} stays signed as it is. With this change the plan itself is in writing again.`,
});
