/** How the carriage and the springs are told. */
import type { AmountPart } from "./amounts.ts";
import { type Amounts, type Draft, type Production, say } from "./draft.ts";
import type { Matched } from "./pattern.ts";
import { numberOf } from "./quantities.ts";

const HOME: readonly Draft[] = [{ act: "carriage-home" }];
const NOTHING: readonly Draft[] = [];

const CARRIAGE: readonly Production[] = [
  say("@bring|@ride @carriage @way* @home", HOME),
  say("@bring|@ride @way* @home with|@carriage @carriage?", HOME),
  say("@carriage @bring|@ride|@be? @way* @home", HOME),
  say("@bring|@ride? @carriage @bring|@ride|@be? @way* to|against|into front|@stopper", HOME),
  say("all? @way* to|against|into|at @stopper", HOME),
  say("meet|find|touch|kiss|reach @stopper", HOME),
  say("@bring @carriage @way* to rest", HOME),
  say("@bring @carriage @way* to? resting|home|start|starting|rest place|position|spot", HOME),
  say("@carriage come|comes|roll|rolls @way* to you", HOME),
  say("@park|settle @carriage", HOME),
  say("@carriage @be? at rest|stopped", HOME),
  say("bring @carriage @way* back?", HOME),
  say("@carriage returned|returns|return|@dock|@close", HOME),
  say("bring @carriage @way* out|with|to|toward|towards|under|halfway|forward|as", NOTHING),
  say("@bring|@ride? @carriage @way* in middle|centre|center|line|place|air|front", NOTHING),
  say("@bring? @carriage @way* in and|then out", NOTHING),
  say("in and out", NOTHING),
  say("@carriage out", NOTHING),
  say("@carriage out and|then @way* in|home", NOTHING),
  say("bring|take|let|walk|@ride it|her|them|everything @way* @home", HOME),
  say("@dock it|her|there|in? @carriage?", HOME),
  say("@close it|her|up", HOME),
  say("@ride on? @way* in", HOME, "whole"),
  say("come|slide|roll|glide|ride all|right|back @way* in", HOME),
  say("home", HOME),
  say("in|home @comes", HOME, "start"),
  say("bring @carriage @way* to close", HOME),
  say("all way in", HOME, "start"),
  say("you're|we're|everyone's|everybody's|it's in|home", HOME, "whole"),
  say("come|roll|glide|ride|coast @way* in and", HOME, "start"),
  say("come|roll|glide|ride|coast @way* in and @way* out", NOTHING),
  say(
    "not|never|quite|almost|nearly|just short|off|quite|from|near|before|toward|towards|halfway|half of|to|quite? home",
    NOTHING,
  ),
  say("home straight|stretch|run|side?", NOTHING),
  say("breathe|breath|inhale|breathing|inhaling|sniff|air @way* in|home|out", NOTHING),
];

const parts = (match: Matched, n = 0): readonly AmountPart[] =>
  match.units.flatMap(({ amount }) => (amount ? [amount] : []))[n] ?? [];

/** "On two more": what goes on, whatever the words before it. */
const springs =
  (way: Amounts) =>
  (match: Matched): Draft[] => {
    const said = parts(match);
    if (way === "off" && said.some(({ count }) => count === 0))
      return [{ act: "springs", way, parts: said.map((part) => ({ ...part, count: part.count || null })) }];
    return [{ act: "springs", way: way === "total" && said.every(({ more }) => more) ? "on" : way, parts: said }];
  };

/** A number without a noun: "add one", "down to two". */
const counted =
  (way: Amounts) =>
  ({ units }: Matched): Draft[] => {
    const said = units.findLast(
      ({ word, classes }) => word === "another" || (classes.includes("number") && numberOf(word) !== null),
    );
    return said ? [{ act: "springs", way, parts: [{ count: numberOf(said.word), more: false }] }] : [];
  };

const swapped =
  (off: 0 | 1) =>
  (match: Matched): Draft[] => [
    { act: "springs", way: "off", parts: parts(match, off) },
    { act: "springs", way: "on", parts: parts(match, 1 - off) },
  ];

/** "Light for heavy" says what goes on first or last, whichever the plan has. */
const either = (match: Matched): Draft[] => [{ act: "springs-swap", parts: [parts(match, 0), parts(match, 1)] }];

const bare = (match: Matched): Draft[] => {
  const said = parts(match);
  // "No middle."
  const named = said.filter(({ spring, count }) => spring !== undefined && count === 0);
  if (named.length > 0 && named.length === said.length)
    return [{ act: "springs", way: "off", parts: named.map((part) => ({ ...part, count: null })) }];
  const way = said.every(({ more }) => more) ? "on" : said.every(({ less }) => less) ? "off" : "now";
  return [{ act: "springs", way, parts: said }];
};

/** "Take the strong off and one middle". */
const allOf =
  (way: Amounts) =>
  ({ units }: Matched): Draft[] => [{ act: "springs", way, parts: units.flatMap(({ amount = [] }) => amount) }];

/** "A light to go with your middle": only the first goes on. */
const first =
  (way: Amounts) =>
  (match: Matched): Draft[] => [{ act: "springs", way, parts: parts(match) }];

const FIELD: readonly Draft[] = [{ act: "springs", way: "field" }];
const SOME: readonly Draft[] = [{ act: "springs", way: "some" }];
const NONE: readonly Draft[] = [{ act: "springs", way: "none" }];

const AMOUNTS: readonly Production[] = [
  say("@swap @amount out|over|up? for|to|with|into|against|by @amount", swapped(0)),
  say("let|have|lets @amount join|joins @amount?", first("on")),
  say("in? place|lieu of @amount @comes? @amount", swapped(0)),
  say("replace|replacing|swap|swapping|exchange it|that|them with|by|for @amount", springs("on")),
  say("@amount @be? not|longer|hardly needed|wanted|necessary|required", springs("off")),
  say("instead of @amount @comes|@set|@reach|@add? @amount", swapped(0)),
  say("@amount can|may|must|should|could to? go|rest|leave|retire|finish us|you?", springs("off")),
  say("@amount comes|come|coming", springs("on"), "last"),
  say("@amount comes|come|coming to|with it|them|that", springs("on")),
  say("@amount @comes? plus|additional|addition|extra", springs("on"), "last"),
  say("@amount @comes? also|too", springs("on"), "last"),
  say("@amount on it", springs("on")),
  say("@amount joins|join it|them|that|those", springs("on")),
  say("@swap out|over|up|around @amount for|to|with @amount", swapped(0)),
  say("@amount makes|make|gives|give way|room for|to @amount", swapped(0)),
  say("@swap in @amount for|instead of? @amount", swapped(1)),
  say("substitute|sub @way* @amount for @amount", swapped(1)),
  say("take|bring|drop|cut @amount @way* to|into @amount", swapped(0)),
  say("put|pop @amount", springs("on"), "whole"),
  say("@amount joins|arrives", springs("on"), "last"),
  say("@add @amount to|onto @amount", first("on")),
  say("@amount for @amount", either, "whole"),
  say("@amount @on? in place|lieu of @amount", swapped(1)),
  say("@amount replaces @amount", swapped(1)),
  say("@amount @comes @on? for|instead @amount @comes? @off?", swapped(1)),
  say("@set|@add @amount @on? instead|rather|for|in of|than|place? of? @amount", swapped(1)),
  say("@amount instead|rather of|than @amount", swapped(1)),
  say("@amount @way* off and? @amount @way* on", swapped(0)),
  say("@amount @way* on and? @amount @way* off", swapped(1)),
  say("@add @amount @way* on?", springs("on")),
  say("@set|@add @amount @way* on and @amount", allOf("on"), "last"),
  say("@set|@remove|lift @amount @way* off|away|out and @amount", allOf("off"), "last"),
  say("double|doubling @way* on|to? @amount", springs("on")),
  say("@amount @comes? in place", springs("on"), "last"),
  say("@amount take|takes place", springs("on"), "last"),
  say("@amount @be? @swapped", springs("off"), "last"),
  say("@amount join|joins one|ones|what|rest|others", springs("on")),
  say("@set|@add @way* on|in|up|back @amount", springs("on")),
  say("@amount @be? to? @added", springs("on")),
  say("@amount @be? to? @removed", springs("off")),
  say("@amount @be? to? @swapped for|by|with|to @amount", swapped(0)),
  say("@amount @comes? out|off|gone and? @amount @comes? in|on", swapped(0)),
  say("@amount @comes? in|on and? @amount @comes? out|off|gone", swapped(1)),
  say("@amount no|any more|longer", springs("off"), "last"),
  say("@amount @add", springs("on"), "last"),
  say("@amount @remove", springs("off"), "last"),
  say("@amount @way* on? where @amount was|were|is|are", swapped(1)),
  say("less|minus @amount", springs("off")),
  say("@set|@add @amount @way* on", springs("on")),
  say("plus|reach|fetch @way* for? @amount", springs("on")),
  say("to? @set|@add|@reach? @amount also|too|besides|alongside|extra", springs("on")),
  say("to? @set|@add|@reach? @amount as well", springs("on")),
  say("@set|@add|@reach? @amount for company", springs("on")),
  say("@set|@add|@reach? @amount on|in top|addition", springs("on")),
  say("@set|@add|@reach? @amount to? go|goes with @amount?", first("on")),
  say("@amount @be? @way* on next|beside|alongside|with|top to|of? @amount?", first("on")),
  say(
    "@set|@add|@reach|treat up|to|for? @amount @way* on? next|beside|alongside|with|top to|of? @amount?",
    first("on"),
  ),
  say("@amount @be? @way* on", springs("on-or-now")),
  say("@amount comes|come|coming", springs("on"), "whole"),
  say("@amount @comes? in", springs("on"), "whole"),
  say("in|on @comes @amount", springs("on")),
  say("@remove @amount @way* off?", springs("off")),
  say("@set|lift|slide @way* off|away @amount", springs("off")),
  say("@set|@remove|leave|lift|slide|have|want|need|get @amount @way* off|away|out|aside", springs("off")),
  say("@amount both? @be? @way* off|away", springs("off")),
  say("@amount both @be? @way* on|in", springs("on")),
  say("@amount @be|has? gone|goes|go|finish|finished|finishes|done|no|leaves|leave", springs("off"), "last"),
  say("@amount @comes? out|gone", springs("off"), "whole"),
  say("off|out|away @comes? @amount", springs("off")),
  say("no more @amount", springs("off")),
  say("without @amount", springs("off")),
  say("@amount and? nothing else|more|besides", springs("total")),
  say("@amount only|alone", springs("total"), "last"),
  say("@put|hang @amount @way* back", springs("off-or-on")),
  say("pick|grab|get|give|choose|find|treat|help up|to? @amount", springs("on-or-now")),
  say("to? need|want|have|use|using @amount @way* on?", springs("now-or-on")),
  say("you've|we've|already|currently got|have? @amount @way* on?", springs("has")),
  say("@amount with|and @amount already|there", first("on")),
  say("on with @amount", springs("on")),
  say("carry|go|work|stay on? with|on @amount only|alone", springs("total")),
  say("on|with @amount only|alone", springs("total"), "last"),
  say("off|out with @amount", springs("off")),
  say("in with @amount", springs("on")),
  say("let @amount go", springs("off")),
  say("@amount has|have|needs|need|can|must to? go|leave|disappear", springs("off"), "last"),
  say("done|finished|through with @amount", springs("off")),
  say("rid|goodbye|bye|farewell of|to @amount", springs("off")),
  say("@not|longer need|want|use|using @amount any? longer|more?", springs("off")),
  say("@amount @set @way* off|away|out", springs("off")),
  say("@amount joins|meets|join|meet @amount", first("on")),
  say("@amount @way* to|into|becomes @amount", either, "whole"),
  say("from @amount @way* to @amount", swapped(0)),
  say("@stay on @amount alone|only", springs("total")),
  say("heavier by @amount", springs("on")),
  say("@amount heavier", springs("on"), "whole"),
  say("lighter|lighten @load? by @amount", springs("off")),
  say("@amount lighter", springs("off"), "whole"),
  say("@amount @not need|want|use|keep", springs("off"), "last"),
  say("@amount can|must|should|has|may to? come off|away", springs("off")),
  say("only|just @amount @stay @way* on?", springs("total")),
  say("@stay only|just @amount @way* on?", springs("total")),
  say("keep|keeping|leave|leaving|stay|hold with|on? @amount @way* on?", springs("keep")),
  say("@amount stay|stays|staying|remain|remains @way* on?", springs("keep")),
  say("on|onto|to|with|of @amount", springs("total")),
  say("@swap|go|@set @way* to|onto|on|into @amount", springs("total")),
  say("down|up|back to|at @amount", springs("total")),
  say("@amount", bare),
  say("@amount @set|@add on", springs("on")),
  say("@amount @set|@remove off", springs("off")),
  say("same @amount", (match) => (parts(match).length === 1 ? [{ act: "stay", of: "springs" }] : bare(match))),
  say("no @springs stay|stays|left|remain|remains on?", NONE),
  say("touch|from|that|about|had|was|were @amount @way* on?", NOTHING),
  say("@amount give|gives|make|makes less|more|it", NOTHING),
  say("@amount that|which", NOTHING),
  say("beside|alongside @amount", NOTHING),
  say("next to @amount", NOTHING),
  say("@amount @be? @way* too much|little|heavy|light|easy|hard|strong|soft", NOTHING),
  say("@springs-field on?", FIELD),
  say("@springs @be? @number", counted("now")),
  say("down|up|back to @number", counted("total")),
  say("@number of them|those", counted("total"), "last"),
  say("@add|give another|@number more?|extra?|on?", counted("on"), "last"),
  say("@set|@add another|@number more? @way* on", counted("on"), "last"),
  say("@number more on", counted("on"), "whole"),
  say("another on", counted("on"), "whole"),
  say("@remove another|@number more? @way* off?", counted("off"), "last"),
  say("@set|lift another|@number more? @way* off|away", counted("off"), "last"),
  say("both @comes? off|out|away", [{ act: "springs", way: "off", parts: [{ count: 2, more: false }] }], "whole"),
  say("@set @way* off another|@number", counted("off"), "last"),
  say("@number off", counted("off"), "whole"),
];

const WITHOUT_AMOUNT: readonly Production[] = [
  say("@springs all? off", NONE),
  say("@be? all|everything @way* off but|except|bar|apart from? @amount", springs("total")),
  say("nothing|none but|except @amount", springs("total")),
  say("@set|@remove off? all|everything off? but|except|apart from? @amount", springs("total")),
  say("without @springs", NONE),
  say("@set|@remove all? @springs @way* off?", NONE),
  say("@set all|everything|them @way* off", NONE),
  say("everything|all off", NONE),
  say("everything|all else|other|others @comes? @way* off|goes|go|out|away", SOME),
  say("rest|other|others @comes? @way* off|goes|go|out|away", SOME),
  say("@remove rest|others", SOME),
  say("strip it|everything|@carriage", NONE),
  say("touch|@swap|adjust|alter @load", [{ act: "touch", of: "springs" }, ...SOME]),
  say("heavier|lighter @springs?", SOME),
  say("@springs|tension|resistance|load", SOME),
];

export const OF_SPRINGS: readonly Production[] = [...CARRIAGE, ...AMOUNTS, ...WITHOUT_AMOUNT];
