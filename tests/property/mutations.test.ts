/**
 * Mistakes that people make, planted one at a time into good classes, are found; other true words for the same are not. How
 * they are planted depends on the text of the lines and the plan's facts alone.
 */
import { describe, expect, it } from "vitest";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import type { Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { RULES } from "#lib/rules/registry.ts";
import { often } from "#tests/support/long.ts";
import { CLASSES, GOOD_CLASSES, type Place, placesOf, withScript } from "#tests/support/mutation-places.ts";
import { MISTAKES } from "#tests/support/mutations.ts";
import { PARAPHRASES } from "#tests/support/true-paraphrases.ts";

const OF_WORDS: ReadonlySet<string> = new Set([
  ...MISTAKES.flatMap(({ rules }) => rules),
  ...["let-go-before-carriage-home", "start-place-not-told"],
]);
const CHECKED = RULES.filter(({ id }) => OF_WORDS.has(id));
// One for all: what a planted line does not touch is not worked out again.
const ANALYST = new PlanAnalyst(CHECKED);
const findingsOf = (plan: Plan): readonly Finding[] => ANALYST.of(plan).findings;
const key = ({ rule, items, message }: Finding): string => JSON.stringify([rule, items, message]);

interface Sown {
  readonly kind: string;
  readonly place: Place;
  readonly script: readonly ScriptLine[];
  /** New findings about the item. */
  readonly found: readonly Finding[];
}

interface Planter {
  readonly kind: string;
  readonly say: readonly string[];
  readonly plant: (place: Place, say: string) => ScriptLine[] | undefined;
}

const PLACES = CLASSES.flatMap((plan) => {
  const before = findingsOf(plan);
  const good = placesOf(plan).filter(({ item }) => !before.some(({ items }) => items.includes(item.id)));
  return good.map((place) => ({ place, before: new Set(before.map(key)) }));
});

/** Sown at a place in one way of saying it; undefined where it cannot be said. */
function sowAt({ kind, plant }: Planter, { place, before }: (typeof PLACES)[number], words: string): Sown[] {
  const script = plant(place, words);
  if (!script) return [];
  const isNew = (finding: Finding) => !before.has(key(finding)) && finding.items.includes(place.item.id);
  return [{ kind, place, script, found: findingsOf(withScript(place, script)).filter(isNew) }];
}

const FEW = 12;
/** Wherever it can be made, in one way after the other; in every way where there are few places. */
function sowMistake(planter: Planter): Sown[] {
  const { say } = planter;
  const possible = PLACES.filter(({ place }) => say.some((words) => planter.plant(place, words)));
  return possible.flatMap((at, turn) => {
    const ways = say
      .map((_, n) => say[(turn + n) % say.length] ?? "")
      .filter((words) => planter.plant(at.place, words));
    return (possible.length < FEW ? ways : ways.slice(0, 1)).flatMap((words) => sowAt(planter, at, words));
  });
}

/** In every way, each at a few places that lie apart. */
function sowParaphrase(planter: Planter): Sown[] {
  return planter.say.flatMap((words, way) => {
    const possible = PLACES.filter(({ place }) => planter.plant(place, words));
    const most = often(2, possible.length);
    const step = Math.max(1, Math.floor(possible.length / most));
    return possible.filter((_, n) => n % step === way % step).flatMap((at) => sowAt(planter, at, words));
  });
}

const texts = ({ place, script }: Sown): string =>
  script
    .filter((line) => !place.item.script?.includes(line))
    .map(({ text }) => text)
    .join(" / ");

describe("planted mistakes", () => {
  const table = MISTAKES.map((mistake) => {
    const sown = sowMistake(mistake);
    const found = sown.filter((one) => one.found.some(({ rule }) => mistake.rules.includes(rule)));
    return { kind: mistake.kind, sown, found };
  });
  const sum = (list: readonly { length: number }[]) => list.reduce((n, { length }) => n + length, 0);
  const planted = sum(table.map(({ sown }) => sown));
  const caught = sum(table.map(({ found }) => found));

  it("are found, nine in ten over all and three in four of every kind", () => {
    for (const { kind, sown, found } of table) {
      console.log(`${kind} | ${sown.length} | ${found.length} | ${((100 * found.length) / sown.length).toFixed(0)} %`);
      const passed = sown.filter((one) => !found.includes(one)).slice(0, 4);
      for (const one of passed) console.log(`    passed over in ${one.place.item.id}: “${texts(one)}”`);
    }
    console.log(`all | ${planted} | ${caught} | ${((100 * caught) / planted).toFixed(1)} %`);
    expect(planted).toBeGreaterThan(250);
    expect(caught / planted).toBeGreaterThanOrEqual(0.9);
    const few = table.filter(({ sown, found }) => sown.length >= 10 && found.length / sown.length < 0.75);
    expect(few.map(({ kind }) => kind)).toEqual([]);
  });

  it("are of every kind", () => {
    expect(table.filter(({ sown }) => sown.length === 0).map(({ kind }) => kind)).toEqual([]);
  });
});

describe("true words", () => {
  it("give no finding in good classes as they are", () => {
    const places = GOOD_CLASSES.flatMap(placesOf);
    const wrong = GOOD_CLASSES.flatMap(findingsOf);
    for (const { items, message } of wrong) console.log(`${items.join(", ")}: ${message}`);
    expect(places.length).toBeGreaterThan(70);
    expect(wrong.length / places.length).toBeLessThanOrEqual(0.01);
  });

  it("said another way give a new finding at most once in a hundred times", () => {
    const ways = PARAPHRASES.reduce((n, { say }) => n + say.length, 0);
    const sown = PARAPHRASES.flatMap(sowParaphrase);
    const wrong = sown.filter(({ found }) => found.length > 0);
    console.log(`${ways} paraphrases, said ${sown.length} times, ${wrong.length} wrongly found`);
    for (const one of wrong.slice(0, 40))
      console.log(
        `${one.kind}, ${one.place.item.id}: “${texts(one)}” ${one.found.map(({ message }) => message).join(" ")}`,
      );
    expect(ways).toBeGreaterThanOrEqual(60);
    expect(wrong.length / sown.length).toBeLessThanOrEqual(0.01);
  });
});
