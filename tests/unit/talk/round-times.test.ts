/** Times that live fields fill in, as people say them. */
import { expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { spokenText } from "#lib/talk/live-words.ts";
import { SyllableCounter } from "#lib/talk/syllables.ts";
import { spokenSeconds, talkByItem } from "#lib/talk/talk.ts";

const item = exampleMove("a");
const plan = examplePlan([item]);
const said = (text: string, secondsLeft: number, classSecondsLeft = 600): string =>
  spokenText(plan, text, { item, next: undefined, secondsLeft, classSecondsLeft });

it.each([
  [0, "zero"],
  [1, "one"],
  [7.4, "seven"],
  [10, "ten"],
  [11, "about ten"],
  [13, "about fifteen"],
  [44.6, "forty five"],
  [47, "about forty five"],
  [48, "about fifty"],
  [58, "about sixty"],
  [60, "sixty"],
  [66, "about sixty"],
  [69, "about seventy five"],
  [90, "ninety"],
  [119, "about one hundred twenty"],
  [137, "about one hundred fifty"],
  [180, "one hundred eighty"],
])("%s s left are said as %s", (left, words) => {
  expect(said("{seconds-left}", left)).toBe(words);
});

it.each([
  [0, "zero"],
  [20, "about half a"],
  [60, "one"],
  [85, "one and a half"],
  [100, "about one and a half"],
  [140, "about two and a half"],
  [185, "three"],
  [200, "about three"],
  [1500, "twenty five"],
])("%s s of the class are said as %s minutes", (left, words) => {
  expect(said("{minutes-left}", 30, left)).toBe(words);
});

it.each([
  ["Last {seconds-left} seconds.", "Last forty five seconds."],
  ["About {seconds-left} seconds to go.", "About forty five seconds to go."],
  ["{seconds-left} seconds to go.", "about forty five seconds to go."],
  ["Long neck, {seconds-left} more.", "Long neck, about forty five more."],
  ["Lasting {seconds-left} seconds.", "Lasting about forty five seconds."],
])("“about” is said where there is room for it: %s", (text, words) => {
  expect(said(text, 47)).toBe(words);
});

it("one second and half a minute are not many", () => {
  expect(said("{seconds-left} seconds", 1)).toBe("one second");
  expect(said("{minutes-left} minutes left", 30, 31)).toBe("half a minute left");
  expect(said("{seconds-left} seconds", 21)).toBe("about twenty seconds");
});

it("the talk time counts the words that are said", () => {
  const text = "{seconds-left} to go";
  const odd = exampleMove("a", { seconds: 47, script: [{ kind: "form", text }] });
  const whole = examplePlan([odd]);
  const talk = talkByItem(whole, classClock(whole)).get("a");
  expect(talk?.syllables).toBe(new SyllableCounter().ofText("about forty five to go"));
  expect(talk?.seconds).toBe(spokenSeconds(plan, "about forty five to go"));
});
