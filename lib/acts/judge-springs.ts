/** Holds told springs against those of the plan. */
import { own } from "#lib/plan/lookup.ts";
import type { Setup } from "#lib/transitions/transitions.ts";
import type { Act, ActsChange, Judged, Verdict } from "./judged.ts";
import type { PlannedAct } from "./planned.ts";
import type { AmountPart } from "./read/amounts.ts";
import type { Draft } from "./read/draft.ts";

type SpringsDraft = Extract<Draft, { readonly act: "springs" }>;
type SpringAct = Extract<PlannedAct, { readonly act: "spring-on" | "spring-off" }>;

export function springsTold(draft: SpringsDraft, change: ActsChange): Judged[] {
  switch (draft.way) {
    case "field":
      return [now(change, { ...change.to.springs }, "told")];
    case "none":
      return [now(change, {}, sum(change.to.springs) === 0 ? "told" : contradiction(change))];
    case "some":
      return [{ act: { act: "springs-now" }, verdict: "unsure", covers: springActs(change), vague: true }];
    case "keep":
      return kept(draft.parts, change);
    case "now-or-on":
    case "on-or-now": {
      const added = draft.parts.map((part) => moved("spring-on", part, change));
      const now = areOn(draft.parts, change);
      if (draft.way === "now-or-on" && now.verdict === "told") return [now];
      if (added.every(({ verdict }) => verdict === "told")) return added;
      return now.verdict === "told" || now.verdict === "unsure" ? [now] : added;
    }
    case "off-or-on": {
      const off = draft.parts.map((part) => moved("spring-off", part, change));
      const on = draft.parts.map((part) => moved("spring-on", part, change));
      return on.every(({ verdict }) => verdict === "told") ? on : off;
    }
    case "any":
      return changed(draft.parts, change);
    case "on":
      return draft.parts.map((part) => moved("spring-on", part, change));
    case "off":
      return draft.parts.map((part) => moved("spring-off", part, change));
    case "has":
      return areOn(draft.parts, { ...change, to: change.from ?? change.to }).verdict === "told" && change.from
        ? [now(change, { ...change.from.springs }, "told")].filter(() => springActs(change).length === 0)
        : [areOn(draft.parts, change)];
    case "now":
    case "total":
      return [areOn(draft.parts, change, draft.way === "total")];
  }
}

const springActs = ({ planned }: ActsChange): SpringAct[] =>
  planned.filter((act): act is SpringAct => act.act === "spring-on" || act.act === "spring-off");
const sum = (springs: Setup["springs"]): number => Object.values(springs).reduce((all, n) => all + n, 0);
const countOf = (springs: Setup["springs"], id: string): number => own(springs, id) ?? 0;

/** Other springs than the plan has, or a change of springs where the plan has none. */
const contradiction = (change: ActsChange): Verdict =>
  springActs(change).length > 0 || change.from === null ? "contradicted" : "not-planned";

const now = (change: ActsChange, springs: Record<string, number>, verdict: Verdict): Judged => ({
  act: { act: "springs-now", springs },
  verdict,
  covers: verdict === "told" || verdict === "unsure" ? springActs(change) : [],
});

/** One for the other: as the plan has it, else the first goes on. */
export function springsSwapped([first, second]: readonly [Parts, Parts], change: ActsChange): Judged[] {
  const swapped = (off: Parts, on: Parts) => [
    ...off.map((part) => moved("spring-off", part, change)),
    ...on.map((part) => moved("spring-on", part, change)),
  ];
  const usual = swapped(second, first);
  // "A wren to the heron" adds one.
  const added = first.map((part) => moved("spring-on", part, change));
  const isThere = second.every(({ spring = "" }) => countOf(change.from?.springs ?? {}, spring) > 0);
  const ways = [usual, swapped(first, second), ...(isThere ? [added] : [])];
  return ways.find((told) => told.every(({ verdict }) => verdict === "told")) ?? usual;
}
type Parts = readonly AmountPart[];

/** Whatever the plan does with these springs; unsure where it does something else. */
function changed(parts: readonly AmountPart[], change: ActsChange): Judged[] {
  for (const act of ["spring-on", "spring-off"] as const) {
    const told = parts.map((part) => moved(act, part, change));
    if (told.every(({ verdict }) => verdict === "told")) return told;
  }
  const now = areOn(parts, change);
  const named = springActs(change).filter(({ spring }) => parts.some((part) => part.spring === spring));
  return [now.verdict === "told" ? now : { ...now, verdict: "unsure", covers: named }];
}

/** Springs that go on or come off, one name at a time. */
function moved(act: "spring-on" | "spring-off", { spring, count }: AmountPart, change: ActsChange): Judged {
  const was = change.from?.springs ?? {};
  const these = springActs(change).filter((one) => one.act === act && (spring === undefined || one.spring === spring));
  const planned = these.reduce((all, one) => all + one.count, 0);
  // "The lights off" takes off all that are on.
  const all = act === "spring-off" ? (spring === undefined ? sum(was) : countOf(was, spring)) : planned;
  const said = count ?? all;
  const [only] = these;
  const id = spring ?? (these.length === 1 ? only?.spring : undefined);
  const told: Act = { act, ...(id === undefined ? {} : { spring: id }), count: said };
  if (planned > 0 && said === planned) return { act: told, verdict: "told", covers: these };
  const verdict = contradiction(change);
  // "Take one off" may be about anything where no spring changes.
  return { act: told, verdict: spring === undefined && verdict === "not-planned" ? "unsure" : verdict, covers: [] };
}

/** "Two light": all that is on after the change. Where it names only a part of that, or what is added, nobody can be sure. */
function areOn(parts: readonly AmountPart[], change: ActsChange, isTotal = false): Judged {
  const { from, to } = change;
  const step = !isTotal && isStep(parts, change);
  const generic = parts.some(({ spring }) => spring === undefined);
  if (generic) {
    const said = parts.reduce((all, { count }) => all + (count ?? sum(to.springs)), 0);
    const isTrue = said === sum(to.springs);
    return isTrue
      ? now(change, { ...to.springs }, "told")
      : {
          act: { act: "springs-now" },
          verdict: step ? "unsure" : "contradicted",
          covers: step ? springActs(change) : [],
        };
  }
  const springs: Record<string, number> = {};
  for (const { spring = "", count } of parts)
    springs[spring] = (springs[spring] ?? 0) + (count ?? countOf(to.springs, spring));
  const said = Object.fromEntries(Object.entries(springs).filter(([, n]) => n > 0));
  const isTrueOf = Object.entries(springs).every(([id, n]) => countOf(to.springs, id) === n);
  if (isTrueOf && sum(said) === sum(to.springs)) return now(change, said, "told");
  const others = Object.keys(to.springs).filter((id) => !Object.hasOwn(springs, id) && countOf(to.springs, id) > 0);
  const rest = from !== null && others.every((id) => countOf(from.springs, id) === countOf(to.springs, id));
  return now(change, said, (isTrueOf && rest) || step ? "unsure" : "contradicted");
}

/** Whether the words name just what is put on. */
function isStep(parts: readonly AmountPart[], change: ActsChange): boolean {
  return change.from !== null && parts.every((part) => moved("spring-on", part, change).verdict === "told");
}

/** "Keep the light on": true where as many are on after as are named. */
function kept(parts: readonly AmountPart[], change: ActsChange): Judged[] {
  const { from, to } = change;
  const was = from?.springs ?? to.springs;
  return parts.map(({ spring, count }): Judged => {
    const [before, after] =
      spring === undefined ? [sum(was), sum(to.springs)] : [countOf(was, spring), countOf(to.springs, spring)];
    const isTrue = count === null ? before === after : count === after;
    // "Leave one light on" tells what comes off.
    const covers = isTrue ? springActs(change).filter((act) => act.spring === spring) : [];
    const act: Act = { act: "stay", ...(spring === undefined ? {} : { springs: { [spring]: count ?? before } }) };
    return { act, verdict: isTrue || from === null ? "told" : "contradicted", covers, of: "springs" };
  });
}
