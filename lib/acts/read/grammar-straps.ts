/** How straps are told. */
import { type Draft, found, limbSide, type Production, say } from "./draft.ts";
import type { Matched } from "./pattern.ts";

const NOTHING: readonly Draft[] = [];

/** "Other foot in the strap" takes one out of it. */
function intoStrap(match: Matched): Draft[] {
  const side = found(match, "side");
  const on: Draft = { act: "strap-on" };
  if (side === "other") return [{ act: "strap-off", implied: true }, on, { act: "side", side, limb: true }];
  return side === "left" || side === "right" || side === "field"
    ? [on, { act: "side", side, limb: true, held: true }]
    : [on];
}
/** "Foot back in", "right leg in", which may be about a strap. */
const looseOn = (match: Matched): Draft[] => [{ act: "strap-on", loose: true }, ...limbSide(match)];
const OFF: readonly Draft[] = [{ act: "strap-off" }];
const ON: readonly Draft[] = [{ act: "strap-on" }];

export const OF_STRAPS: readonly Production[] = [
  say("@wear|@comes? @feet @comes? @way* in|into|to|through|inside|under|beneath @strap", intoStrap),
  say("with|now @feet @way* in|into|through|under @strap", intoStrap),
  say("@feet take|takes|get|gets @strap", intoStrap),
  say("@feet find|finds|meet|meets @strap", intoStrap),
  say("strap @way* in|into|on @feet", intoStrap),
  say("strap @feet @way* in", intoStrap),
  say("@strap @way* on|to|for @feet", intoStrap),
  say("@wear into|in|through it|them", [{ act: "strap-on", loose: true }]),
  say("@feet go|goes|come|comes|step @way* in", looseOn, "whole"),
  say("@wear|put it|them @way* on", [{ act: "strap-on", loose: true }], "last"),
  say("@feet @way* out long|straight|wide|front|forward|forwards|ahead|behind", NOTHING),
  say("done|finished|through with @strap", OFF),
  say("@wear @feet in|into|through", intoStrap, "whole"),
  say("@feet back|again? in|through", looseOn, "whole"),
  say("step|slip|go|come|slide in|into @strap", ON),
  say("clip|hook|strap in", ON, "whole"),
  say("@wear @strap @way* on", ON),
  say("@wear on @strap", ON),
  say("@strap @way* on", ON),
  say("@strap @wear @way* on", ON),
  say("@strap @wear|@free|take @way* off", OFF),
  say("@wear? @feet @way* in|into|under|through it|them", [{ act: "strap-on", loose: true }], "last"),
  say("take|takes|taking @feet @way* out of it|this|things", NOTHING),
  say("have|need|has|needs to leave @strap", OFF),
  say("they|you|we leave @strap", OFF),
  say("hook|tuck|loop|slip|slide @feet in?", looseOn, "whole"),
  say("secure|fasten|tighten @strap", ON),
  say("do up @strap", ON),
  say("@take|find @strap @way* with @feet", ON),
  say("get @way* into|in @strap", ON),
  say("@strap @way* hold|holds|holding @feet", ON),
  say("@strap round|around|over|under|beneath @limb", intoStrap),
  say("out|off of? @strap", OFF),
  say("unstrap|unloop @feet?", OFF),
  say("@feet leave @strap", OFF),
  say("let go of? @strap", OFF),
  say("let @strap go", OFF),
  say("@strap @way* @down", OFF, "last"),
  say("hang up? @strap up?", OFF),
  say("@put @strap @way* @down", OFF),
  say("leave @strap behind", OFF),
  say("from @strap to|onto @platform", OFF),
  say("@swap @strap for @platform|@handle", OFF),
  say("@not|longer need|want|use|using @strap any? more?", OFF),
  say("rid|goodbye|bye|farewell of|to @strap", OFF),
  say("without|no @strap", OFF),
  say("undo|unfasten|shake @strap off?", OFF),
  say("loop|strap @feet up|in?", ON),
  say("strap up|in", ON, "whole"),
  say("strapped in", ON),
  say("@feet strapped|looped @way* in|into|through? @strap?", intoStrap),
  say("@feet hooked|tucked @way* in|into|through @strap", intoStrap),
  say("slide|slip|feed|tuck|pop them in|through", [{ act: "strap-on", loose: true, or: { act: "carriage-home" } }]),
  say("looped|strapped|hooked|clipped|tucked in|into|up", [{ act: "strap-on", loose: true }]),
  say("out of it|them", [{ act: "strap-off", loose: true }]),
  say("@wear|@free|take|step|come|slip|wriggle|wiggle @way* off @strap", OFF),
  say("@strap @be? finish|finished|done|gone|away|free", OFF),
  say("no more? @strap", OFF, "whole"),
  say("@wear|@free|take|step|come|slip? @feet? @way* out of? @strap", OFF),
  say("@strap @be? @way* @off", OFF),
  say("@wear|@free|take @strap @way* @off", OFF),
  say("@wear|@free|take|kick off|out @strap", OFF),
  say("@free @strap|@feet", OFF),
  say("take|get|slide|slip|pull|@wear? @feet @way* out|free|off", OFF),
  say("step|slip|slide|come out", [{ act: "strap-off", loose: true }]),
  say("unhook|unclip", [{ act: "strap-off", loose: true }], "whole"),
  say("@feet @way* on|onto|to|down", [{ act: "strap-off", implied: true }]),
  say("@strap", [{ act: "strap-some", bare: true }], "whole"),
  say("@strap", [{ act: "strap-some" }]),
];
