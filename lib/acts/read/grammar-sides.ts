/** How a side is told, by itself or by a limb. */
import { type Draft, found, limbSide, type Production, say } from "./draft.ts";
import type { Matched } from "./pattern.ts";

const NOTHING: readonly Draft[] = [];

function side(match: Matched): Draft[] {
  const word = found(match, "side");
  if (!word || word === "any" || word === "first") return [];
  return word === "same" ? [{ act: "stay", of: "side" }] : [{ act: "side", side: word }];
}
/** "Repeat on the right". */
const ofFacing =
  (limb?: true) =>
  (match: Matched): Draft[] => {
    const word = found(match, "facing");
    return word === "left" || word === "right" ? [{ act: "side", side: word, ...(limb ? { limb } : {}) }] : [];
  };
/** "The other leg": a side only where it is not said of support. */
function otherLimb(match: Matched): readonly Draft[] {
  return found(match, "side") === "other" ? OTHER : limbSide(match);
}
/** "Right leg", "left arm again": the side, unless it is a hand, which may only hold on. */
function wholeLimb(match: Matched): readonly Draft[] {
  const isHand = match.units.some(({ word }) => /^(hand|palm|elbow|forearm|shoulder|hip)/.test(word));
  return isHand ? otherLimb(match) : side(match);
}
const OTHER: readonly Draft[] = [{ act: "side", side: "other" }];

export const OF_SIDES: readonly Production[] = [
  say("@side", side),
  say("@swap? on|onto|to|over? @side", side),
  say("@of-limb", limbSide),
  say("@side-field", side),
  say("@limb to start|begin", limbSide),
  say("@side to start|begin", side),
  say("@sided again|first|now|only|works|working|begins|starts|begin|start|leads?", wholeLimb, "whole"),
  say("@stay|same @way* on|with? @sided", [{ act: "stay", of: "side" }]),
  say("@limb", limbSide),
  say("@limb is|are|stays|stay|rests|hip|hips", NOTHING),
  say("@limb @way* on|onto|to|at hip|hips|chest|head|waist|rib|ribs|thigh", (match) =>
    found(match, "side") === "field" ? side(match) : [],
  ),
  say("next side|leg|arm", OTHER, "whole"),
  say("@swap which leg|foot|arm|side", OTHER),
  say("do|make|train|match|work|working|go|swap|switch|over|change @way* on|to|onto? left|right", ofFacing(), "last"),
  say("on|onto|take it|this|that? to? left|right", ofFacing(), "last"),
  say("begin|start left|right", ofFacing(), "last"),
  say("mirror|even|repeat it|this|that|things @way* out?", OTHER, "whole"),
  say("@limb @way* back|forward|forwards|first|next|goes|on|to|up|gets|has|takes|does|works", otherLimb, "start"),
  say("side two|2", [{ act: "side", side: "other" }]),
  say("left|right one", ofFacing(), "whole"),
  say("leg|legs|arm|foot|@flank @be? left|right", ofFacing(true), "last"),
  say("repeat|again|start|begin @way* on|with left|right", ofFacing()),
  say("on|with|for left|right", ofFacing(), "last"),
  say("on left|right of|hand|edge|end", NOTHING),
  say("left|right", ofFacing(true), "whole"),
  say("left|right handed", ofFacing(true)),
  say("@swap @way* sides|side|legs|leg|arms|arm|hands|hand|feet|foot|over", OTHER),
  say("@swap|swap|switch", OTHER, "whole"),
  say("other|second|opposite one", OTHER, "whole"),
  say("@swap|do|use|using|with|for|on @sided", otherLimb, "last"),
  say("now @sided", otherLimb, "whole"),
  say("other", [{ act: "handles-up", count: 1, loose: true, implied: true }, ...OTHER], "whole"),
  say("@side @face|to|towards", NOTHING),
];
