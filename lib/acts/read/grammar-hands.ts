/** How handles and straps are told, and what stays as it is. */
import { type Draft, found, HANDS_PLACED, limbSide, type Production, say, type Thing } from "./draft.ts";
import type { Matched } from "./pattern.ts";

const NOTHING: readonly Draft[] = [];
const UP = (match: Matched): Draft[] => [{ act: "handles-up", count: found(match, "count") ?? null }];
const DOWN = (match: Matched): Draft[] => [{ act: "handles-down", count: found(match, "count") ?? null }];
const up = (count: number | null): readonly Draft[] => [{ act: "handles-up", count }];
/** "Put it down", "hands free". */
const down = (count: number | null): readonly Draft[] => [{ act: "handles-down", count, loose: true }];
const PASSED: readonly Draft[] = [
  { act: "handles-down", count: null, implied: true },
  { act: "handles-up", count: null, implied: true },
  { act: "side", side: "other", limb: true },
];
/** "No more handles": all that are held. */
const NO_HANDLES: readonly Draft[] = [{ act: "handles-down", count: null }];
const ONE_SPRING_OFF: Draft = { act: "springs", way: "off", parts: [{ count: 1, more: false }] };
const DOWN_LOOSE: readonly Draft[] = [{ act: "handles-down", count: null, loose: true }];
const CROSS = ({ units }: Matched): Draft[] => {
  const un = units.some(({ word }) => UNCROSS.test(word));
  return [{ act: "handles-cross", un }];
};
/** "Left handle in the right hand" crosses them. */
function acrossHands(match: Matched): Draft[] {
  const [of, to] = [match.units.find(({ word }) => word === "left" || word === "right")?.word, match.units.at(-1)];
  const hand = to?.side ?? to?.word;
  return of !== undefined && (hand === "left" || hand === "right") && hand !== of
    ? [{ act: "handles-cross", un: false, loose: true }]
    : intoHand(match);
}
const UNCROSS = /^(?:un|not|longer|normal|usual|parallel|straight)/;

/** "Handle in the other hand" puts it down and takes it up. */
function intoHand(match: Matched): Draft[] {
  const side = found(match, "side") ?? toSide(match);
  const hands = match.units.findLast(({ classes }) => classes.includes("limb"));
  const handle = match.units.find(({ classes }) => classes.includes("handle"));
  // "A handle in each hand" are two, "both hands on one handle" is one.
  const shared = hands?.word.endsWith("s") ? handle?.count : undefined;
  const count = shared ?? hands?.count ?? handle?.count ?? null;
  if (side === "other")
    return [
      { act: "handles-down", count: null, implied: true },
      { act: "handles-up", count: null, implied: true },
      { act: "side", side, limb: true },
    ];
  const told: Draft = { act: "handles-up", count };
  if (side !== "left" && side !== "right" && side !== "field") return [told];
  return [{ act: "handles-down", count: null, implied: true }, told, { act: "side", side, limb: true }];
}

/** "Pass the handle to the right." */
function toSide(match: Matched): "left" | "right" | undefined {
  const to = found(match, "facing");
  return to === "left" || to === "right" ? to : undefined;
}

/** "Out of the left hand and into the right." */
const toHand = ({ units }: Matched): Draft[] => intoHand({ units: [...units.filter(isHandle), ...units.slice(-1)] });
const isHandle = ({ classes }: Matched["units"][number]): boolean => classes.includes("handle");

/** "Left hand picks up". */
const handUp = (match: Matched): Draft[] => [
  { act: "handles-up", count: null, loose: true },
  ...(found(match, "side") === "other" ? [{ act: "side" as const, side: "other" as const }] : limbSide(match)),
  ...sideOfWord(match),
];
function sideOfWord(match: Matched): Draft[] {
  const side = toSide(match);
  return side ? [{ act: "side", side, limb: true }] : [];
}
const UP_LOOSE: readonly Draft[] = [{ act: "handles-up", count: null, loose: true }];
const KEPT = (match: Matched): Draft[] => {
  const count = found(match, "count");
  const single = match.units.some((unit) => isHandle(unit) && !unit.word.endsWith("s"));
  return [{ act: "stay", of: "handles", single, ...(count === undefined ? {} : { count }) }];
};

const HANDLES: readonly Production[] = [
  say("@take for|of|hold|up|on? of? @handle", otherHandle),
  say("@take @handle up|too|crossed?", UP),
  say("@handle @comes? up|again", UP),
  say("hang|hanging|hook|hooking @handle up", DOWN),
  say("hang|hanging|hook|hooking up? left|right @handle up?", DOWN),
  say("done|finished|through with @handle", DOWN),
  say("@take free|spare|loose @handle", UP),
  say("@take left|right one @way*", handUp, "last"),
  say("@put @handle up", UP),
  say("@handle @comes @way* in|into @hands", intoHand),
  say("@handle @way* in", UP),
  say("@take it|them|that|both|another again|back|up? again?", UP_LOOSE),
  say("collect|grab|fetch it|them|both", UP_LOOSE),
  say("@take up? other|second one?", UP_LOOSE, "last"),
  say("rest|hang one|it|them|both", DOWN_LOOSE, "last"),
  say("drop it|them|both", DOWN_LOOSE, "last"),
  say("drop one", [{ act: "handles-down", count: null, loose: true, or: ONE_SPRING_OFF }], "last"),
  say("let one|it|them|both go", DOWN_LOOSE),
  say("@comes? up again", UP_LOOSE, "start"),
  say("@comes? up in|into|with @hands", handUp),
  say("@comes? down and? up again", [...down(null), ...UP_LOOSE], "whole"),
  say("@hands pick|picks|take|takes|grab|grabs|hold|holds|catch|catches it? up?", handUp),
  say("@hands|arm|arms pick|picks|take|takes|grab|grabs|hold|holds|get|gets|on|to @handle", intoHand),
  say("@take? @handle in|into @limb|@hands", intoHand),
  say("@take? @handle each", up(2)),
  say("@take? @handle per|each hand|side", up(2)),
  say("@put|slip|wrap? hands @way* in|into|through|round|around|on @handle", UP),
  say("@take|help @way* to|for @handle", UP),
  say("grip|grips|gripping @handle", UP),
  say("@handle @way* ready", UP),
  say("up with @handle", UP),
  say("@handle @way* up", UP),
  say("@take them|it|one in|into|with @limb", intoHand),
  say("@take hold", up(null)),
  say("@take them|it|both up", up(null)),
  say("@swap|pass|give|move|bring|put? @handle @way* in|into|to @hands", intoHand),
  say("@swap|pass|give|move|bring|take|put? @handle @way* across|over? to|into left|right", intoHand),
  say("pass @handle @way* over|across", PASSED),
  say("pick|take|grab|collect it|them? @way* again? @way* with|in|into|using left|right|@hands", handUp),
  say("@swap? @handle @way* out|from of? left|right|@hands and? @way* into|in|to|over left|right|@hands", toHand),
  say("add @handle", UP),
  say("cross|crossing|uncross|uncrossing|untangle|criss-cross @handle|them|over|cables", CROSS),
  say("cross|crossing|uncross|uncrossing|untangle @handle|over?", CROSS),
  say("uncross|untangle|untwist|unwind|straighten @way* out? @handle|cables", CROSS),
  say("undo|undoing cross|crossing|x", [{ act: "handles-cross", un: true }]),
  say("@take|@put @handle @way* crossed|uncrossed|straight|parallel", CROSS),
  say("@handle @be? not|longer @way* cross|crossed|crossing more?", CROSS),
  say("@handle @way* to? normal|usual|parallel|straight", CROSS),
  say("@handle @way* across|over", CROSS),
  say("@swap @handle @way* over|across", swappedOver),
  say("@take|@put @handle @way* across|over each? other?", CROSS),
  say("make x|cross with? @handle?", CROSS),
  say("@take? opposite @handle", CROSS),
  say("@take @handle @way* crossed", CROSS),
  say("@handle @be? crossed|uncrossed|cross|crossing|straight", CROSS),
  say("crossed|uncrossed", CROSS),
  say("cross|crossed @body|@limb", NOTHING),
  say("cross|crossing arms|hands|wrists over?", [{ act: "handles-cross", un: false, loose: true }]),
  say("@put @handle @way* @down", DOWN),
  say("@put|@free @handle", DOWN),
  say("replace @handle", DOWN),
  say("@handle @home", DOWN),
  say("@handle @way* back where|to|in @way* live|lives|belong|belongs|home|came|were?", DOWN),
  say("@take? left|right @handle @way* in|into|to|with @hands|left|right", acrossHands),
  say("no @handle", NO_HANDLES),
  say("without @handle", NO_HANDLES),
  say("@not|longer need|want|use|using @handle any? more?", NO_HANDLES),
  say("@handle @not need|want", NO_HANDLES, "last"),
  say("rid|goodbye|bye|farewell of|to @handle", NO_HANDLES),
  say("let @handle rest|hang|be", NO_HANDLES),
  say("@take|slip? hands? @way* off|out of? @handle", NO_HANDLES),
  say("@handle @comes? to|onto floor|@station|ground", NO_HANDLES),
  say("@free|empty @hands", DOWN_LOOSE, "whole"),
  say("@handle @be? finish|finished|done|gone|away|free|off|out", DOWN),
  say("no more? @handle", NO_HANDLES, "whole"),
  say("@put @way* down", down(null), "whole"),
  say("@handle @put @way* @down", DOWN),
  say("@handle @take up|both|two?", UP, "last"),
  say("@hands give|gives|drop|drops|leave|leaves|release|releases @handle", DOWN),
  say("@put @down @handle", DOWN),
  say("@handle @be? @way* @down", DOWN),
  say("@handle @be? @way* on|onto hook|hooks|peg|pegs|post|posts|floor|@station", DOWN),
  say("let go of? @handle?", DOWN),
  say("let @handle go", DOWN),
  say("@put them|it|both|everything @way* @down", down(null)),
  say("@put one @way* @down", down(1)),
  say("hang them|it up", down(null)),
  say("hang|hanging up? @handle", DOWN),
  say("hands free|empty", down(null)),
  say("@hands @way* on|onto|to|down|under|flat|wide|below|beneath|wider|shoulder", (match) => [
    ...HANDS_PLACED,
    ...limbSide(match),
  ]),
  say("pull|press|push|row|draw|bring|pulls|pull on @handle", NOTHING),
  say("@handle", SOME_HANDLES, "whole"),
  say("with|using|holding @handle", SOME_HANDLES, "last"),
  say("with|holding @handle in @hands", intoHand),
  say("off|down|away with @handle", DOWN),
  say("give @handle rest", DOWN),
  say("@handle", [{ act: "handles-some" }]),
  say("light|firm|soft|strong|gentle|loose|relaxed|tight|easy grip|grips|hands|handle", NOTHING),
];

/** "Swap the handle over" is from hand to hand, "swap the handles over" crosses them. */
function swappedOver(match: Matched): readonly Draft[] {
  return match.units.some((unit) => isHandle(unit) && unit.word.endsWith("s")) ? CROSS(match) : PASSED;
}

/** "Take the other handle" takes one, and names the side where one hand has had one. */
function otherHandle(match: Matched): Draft[] {
  const side = found(match, "side");
  return side === "other" ? [...UP(match), { act: "side", side, limb: true }] : UP(match);
}

/** "Two handles." */
function SOME_HANDLES(match: Matched): Draft[] {
  return [{ act: "handles-some", count: found(match, "count") ?? null }];
}

const stay = (of: Thing): readonly Draft[] => [{ act: "stay", of }];
const faced = (match: Matched): Draft[] => {
  const facing = found(match, "facing");
  return [{ act: "stay", of: "turn", ...(facing ? { facing } : {}) }];
};

const STAYS: readonly Production[] = [
  say("hold|holds|take|takes|bear|bears weight", NOTHING),
  say("same @load", stay("springs")),
  say("@load @be? same|unchanged|stay|stays", stay("springs")),
  say("@load @be? @stay same|on|put|there|here|as?", stay("springs")),
  say("@load as is|are|were?", stay("springs")),
  say("@stay @way* with? same? @load on|as|same? is|are|were?", stay("springs")),
  say("@load @be? fine|good|okay|happy|perfect|untouched|alone @way*", stay("springs")),
  say("rest|others @be? @stay? same|unchanged|identical", stay("rest")),
  say("@load? no @load change|changes", stay("springs")),
  say("@load @be? not touch|touched|move|moved|swap", stay("springs")),
  say("@load @be? no|not change|changes|changed|changing", stay("springs")),
  say("no @load to? change|changes|move|touch", stay("springs")),
  say("@amount @be? same|unchanged|as just? as? is|are|was|were|before", stay("springs")),
  say("with? @amount @be? just|exactly as is|was|were", stay("springs")),
  say("@swap|touch|alter|adjust|move|altering anything|thing|nothing|everything", [{ act: "touch", of: "all" }]),
  say("no change|changes|changing to|in|of|with|on @load", stay("springs")),
  say("no turn|turning", stay("turn")),
  say("@stay|still @face @towards? @facing", faced),
  say("@stay|still to|towards @facing", faced),
  say("@stay|still look|looking to|towards? @facing", faced),
  say("stay|stays|keep|keeping on|with|to left|right", stay("side")),
  say("stay|stays|keep|keeping on|with @flank", stay("side")),
  say("same way|direction|facing", stay("turn")),
  say("@stay @way* on|at @station", stay("station")),
  say("@stay @way* at|by front|back", stay("station")),
  say("@body|@limb @stay @way* on|at|onto @station", stay("station")),
  say("@stay @feet @way* in", stay("strap"), "last"),
  say("@stay @strap @way* alone|as|where", stay("strap")),
  say("@stay|still @way* them|it? crossed|uncrossed", stay("handles")),
  say("@feet @stay in|inside @strap", stay("strap")),
  say("@stay @feet? in|inside @strap", stay("strap")),
  say("@stay @strap @way* on?", stay("strap")),
  say("@strap stay|stays|staying on?", stay("strap")),
  say("still @way* in|inside @strap", stay("strap")),
  say("keep|keeping|stay|hang|hold|holding hold|on|onto of|to? @handle", KEPT),
  say("keep|keeping just|only|hold? of? @handle", KEPT),
  say("keep|keeping @handle in|up|with|on? @limb|you|me?", KEPT),
  say("stay|keep|keeping|leave|leaving|remain @handle @way* crossed|uncrossed", KEPT),
  say("hold|holding|have @handle @way* crossed|uncrossed", CROSS),
  say("keep|keeping hold|holding on?", stay("handles")),
  say("@handle still @way* in|on|with|up? @limb|@hands|you|hand?", KEPT),
  say("@take|bringing|bring|keep @handle with you|me|us", KEPT),
  say("@take|bringing|bring|keep @handle along", KEPT),
  say("@handle @comes with|along|too you|me|us?", KEPT),
  say("hang|hold on to? @handle?", KEPT),
  say("still @way* just|only|with|on|in|holding? @handle", KEPT),
  say("@handle stay|stays|staying @way* in|on|up|with|put? @limb|@hands?", KEPT),
  say("hands stay|stays in @handle", KEPT),
  say("@handle remain|remains", KEPT),
  say("@handle with you|me|us", KEPT, "whole"),
  say("@hands @stay @way* in|on @handle", KEPT),
  say("same @handle", stay("handles")),
  say("@stay where|put|there|here|down|up", stay("place"), "whole"),
  say("@stay right|exactly|just? where are|is|were?", stay("place")),
  say("same place|spot", stay("place")),
  say("@hands|@handle @stay? @way* where|there are|is|were?", stay("handles")),
  say("@feet @stay? @way* where|there are|is|were?", stay("strap")),
  say("same position", stay("position")),
  say("same set|setup|everything|thing|again up?", stay("all")),
  say("same", stay("all"), "whole"),
  say("all|everything|nothing @be? same|unchanged|new|different|changes|change|moves|stay|stays", stay("all")),
  say("leave|let all|everything|it be|alone", stay("all")),
  say("all|everything @stay same|as|put|there|on?", stay("all")),
  say("all|everything as were|was|before|is", stay("all")),
  say("nothing|everything|all else stays|stay|remains|remain on?", stay("rest")),
  say("nothing|everything|all else @be? same|unchanged|changes|change|changing|moves|move", stay("rest")),
  say("no change|changes|changing", stay("all")),
  say("@stay it|everything|this? @way* exactly? same|as is|are|were?", stay("all")),
  say("as were|before|is", stay("all"), "whole"),
  say("exactly|just as were|are|before", stay("all")),
  say("move", [{ act: "touch", of: "place" }], "whole"),
];

export const OF_HANDS: readonly Production[] = [...STAYS, ...HANDLES];
