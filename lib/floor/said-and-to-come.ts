/**
 * The cue track of a class whose times changed midway: what was said stays, what is still to come is taken from the new
 * track, and no line is said twice.
 */
import type { Cue } from "#lib/cues/types.ts";

/** `position`: seconds of the plan already done. Lines never overlap: one being said is cut when a new one begins. */
export function saidAndToCome(was: readonly Cue[], fresh: readonly Cue[], position: number): Cue[] {
  const said = was.filter((cue) => cue.from <= position);
  const toCome = withoutSaid(fresh, said, was).filter((cue) => cue.from > position);
  const first = toCome[0]?.from ?? Number.POSITIVE_INFINITY;
  return [...said.map((cue) => (cue.to > first ? { ...cue, to: first } : cue)), ...toCome];
}

const place = (cue: Cue): string => `${cue.item} ${cue.kind}`;
const words = (cue: Cue): string => `${place(cue)} ${cue.text}`;

/**
 * Live fields may word the same line differently at another moment ("twenty seconds to go"). So a line that was said and is
 * missing from the new track stands for the first line of its kind and item that is missing from the old track.
 */
function withoutSaid(fresh: readonly Cue[], said: readonly Cue[], was: readonly Cue[]): Cue[] {
  const [freshWords, wasWords] = [new Set(fresh.map(words)), new Set(was.map(words))];
  const saidWords = new Set(said.map(words));
  const reworded = new Map<string, number>();
  for (const cue of said) {
    if (!freshWords.has(words(cue))) reworded.set(place(cue), (reworded.get(place(cue)) ?? 0) + 1);
  }
  return fresh.filter((cue) => {
    if (saidWords.has(words(cue))) return false;
    const left = reworded.get(place(cue)) ?? 0;
    if (left === 0 || wasWords.has(words(cue))) return true;
    reworded.set(place(cue), left - 1);
    return false;
  });
}
