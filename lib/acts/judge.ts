/** Holds what a line tells against the change that the plan has: what is told, and whether it is so. */
import { FACINGS, type Facing, type Move } from "#lib/plan/schema.ts";
import { handlesHeld, isStrap, type Setup } from "#lib/transitions/transitions.ts";
import { springsSwapped, springsTold } from "./judge-springs.ts";
import type { Act, ActsChange, Judged } from "./judged.ts";
import type { PlannedAct } from "./planned.ts";
import type { Draft, Thing } from "./read/draft.ts";
import type { SideWord } from "./read/units.ts";

type Of<A extends Draft["act"]> = Extract<Draft, { readonly act: A }>;

/** Empty where the words, though read, have nothing to do with the change. */
export function judge(draft: Draft, change: ActsChange): Judged[] {
  switch (draft.act) {
    case "carriage-home":
      return draft.loose && !has(change, draft.act) ? [] : [plainly(change, { act: "carriage-home" })];
    case "springs":
      return springsTold(draft, change);
    case "springs-swap":
      return springsSwapped(draft.parts, change);
    case "turn":
      return [turned(draft, change)];
    case "position":
      return positioned(draft, change);
    case "station":
      return stationed(draft, change);
    case "side":
      return sided(draft, change);
    case "stay":
      return [stayed(draft, change)];
    case "touch":
      return [];
    default:
      return held(draft, change);
  }
}

/** The planned acts of these kinds. */
export const coversOf = ({ planned }: ActsChange, ...acts: readonly PlannedAct["act"][]): PlannedAct[] =>
  planned.filter(({ act }) => acts.includes(act));

const has = (change: ActsChange, act: PlannedAct["act"]): boolean => change.planned.some((one) => one.act === act);

/** Told where the plan has the act, else not planned. */
function plainly(change: ActsChange, act: Act & { readonly act: PlannedAct["act"] }): Judged {
  const covers = coversOf(change, act.act);
  return { act, verdict: covers.length > 0 ? "told" : "not-planned", covers };
}

/** What is true after the change is told, whether it changes or not; else the plan has another object, or nothing. */
function stated(change: ActsChange, act: Act & { readonly act: PlannedAct["act"] }, isTrue: boolean): Judged {
  if (isTrue) return { act, verdict: "told", covers: coversOf(change, act.act) };
  return { act, verdict: has(change, act.act) || change.from === null ? "contradicted" : "not-planned", covers: [] };
}

function turned({ to: said, loose }: Of<"turn">, change: ActsChange): Judged {
  const { from, to } = change;
  const unsure = (act: Act): Judged => ({ act, verdict: "unsure", covers: coversOf(change, "turn") });
  if (said === "any") {
    const covers = coversOf(change, "turn");
    return { act: { act: "turn" }, verdict: covers.length > 0 ? "told" : "unsure", covers, vague: true };
  }
  if (loose === "place" && has(change, "station") && said === to.station)
    return {
      act: { act: "station", station: to.station },
      verdict: "told",
      covers: coversOf(change, "station", "turn"),
    };
  if (said === "somewhere") return unsure({ act: "turn" });
  if (said === "sideways") {
    const isSideways = to.facing === "left" || to.facing === "right";
    return stated(change, { act: "turn", ...(isSideways ? { facing: to.facing } : {}) }, isSideways);
  }
  if (said === "round") {
    if (from === null || (loose && !has(change, "turn"))) return unsure({ act: "turn" });
    const opposite = turnedBy(from.facing, 2);
    // "Turn round" is said of a quarter turn too.
    if (opposite !== to.facing && from.facing !== to.facing) return unsure({ act: "turn", facing: to.facing });
    return stated(change, { act: "turn", facing: opposite }, opposite === to.facing);
  }
  // "Turn to your left side" where nobody turns.
  if (loose === "side" && !has(change, "turn") && said !== to.facing && said === to.side)
    return { act: { act: "side", side: to.side }, verdict: "told", covers: coversOf(change, "side") };
  const relative =
    (loose === "relative" || loose === "side") &&
    from !== null &&
    turnedBy(from.facing, said === "right" ? 1 : 3) === to.facing;
  if (relative && (said === "left" || said === "right") && has(change, "turn"))
    return stated(change, { act: "turn", facing: to.facing }, true);
  const told = stated(change, { act: "turn", facing: said }, said === to.facing);
  return (loose === "gaze" || loose === "place") && told.verdict !== "told"
    ? unsure({ act: "turn", facing: said })
    : told;
}

const turnedBy = (from: Facing, quarters: number): Facing =>
  FACINGS[(FACINGS.indexOf(from) + quarters) % FACINGS.length] ?? from;

const LYING: readonly string[] = ["supine", "prone"];

/** Lying down settles the way to face too, since heads go where the rests are, and the carriage. */
function positioned({ fits, implied, onSide }: Of<"position">, change: ActsChange): Judged[] {
  const { to } = change;
  const isTrue = fits.includes(to.position);
  if (implied) {
    const covers = isTrue ? coversOf(change, "position") : [];
    return covers.length > 0
      ? [{ act: { act: "position", position: to.position }, verdict: "told", covers, implied }]
      : [];
  }
  const one = fits[0];
  const judged = stated(
    change,
    { act: "position", ...(isTrue ? { position: to.position } : one ? { position: one } : {}) },
    isTrue,
  );
  // Where the move has no side, the side to lie on can only be the way to face.
  const settlesTurn =
    (onSide === to.facing && !isOneSided(to.side)) ||
    (LYING.includes(to.position) && fits.some((position) => LYING.includes(position)));
  if (!isTrue || !settlesTurn) return [judged];
  const covers = [
    ...coversOf(change, "position", "turn"),
    ...(to.station === "carriage" ? coversOf(change, "station") : []),
  ];
  return [{ ...judged, covers }];
}

function stationed({ station: said, implied }: Of<"station">, change: ActsChange): Judged[] {
  const { to } = change;
  const station = said === "other" ? otherEnd(change) : said === "platform" ? platformOf(to) : said;
  if (implied) {
    const covers = station === to.station ? coversOf(change, "station") : [];
    return covers.length > 0 ? [{ act: { act: "station", station }, verdict: "told", covers, implied }] : [];
  }
  const judged = stated(change, { act: "station", station }, station === to.station);
  const stands = station === "floor" && to.station === "floor" && to.position === "standing";
  return [stands ? { ...judged, covers: [...judged.covers, ...coversOf(change, "position")] } : judged];
}

const platformOf = ({ station }: Setup): Move["station"] => (station === "back" ? "back" : "front");

/** "The other end": from one platform to the other, or wherever the plan goes. */
const otherEnd = ({ from, to }: ActsChange): Move["station"] =>
  from?.station === "front" ? "back" : from?.station === "back" ? "front" : to.station;

const isOneSided = (side: Setup["side"] | undefined): side is "left" | "right" => side === "left" || side === "right";

/** A side tells no more than itself: what the hand or foot holds has to be put down and taken up in words of its own. */
function sided({ side: said, limb: near, held }: Of<"side">, change: ActsChange): Judged[] {
  const { from, to } = change;
  const side = sideOf(said, change);
  const limb = near && !(held && isStrap(to.feet));
  // Who lies on the other side faces the other way.
  const rollsOver = near && from?.position === "side-lying" && to.position === "side-lying";
  const covers = rollsOver ? coversOf(change, "side", "turn") : coversOf(change, "side");
  if (side === null) return isOneSided(to.side) && !limb ? [{ act: { act: "side" }, verdict: "unsure", covers }] : [];
  if (side === to.side) return [{ act: { act: "side", side }, verdict: "told", covers, ...(near ? { near } : {}) }];
  // The other limb may be named for support.
  if (limb) return [];
  if (!isOneSided(to.side)) return [{ act: { act: "side", side }, verdict: "unsure", covers: [] }];
  const verdict = has(change, "side") || from === null ? "contradicted" : "not-planned";
  return [{ act: { act: "side", side }, verdict, covers: [] }];
}

function sideOf(said: SideWord, { from, to }: ActsChange): "left" | "right" | null {
  if (said === "left" || said === "right") return said;
  if (said === "field") return isOneSided(to.side) ? to.side : null;
  if (said !== "other") return null;
  return from?.side === "left" ? "right" : from?.side === "right" ? "left" : null;
}

type HeldAct = Of<
  "handles-up" | "handles-down" | "handles-cross" | "handles-some" | "strap-on" | "strap-off" | "strap-some"
>;

function held(draft: HeldAct, change: ActsChange): Judged[] {
  const { from, to } = change;
  switch (draft.act) {
    case "handles-some":
      if (draft.count !== undefined && has(change, "handles-up") && !has(change, "handles-down"))
        return [counted({ act: "handles-up", count: draft.count }, change, handlesHeld(to.hands), "handles-down")];
      return some(change, "handles-up", "handles-down", "handles-cross");
    case "strap-some":
      if (draft.bare && has(change, "strap-on")) return [plainly(change, { act: "strap-on" })];
      return some(change, "strap-on", "strap-off");
    case "handles-up":
      if (draft.loose && !has(change, "handles-up")) return [];
      return [counted(draft, change, handlesHeld(to.hands), "handles-down")];
    case "handles-down":
      if ((draft.implied || draft.loose) && !has(change, "handles-down"))
        return draft.or ? judge(draft.or, change) : [];
      return [
        counted(draft, change, handlesHeld(to.hands) === 0 ? handlesHeld(from?.hands ?? "free") : 0, "handles-up"),
      ];
    case "handles-cross":
      return crossed(draft, change);
    case "strap-on":
    case "strap-off": {
      if ((draft.implied || draft.loose) && !has(change, draft.act)) return draft.or ? judge(draft.or, change) : [];
      const other = draft.act === "strap-on" ? "strap-off" : "strap-on";
      const isTrue = has(change, draft.act) || (draft.act === "strap-on" && isStrap(to.feet));
      const covers = coversOf(change, draft.act);
      const verdict = isTrue ? "told" : has(change, other) ? "contradicted" : "not-planned";
      return [{ act: { act: draft.act }, verdict, covers, ...(draft.implied ? { implied: true } : {}) }];
    }
  }
}

function crossed({ un, loose }: Of<"handles-cross">, change: ActsChange): Judged[] {
  const { hands } = change.to;
  const isTrue = handlesHeld(hands) > 1 && un !== (hands === "handles-crossed");
  if (loose && !(isTrue && has(change, "handles-cross"))) return [];
  return [stated(change, { act: "handles-cross" }, isTrue)];
}

/** A thing that is named without a word for what to do with it. */
function some(change: ActsChange, ...acts: readonly PlannedAct["act"][]): Judged[] {
  return coversOf(change, ...acts)
    .slice(0, 1)
    .map(({ act }) => ({ act: { act }, verdict: "unsure", covers: coversOf(change, ...acts), vague: true }));
}

/** `inAll`: as many as a true line may also name, since people speak of what they hold. */
function counted(
  { act, count, implied }: Of<"handles-up" | "handles-down">,
  change: ActsChange,
  inAll: number,
  opposite: PlannedAct["act"],
): Judged {
  const covers = coversOf(change, act);
  const planned = covers.reduce((sum, one) => sum + ("count" in one ? one.count : 0), 0);
  const told: Act = { act, ...(count === null ? (planned > 0 ? { count: planned } : {}) : { count }) };
  const mark = implied ? { implied } : {};
  if (planned > 0 && (count === null || count === planned || count === inAll))
    return { act: told, verdict: "told", covers, ...mark };
  if (planned === 0 && act === "handles-up" && inAll > 0 && (count === null || count === inAll))
    return { act: told, verdict: "told", covers: [], ...mark };
  return {
    act: told,
    verdict: planned > 0 || has(change, opposite) ? "contradicted" : "not-planned",
    covers: [],
    ...mark,
  };
}

const PLACES: readonly PlannedAct["act"][] = ["station", "turn", "position"];

const EVERYTHING: readonly PlannedAct["act"][] = [
  ...["spring-on", "spring-off", "handles-down", "handles-up", "strap-off", "strap-on"],
  ...PLACES,
] as PlannedAct["act"][];

/** The acts that contradict something that is said to stay. */
export function changesOf(of: Thing, { planned }: Pick<ActsChange, "planned">): PlannedAct[] {
  const acts: Readonly<Record<Thing, readonly PlannedAct["act"][]>> = {
    springs: ["spring-on", "spring-off"],
    turn: ["turn"],
    station: ["station"],
    position: ["position"],
    place: PLACES,
    side: ["side"],
    handles: ["handles-down", "handles-cross"],
    strap: ["strap-off", "strap-on"],
    rest: EVERYTHING,
    all: EVERYTHING,
  };
  return planned.filter(({ act }) => acts[of].includes(act));
}

function stayed(draft: Of<"stay">, change: ActsChange): Judged {
  const { of } = draft;
  const act = stayAct(draft, change);
  if (leavesFewer(draft, change)) return { act, verdict: "told", covers: coversOf(change, "handles-down"), of };
  return { act, verdict: stays(of, draft, change) ? "told" : "contradicted", covers: [], of };
}

/** "Keep one handle" puts the other one down. */
function leavesFewer({ of, count, single }: Of<"stay">, { from, to }: ActsChange): boolean {
  const held = handlesHeld(to.hands);
  if (of !== "handles" || from === null || held === 0 || held >= handlesHeld(from.hands)) return false;
  return count === held || (count === undefined && single === true && held === 1);
}

function stays(of: Thing, { facing, position, count }: Of<"stay">, change: ActsChange): boolean {
  if (change.from === null) return true;
  if (count !== undefined && count !== handlesHeld(change.to.hands)) return false;
  if (facing !== undefined && facing !== change.to.facing) return false;
  if (position !== undefined && position !== change.to.position) return false;
  return changesOf(of, change).length === 0;
}

function stayAct({ of, facing, position }: Of<"stay">, { from, to }: ActsChange): Act {
  const was = from ?? to;
  switch (of) {
    case "springs":
      return { act: "stay", springs: { ...was.springs } };
    case "turn":
      return { act: "stay", facing: facing ?? was.facing };
    case "position":
      return { act: "stay", position: position ?? was.position };
    case "station":
      return { act: "stay", station: was.station };
    case "side":
      return { act: "stay", ...(isOneSided(was.side) ? { side: was.side } : {}) };
    default:
      return { act: "stay" };
  }
}
