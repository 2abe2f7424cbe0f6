/** What counts as a claim about the plan, and what is only a way of speaking. */
import { expect, it } from "vitest";
import { type Claim, claimsIn } from "#lib/talk/claims.ts";

/** A claim in words, for readable tables. */
function brief(claim: Claim): string {
  switch (claim.says) {
    case "time":
      return `time ${claim.seconds}`;
    case "last":
    case "first":
      return `${claim.says} ${claim.what}${claim.of ? ` of ${claim.of}` : ""}`;
    case "side":
      return `side ${claim.side}${claim.then ? " next" : ""}`;
    case "next":
      return `next ${claim.name}`;
    case "springs":
      return `springs ${claim.count}${claim.label ? ` ${claim.label}` : ""}`;
    case "rounds":
      return `${claim.nth ? "round" : "rounds"} ${claim.count}`;
    case "halfway":
      return "halfway";
  }
}

it.each([
  ["Two minutes left.", "time 120"],
  ["Only 20 seconds left", "time 20"],
  ["Thirty more seconds!", "time 30"],
  ["Thirty seconds more", "time 30"],
  ["Ten seconds to go.", "time 10"],
  ["45 seconds remaining", "time 45"],
  ["Forty-five seconds left", "time 45"],
  ["Last ten seconds, stay with it.", "time 10"],
  ["Final fifteen seconds", "time 15"],
  ["Half a minute left", "time 30"],
  ["One minute to go", "time 60"],
  ["A minute left", "time 60"],
  ["Last minute, go.", "time 60"],
  ["Two and a half minutes left", "time 150"],
  ["We have five minutes left in the class", "time 300"],
  ["There are twenty seconds left on the clock", "time 20"],
  ["You've got thirty seconds", "time 30"],
  ["90 secs to go", "time 90"],
  ["2 mins left", "time 120"],
  ["You're halfway.", "halfway"],
  ["Halfway there!", "halfway"],
  ["We're half way through", "halfway"],
  ["That's the halfway mark", "halfway"],
  ["Half-way done", "halfway"],
  ["This is the last move of the class", "last move of class"],
  ["Last one!", "last one"],
  ["This is your last one.", "last one"],
  ["Final round", "last round"],
  ["Last set, make it count.", "last set"],
  ["Our last exercise", "last move"],
  ["Final move of this block", "last move of block"],
  ["Very last one", "last one"],
  ["Last side.", "last side"],
  ["This is the final one", "last one"],
  ["Last rep", "last one"],
  ["First move of the class", "first move of class"],
  ["Our first exercise.", "first move"],
  ["First round, find the path.", "first round"],
  ["This is the first set", "first round"],
  ["First side.", "first side"],
  ["Other side.", "side other"],
  ["Now the other side", "side other"],
  ["Switch to the other side, please", "side other"],
  ["Left side.", "side left"],
  ["Right side now", "side right"],
  ["We are on the left side", "side left"],
  ["Same thing on the right side", "side right"],
  ["And the second side", "side other"],
  ["Then the other side", "side other next"],
  ["Other side next", "side other next"],
  ["Plank is next.", "next plank"],
  ["Next up, breathe: row next", "next row"],
  ["Chest press comes next", "next chest press"],
  ["Next is the kneeling row", "next kneeling row"],
  ["Next up is a plank", "next plank"],
  ["Coming up a squat", "next squat"],
  ["Two springs on.", "springs 2"],
  ["One heavy spring", "springs 1 heavy"],
  ["You have three springs", "springs 3"],
  ["No springs", "springs 0"],
  ["Two light", "springs 2 light"],
  ["One heavy on", "springs 1 heavy"],
  ["2 springs on, carriage home", "springs 2"],
  ["Three rounds.", "rounds 3"],
  ["We do two sets of it", "rounds 2"],
  ["Four rounds, all slow", "rounds 4"],
  ["Round two", "round 2"],
  ["Second round", "round 2"],
])("says something: %s", (text, wanted) => {
  expect(claimsIn(text).map(brief)).toContain(wanted.replace("last set", "last round"));
});

it.each([
  "Last but not least, the neck.",
  "First of all, breathe.",
  "Give me a second.",
  "One more time.",
  "Take two breaths.",
  "Two more breaths here.",
  "Two more!",
  "Hold two more seconds at the top.",
  "Three, two, one.",
  "Count to ten.",
  "Pause for one second at the end.",
  "Every two seconds, one pulse.",
  "Take four seconds out and two seconds back.",
  "Bend only half-way.",
  "Lift half way up.",
  "Half the range is plenty.",
  "Slide halfway down and stop.",
  "Halfway through the press, breathe out.",
  "Hips first, then the chest.",
  "Lead with the heel first.",
  "Head goes first.",
  "At first it feels light.",
  "First, soften the knees.",
  "The ribs are the last thing to lift.",
  "The last one to leave the platform is the heel.",
  "Slower than the last one.",
  "Higher than your last round.",
  "Make it last.",
  "Let the breath last.",
  "At last, stretch.",
  "Better than the first one.",
  "Reach to the other side.",
  "Look over to the other side of the room.",
  "Feel the left side of the waist.",
  "Keep the right side long.",
  "Both sides of the belly work.",
  "Side bend, long neck.",
  "Stay on the safe side.",
  "Left hand on the bar.",
  "Right foot forward.",
  "Keep what is left in the tank.",
  "All right, here we go.",
  "That's right.",
  "Place one foot next to the other.",
  "Knees next to each other.",
  "What's next?",
  "Next time, go lower.",
  "On the next breath, lift.",
  "Spring back slowly.",
  "Let the springs pull you home.",
  "Resist the springs.",
  "Take off two springs.",
  "Put on one light.",
  "Add one spring.",
  "One spring less if it shakes.",
  "One arm at a time.",
  "Two hands on the bars.",
  "One long line from head to heel.",
  "One hand on the belly.",
  "Round the back gently.",
  "Go round and round with the ankles.",
  "Three rounds of breath.",
  "Set the feet wide.",
  "Set one foot on the platform.",
  "You set the pace.",
  "{seconds-left} seconds left.",
  "{minutes-left} minutes to go.",
  "{next-move} is next.",
  "{side} side now.",
  "{springs} on.",
  "Ten per cent more.",
  "Give it everything you have left.",
  "A second wind is coming.",
  "In the first place, stay safe.",
  "More hips, less hands.",
  "No more, no less.",
])("is only a way of speaking: %s", (text) => {
  const claims = claimsIn(text);
  // A bare count of something is looked at only where a spring has that name.
  expect(claims.filter((claim) => claim.says !== "springs" || claim.sure).map(brief)).toEqual([]);
});

it("reads any text quickly", () => {
  for (const part of ["on to the other ", "and then ", "two more seconds ", "no spring ", "{", "last move of "]) {
    const began = performance.now();
    claimsIn(part.repeat(2000));
    expect(performance.now() - began).toBeLessThan(500);
  }
});
