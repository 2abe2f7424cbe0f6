/** What several told acts of one change say together: amounts that add up, what stays but for what is told, the order. */
import { changesOf, coversOf } from "./judge.ts";
import type { ActsChange, Judged } from "./judged.ts";
import type { PlannedAct } from "./planned.ts";

/** What of a kind is told as it is in the end may be named otherwise on the way: "stand up, walk round, lie down". */
const ON_THE_WAY: readonly Judged["act"]["act"][] = ["turn", "station", "position", "side", "handles-down"];

/** Getting up or off is on the way whichever line says so; anything else only beside the words that set it right. */
const isGettingUp = ({ position, station }: Judged["act"]): boolean => position === "standing" || station === "floor";

/** `told` in turn; `inLine`: what is said in the same line. */
function onTheWay(told: readonly Judged[], inLine: ReadonlySet<Judged>, one: Judged): boolean {
  if (one.verdict !== "contradicted" && one.verdict !== "not-planned") return false;
  if (!ON_THE_WAY.includes(one.act.act)) return false;
  const kind = one.act.act === "handles-down" ? "handles-up" : one.act.act;
  const setsRight = (later: Judged) => later.act.act === kind && later.verdict === "told" && !later.near;
  return told
    .slice(told.indexOf(one) + 1)
    .some((later) => setsRight(later) && (isGettingUp(one.act) || inLine.has(later)));
}

/** "Both handles down, pick up one": one fewer. */
const fewerHeld = (change: ActsChange, { act }: Judged): PlannedAct[] =>
  act.act === "handles-down" ? coversOf(change, "handles-down") : [];

interface Placed<T extends Judged> {
  readonly heard: T;
  /** Place in its line, in the order in which things are to be done. */
  readonly place: number;
}

/**
 * "Add one light, then another": two, if the plan has two. "The same springs, but add a light": told, if the rest is so.
 * The exception has to stand in the same line: a line that is right elsewhere leaves a false one false.
 */
export function summedUp<T extends Judged>(
  change: ActsChange,
  lines: readonly (readonly Placed<T>[])[],
): Placed<T>[][] {
  const all = lines.flat().map(({ heard }) => heard);
  const sums = change.planned.flatMap((act) =>
    "count" in act ? [{ act, told: all.filter((one) => isPartOf(one, act)) }] : [],
  );
  const whole = new Map<T, PlannedAct>();
  for (const { act, told } of sums) {
    const sum = told.reduce((n, { act: { count = 0 } }) => n + count, 0);
    if (sum === act.count) for (const one of told) whole.set(one, act);
  }
  const added = lines.map((line) =>
    line.map((placed): Placed<T> => {
      const act = whole.get(placed.heard);
      return act ? { ...placed, heard: { ...placed.heard, verdict: "told", covers: [act] } } : placed;
    }),
  );
  const inTurn = added.flat().map(({ heard }) => heard);
  return added.map((line) => {
    const inLine = new Set<Judged>(line.map(({ heard }) => heard));
    const said = line.filter(({ heard }) => !heard.implied);
    const covered = new Set(said.flatMap(({ heard }) => heard.covers.filter(({ act }) => isOf(act, heard.act.act))));
    return line.map((placed): Placed<T> => {
      const { heard } = placed;
      if (onTheWay(inTurn, inLine, heard))
        return { ...placed, heard: { ...heard, verdict: "unsure", covers: fewerHeld(change, heard) } };
      const verdict = heard.of === "rest" ? "told" : "unsure";
      return isExcepted(change, heard, covered) ? { ...placed, heard: { ...heard, verdict } } : placed;
    });
  });
}

/** What is said to stay, but for what the same line tells rightly. */
function isExcepted(change: ActsChange, { of, verdict, act }: Judged, covered: ReadonlySet<PlannedAct>): boolean {
  if (of === undefined || verdict !== "contradicted") return false;
  if (act.facing !== undefined && act.facing !== change.from?.facing) return false;
  const changes = changesOf(of, change);
  return changes.length > 0 && changes.every((one) => covered.has(one));
}

/** Whether a told act names what it covers: lying on a side settles a turn without naming it. */
const isOf = (covered: PlannedAct["act"], told: Judged["act"]["act"]): boolean =>
  covered === told || (told === "springs-now" && (covered === "spring-on" || covered === "spring-off"));

const isPartOf = ({ act, verdict }: Judged, planned: PlannedAct): boolean =>
  verdict === "contradicted" &&
  act.act === planned.act &&
  ("spring" in planned ? act.spring === planned.spring : "count" in planned);

const OF_SPRINGS: readonly string[] = ["spring-on", "spring-off", "springs-now"];
const OF_PLACE: readonly string[] = ["turn", "station", "position"];

/** What has to be done first. */
export type Needed = "carriage-home" | "strap-off" | "handles-down";

/**
 * What is told too early, with what has to be told before it: springs before the carriage is home; springs or a new place
 * before what is still held is let go; letting go before the carriage is home, which the plan file's order leaves open.
 */
export function tooEarly<T extends Judged>(lines: readonly (readonly Placed<T>[])[]): Map<T, readonly Needed[]> {
  const done = lines.flatMap((line) => line.toSorted((a, b) => a.place - b.place).map(({ heard }) => heard));
  const firstOf = (act: Needed): number =>
    done.findIndex((one) => one.act.act === act && one.verdict === "told" && one.covers.length > 0 && !one.implied);
  const home = firstOf("carriage-home");
  const letGo = (["strap-off", "handles-down"] as const).map((act) => ({ act, at: firstOf(act) }));
  const early = new Map<T, readonly Needed[]>();
  for (const [at, one] of done.entries()) {
    if (one.verdict !== "told" || one.covers.length === 0 || one.implied) continue;
    const ofSprings = OF_SPRINGS.includes(one.act.act);
    const moves = ofSprings || OF_PLACE.includes(one.act.act);
    const isLetGo = letGo.some(({ act }) => act === one.act.act);
    const needed: Needed[] = [
      ...((ofSprings || isLetGo) && at < home ? (["carriage-home"] as const) : []),
      ...letGo.flatMap(({ act, at: first }) => (moves && at < first ? [act] : [])),
    ];
    if (needed.length > 0) early.set(one, needed);
  }
  return early;
}

/** Letting go early is no wrong order by the plan file. */
export const isWrongOrder = ({ act }: Judged): boolean => act.act !== "strap-off" && act.act !== "handles-down";
