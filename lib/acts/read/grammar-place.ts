/** How a turn, a position, a station and a side are told. */
import type { Facing, Move } from "#lib/plan/schema.ts";
import { type Draft, found, HANDS_PLACED, limbSide, type Production, say } from "./draft.ts";
import type { Matched } from "./pattern.ts";
import type { SideWord } from "./units.ts";
import { IMPLYING, POSITION_PHRASES } from "./vocabulary.ts";

const NOTHING: readonly Draft[] = [];

const turn =
  (loose?: "relative" | "gaze" | "place") =>
  (match: Matched): Draft[] => {
    const to = found(match, "facing");
    return to ? [{ act: "turn", to, ...(loose ? { loose } : {}) }] : [];
  };
/** "On your back, facing the front": the way to face is named last. */
const turnedLast = ({ units }: Matched): Draft[] => turn()({ units: units.toReversed() });
const turned = (to: "round" | "sideways" | "somewhere" | "any"): readonly Draft[] => [{ act: "turn", to }];
const turnedToEnd = (side: SideWord | undefined): Draft[] =>
  side === "left" || side === "right" ? [{ act: "turn", to: side }] : [];
const ANY_TURN = turned("any");
const FACED_STATION: Readonly<Partial<Record<Move["station"], Facing>>> = { front: "front", back: "back" };
/** "Turn to the front platform" may be the way there as well. */
const turnToStation = (match: Matched): Draft[] => {
  const station = found(match, "station") ?? "floor";
  return [
    { act: "turn", to: FACED_STATION[station] ?? "somewhere" },
    { act: "station", station, implied: true },
  ];
};
function turnAway(match: Matched): Draft[] {
  const from = found(match, "facing");
  return from ? [{ act: "turn", to: OPPOSITE[from] }] : [];
}
/** "Your back to the front platform". */
const fromStation = (match: Matched): Draft[] => {
  const from = FACED_STATION[found(match, "station") ?? "floor"];
  return from ? [{ act: "turn", to: OPPOSITE[from] }] : [];
};
const OPPOSITE: Readonly<Record<Facing, Facing>> = { front: "back", back: "front", left: "right", right: "left" };
const turnToSide = (match: Matched): Draft[] => {
  const side = found(match, "side");
  if (side === "left" || side === "right") return [{ act: "turn", to: side, loose: "side" }];
  return side === "other"
    ? [
        { act: "turn", to: "round" },
        { act: "side", side, limb: true },
      ]
    : [{ act: "turn", to: "somewhere" }];
};

const TURNS: readonly Production[] = [
  say("@turn? @round? @way* to? @face @towards? @facing", turn()),
  say("@turn? @round? @way* to? @face @towards? @facing of room|machine|carriage", turn()),
  say("@face|look|looking|see|seeing @towards? left|right|front|back hand? wall|end|side|window|windows", turn()),
  say("@face @towards? @station", turnToStation),
  say("@face @towards? @spot", turned("somewhere")),
  say("@face @towards? @facing wall|end|window|windows", turn()),
  say("your|our|their back|backs to|towards @facing", turnAway),
  say("@face it", ANY_TURN),
  say("@face @towards? @bar|bar|bars", turned("somewhere")),
  say("back|backs to|towards @bar|bar|bars", turned("somewhere"), "whole"),
  say("@turn|@face @round? away from @facing", turnAway),
  say("eyes|gaze|head|heads @facing", turn("gaze"), "whole"),
  say("out|up in front|back of?", NOTHING),
  say("to|towards @facing of room|studio", turn()),
  say("to|towards|at left|right|front|back hand? wall", turn()),
  say("@turn @round? @way* @towards @spot", turned("somewhere")),
  say("@face @towards? other|opposite way|direction|end", turned("round")),
  say("@face @towards? @side", turnToSide),
  say("@face @towards? sideways|@flank", turned("sideways")),
  say("@face away|in|out|bar|{next-move}", turned("somewhere")),
  say("@face|look|looking @towards? @bar", (match) => (found(match, "facing") ? turn()(match) : turned("somewhere"))),
  say("@turn @round? @way* @towards @facing", turn("relative")),
  say("@turn @round? @way* @facing", turn("relative")),
  say("@turn @round? @way* @towards? @side", turnToSide),
  say("@turn @round? @way* @towards @station", turnToStation),
  say("@go @round @way* to? @face @towards? @facing", turn()),
  say("@turn on? @way* @round", turned("round")),
  say("@go on? @way* @round", [{ act: "turn", to: "round", loose: "place" }]),
  say("@go @way* @round|across|along @way* to|at front|back", turn("place"), "last"),
  say("step|hop|climb|jump|get|come off @carriage? @way* to|at front|back", turn("place"), "last"),
  say("roll|flip over @way*", ANY_TURN, "whole"),
  say("@turn @round? @way* to? @face it", ANY_TURN),
  say("@turn @way* @towards? other|opposite way|end|direction @round?", turned("round")),
  say("other|opposite way @round?", turned("round"), "whole"),
  say("all way @round", turned("round")),
  say("half turn", turned("round")),
  say("half? turn of", NOTHING),
  say("about turn|face", turned("round")),
  say("quarter turn @way*", ANY_TURN),
  say("@turn quarter @way* @towards? @facing", turn("relative")),
  say("@turn? ninety|90 degrees?", ANY_TURN),
  say("@turn? ninety|90 degrees? @way* @towards? @facing", turn("relative")),
  say("@turn @round? @way* @towards @flank", turned("sideways")),
  say("quarter turn? @way* @towards? @facing", turn("relative")),
  say("@turn @way* sideways|side on?", turned("sideways")),
  say("sideways", turned("sideways")),
  say("side on", turned("sideways")),
  say("profile", turned("sideways")),
  say("turn|spin|pivot|swivel|rotate @way*", ANY_TURN, "whole"),
  say("@turn @body|@limb", NOTHING),
  say(
    "turn|spin|swivel|pivot|swing|open body|bodies|hips|knees|feet|whole|self|out|up? @way* @face|to|towards @facing",
    turn(),
  ),
  say("@round to|at front|back", turn("place"), "whole"),
  say("@round to|towards|facing @facing", turn()),
  say("@swap direction|directions", turned("round")),
  say("head|heads to|towards|at @facing", NOTHING),
  say("front|forward|forwards|back", turn("place"), "whole"),
  say("@turn out|in|up|off|on", NOTHING),
  say("@facing facing", turn()),
  say("@face|look|looking in? @facing direction|way", turn()),
  say("with? view|look|gaze|eyes @way* to|towards|toward|at @facing", turn()),
  say("@go? to|at front|back @way* @face @towards? @facing", (match) => [...atEnd(match), ...turnedLast(match)]),
  say("with? back|backs @face|to|towards|toward|against @facing|@bar @bar?", turnAway),
  say("with? back|backs @face|to|towards|toward|against @platform", fromStation),
  say("to|towards @facing @turn|@face|look|looking", turn()),
  say("to|towards|toward @facing", turn("place"), "whole"),
  say("at front|back", turn("place"), "whole"),
  say("@towards @spot", turned("somewhere"), "whole"),
  say("look|looking @facing", turn("gaze")),
  say("look|looking to|towards|toward|at @facing", turn()),
  say("@facing wall|walls", turn(), "whole"),
  say("@swap way @face?", turned("round")),
  say("other|opposite direction", turned("round"), "whole"),
  say("look|looking to|towards|toward|at front|back of @body|@station", NOTHING),
  say("@aim @face|to|towards|toward @facing", turn("gaze")),
  say("@limb @face|to|towards|toward @facing", limbSide),
  say("@place of room", (match) => turnedToEnd(found(match, "side"))),
  say("instead|rather of|than @facing", NOTHING),
  say("one eighty", turned("round")),
  say("@body|@limb @face @facing|@spot", turn("gaze")),
  say("turn", [{ act: "touch", of: "turn" }]),
];

const standing = (match: Matched): Draft[] => {
  const station = found(match, "station");
  return station ? [{ act: "station", station }] : [];
};

/** "A plank at the front". */
const atEnd = (match: Matched): Draft[] => {
  const end = found(match, "facing");
  return end === "front" || end === "back" ? [{ act: "station", station: end }] : [];
};
const ontoSide = (match: Matched): Draft[] => [
  { act: "position", fits: ["side-lying"], implied: true },
  { act: "side", side: found(match, "side") ?? "any", limb: true },
];
const SIDE_LYING: readonly Draft[] = [{ act: "position", fits: ["side-lying"] }];

const POSITIONS: readonly Production[] = [
  ...POSITION_PHRASES.flatMap(([phrase, fits]): Production[] => {
    const position: Draft = { act: "position", fits };
    const one = fits.length === 1 ? fits[0] : undefined;
    const stays: Draft = { act: "stay", of: "position", ...(one ? { position: one } : {}) };
    return [
      say(phrase, [position]),
      say(`${phrase} @way* on|onto|to|in|at @station`, (match) => [position, ...standing(match)]),
      say(`${phrase} @way* at|on front|back`, (match) => [position, ...atEnd(match)]),
      say(`${phrase} @way* @face|to|look|looking @towards? @facing`, (match) => [position, ...turnedLast(match)]),
      say(`${phrase} @way* @face @towards? @facing on|onto @station`, (match) => [
        position,
        ...turnedLast(match),
        ...standing(match),
      ]),
      say(`${phrase} @way* on|onto @station @face|to @facing`, (match) => [
        position,
        ...standing(match),
        ...turnedLast(match),
      ]),
      say(`stay|stays|keep|keeping|remain|still @way* in|on|here|there? ${phrase}`, [stays]),
      say(`from|off of? ${phrase}`, NOTHING),
      say(`instead of ${phrase}`, NOTHING),
      say(`out of ${phrase}`, NOTHING),
    ];
  }),
  say("@lie @way* on|onto @side", (match) => [
    { act: "position", fits: ["side-lying"], onSide: found(match, "side") },
    { act: "side", side: found(match, "side") ?? "any" },
  ]),
  say("@lie|roll|over|curl @way* on|onto|to @flank", SIDE_LYING),
  say("on|onto your|our|their @side", ontoSide),
  say("onto @side", ontoSide),
  say("roll|rolling|turn|flip|over @way* on|onto|to @side", ontoSide),
  say("roll|rolling|turn|flip|over @way* on|onto @sided", ontoSide),
  ...IMPLYING.map(([phrase, fits]) => say(phrase, [{ act: "position", fits, implied: true }])),
  say("on|onto @flank", SIDE_LYING, "whole"),
  say("on|onto your|our|their|my @flank", SIDE_LYING, "last"),
  say("on|onto @flank @face|look|looking @towards? @facing", (match) => [...SIDE_LYING, ...turn()(match)]),
  say("on|onto back of", NOTHING),
  say("side by|to side", NOTHING),
  say("@seat_of @way* on|onto @station", (match) => [
    { act: "position", fits: ["seated"], implied: true },
    ...placed(match),
  ]),
  say("sit|hold|hang|stay|hold tight", NOTHING),
  say("@sit @way* back|low|into|deep|deeper|heels|hips|lower", NOTHING),
  say("@limb over|above @limb", NOTHING),
  say("@limb under|below @limb", placed),
];

const KNEES: readonly Draft[] = [{ act: "position", fits: ["quadruped", "kneeling"], implied: true }];

/** Hands and feet that are put somewhere have let go of what they held. */
function placed(match: Matched): Draft[] {
  const [limb] = match.units;
  const at = found(match, "station");
  const hands = limb?.classes.includes("hands") ?? false;
  const side = limbSide(match);
  const station: Draft[] = at === "front" || at === "back" ? [{ act: "station", station: at, implied: true }] : [];
  if (hands && match.units.at(-1)?.word === "platform" && at === undefined)
    return [...HANDS_PLACED, ...A_PLATFORM, ...side];
  if (hands) return [...HANDS_PLACED, ...station, ...side];
  const floor: Draft[] = at === "floor" ? [{ act: "station", station: at, implied: true }] : station;
  if (limb?.classes.includes("feet")) return [{ act: "strap-off", implied: true }, ...floor, ...side];
  return /^knees?$/.test(limb?.word ?? "") && at
    ? [...KNEES, { act: "station", station: at, implied: true }, ...side]
    : side;
}

const OTHER_END: readonly Draft[] = [{ act: "station", station: "other" }];
/** "The platform" is the one to which the plan goes. */
const A_PLATFORM: readonly Draft[] = [{ act: "station", station: "platform", implied: true }];
const FLOOR: readonly Draft[] = [{ act: "station", station: "floor" }];

const STATIONS: readonly Production[] = [
  say("step|stepping|hop|climb|jump|walk|get @way* @into @into? @into? @station", (match) => [
    ...standing(match),
    { act: "position", fits: ["standing"], implied: true },
  ]),
  say("@go|carry|pop|proceed|take @way* @round? @into @into? @into? @station", standing),
  say("@go|carry|over @way* @into? other|opposite|far end|platform", OTHER_END),
  say("find|grab|touch|reach for? @platform", standing),
  say("mount @carriage", [{ act: "station", station: "carriage" }]),
  say("take place on|at @station", standing),
  say("head|make|aim|need|want|use|using for? @platform", standing),
  say("@go @way* @into? front|back of machine", atEnd),
  say("@swap? to|onto? other|opposite end|platform", OTHER_END, "whole"),
  say("leave @carriage", FLOOR, "whole"),
  say("dismount", FLOOR),
  say("floor|ground", FLOOR, "whole"),
  say("@swap ends|platforms", OTHER_END),
  say("round|over|across|up|down|back to|onto @platform", standing),
  say("@platform next?", standing, "whole"),
  say("at @platform", standing, "start"),
  say("and @platform", standing, "last"),
  say("onto @station", standing),
  say("up|back|out on|to @station", standing),
  say("down on|to floor", FLOOR),
  say("to|onto|on|at platform", A_PLATFORM),
  say("to|onto|on @into? @station", standing, "start"),
  say("@into @into @station", standing, "start"),
  say("step|hop|climb|jump @way* off|down @carriage|machine|of?", FLOOR),
  say("get|come @way* off|down off? @carriage|machine", FLOOR),
  say("get|come off", FLOOR, "whole"),
  say("off platform|@platform", NOTHING),
  say("from @platform", (match) => standing(match).map((draft) => ({ ...draft, implied: true }) as Draft)),
  say("off @carriage|machine", FLOOR, "start"),
  say("beside|alongside|next to? @carriage|machine", FLOOR),
  say("step @way* off @platform", NOTHING),
  say("step|walk|hop|head|go|come|move|shift|travel|scoot|make|up|over @way* to|at front|back", turn("place"), "last"),
  say("off step|hop|climb|jump|get|come|pop @carriage?", FLOOR, "start"),
  say("step|hop|climb|jump @way* on|aboard", [{ act: "station", station: "carriage" }]),
  say("get|come @way* on|aboard", [{ act: "station", station: "carriage" }], "whole"),
  say(
    "@limb|@body go|come? @way* on|onto|to|into|from|at|against|under|over|near|stays|stay|of|along on? @station|platform|@bar|edge|bar|bars|rests|rest",
    placed,
  ),
  say("on|onto top of @station", standing),
  say("edge|end|middle|centre|center|top|side|front|back of @station", NOTHING),
];

export const OF_PLACE: readonly Production[] = [...TURNS, ...POSITIONS, ...STATIONS];
