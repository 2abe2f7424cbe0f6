/**
 * The cue track of a class whose times changed in the middle: what was said stays as it was, what is to come comes from the
 * new track, and no line is said a second time.
 */
import type { Cue } from "#lib/cues/types.ts";

/** `position`: seconds of the plan behind us. Lines never overlap: one being said gives way to a new one. */
export function saidAndToCome(was: readonly Cue[], fresh: readonly Cue[], position: number): Cue[] {
  const said = was.filter((cue) => cue.from <= position);
  const toCome = withoutSaid(fresh, said, was).filter((cue) => cue.from > position);
  const first = toCome[0]?.from ?? Number.POSITIVE_INFINITY;
  return [...said.map((cue) => (cue.to > first ? { ...cue, to: first } : cue)), ...toCome];
}

const place = (cue: Cue): string => `${cue.item} ${cue.kind}`;
const words = (cue: Cue): string => `${place(cue)} ${cue.text}`;

/**
 * The same line may be worded otherwise at another moment ("twenty seconds to go"): one said that the new track does not
 * have stands for the first of its kind, in its item, that the old one did not have.
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
