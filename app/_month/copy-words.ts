/** What copying classes did, and what it would do. Pure; English on every device. */
import { agree, plural } from "#lib/plan/format.ts";
import type { TakenOver } from "#lib/programme/copies.ts";
import type { Copied } from "#lib/programme/write-many.ts";

const classes = (n: number): string => plural(n, "class", "classes");

/** "31 classes added, 2 changed as in the week copied. 5 stood there already." */
export function copiedWords({ added, changed, there, noDay }: Omit<Copied, "over">): string {
  const also = changed.length > 0 ? `, ${changed.length} changed as in the week copied` : "";
  const stood = there > 0 ? ` ${there} stood there already.` : "";
  return `${added.length === 0 ? "No class" : classes(added.length)} added${also}.${stood}${withoutDay(noDay)}`;
}

const withoutDay = (n: number): string => (n > 0 ? ` ${n} ${agree(n, "has", "have")} no day in this month.` : "");

/** "31 classes would be added; 5 stand there already and stay as they are. Themes: Arms becomes Legs." */
export function takenOverWords(of: Omit<TakenOver, "change">, nameOf: (theme: string) => string): string {
  const { add, there, noDay, themes, themesLost } = of;
  const stand = there > 0 ? `; ${there} ${agree(there, "stands", "stand")} there already and ${stays(there)}` : "";
  const become = themes.map(({ from, to }) => `${nameOf(from)} becomes ${nameOf(to)}`).join(", ");
  const lost = themesLost > 0 ? ` ${classes(themesLost)} would come without a theme: this month does not have it.` : "";
  return [
    `${add.length === 0 ? "No class" : classes(add.length)} would be added${stand}.${withoutDay(noDay)}`,
    ...(become ? [` Themes: ${become}.`] : []),
    lost,
  ].join("");
}

const stays = (n: number): string => (n === 1 ? "stays as it is" : "stay as they are");
