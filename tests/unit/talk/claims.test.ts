/** What counts as a claim about the plan, and what is only a way of speaking. */
import { expect, it } from "vitest";
import { claimsIn } from "#lib/talk/claims/claims.ts";
import type { Claim } from "#lib/talk/claims/types.ts";
import { cpuMs } from "#tests/support/cpu-time.ts";

/** A claim in words, for readable tables. */
function brief(claim: Claim): string {
  switch (claim.says) {
    case "time": {
      const which = claim.which === "left" ? "" : ` ${claim.which}`;
      return `time ${claim.seconds}${which}${claim.of ? ` of ${claim.of}` : ""}`;
    }
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
      return claim.which === "nth"
        ? `round ${claim.count}`
        : `rounds ${claim.count}${claim.which === "more" ? " more" : ""}`;
    case "reps":
      return `reps ${claim.count}${claim.which === "more" ? " more" : ""}`;
    case "following":
      return `following ${claim.count}`;
    case "breath":
      return `breath ${claim.breath} on ${claim.during}`;
    case "halfway":
      return `halfway${claim.of ? ` of ${claim.of}` : ""}`;
  }
}

it.each([
  ["Two minutes left.", "time 120"],
  ["Only 20 seconds left", "time 20"],
  ["Alright only 20 seconds left you guys", "time 20"],
  ["With a further 20 seconds to go", "time 20"],
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
  ["We have five minutes left in the class", "time 300 of class"],
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
  ["Last fifteen seconds, keep the hips level", "time 15"],
  ["About a minute in this one", "time 60 whole of move"],
  ["Thirty seconds of work", "time 30 whole of move"],
  ["You have a minute and a half on this side", "time 90 whole of move"],
  ["This one is fifty-five seconds", "time 55 whole of move"],
  ["We go for forty seconds", "time 40 whole"],
  ["Stay here for twenty seconds", "time 20 whole"],
  ["Two more minutes", "time 120"],
  ["Another thirty seconds", "time 30"],
  ["A couple more minutes to go", "time 120"],
  ["One minute thirty left", "time 90"],
  ["1:30 left", "time 90"],
  ["30s left", "time 30"],
  ["Thirty-seven seconds to go", "time 37"],
  ["A hundred and twenty seconds left", "time 120"],
  ["A quarter of a minute left", "time 15"],
  ["You're thirty seconds in", "time 30 done"],
  ["Twenty seconds done", "time 20 done"],
  ["We've been working for two minutes", "time 120 done"],
  ["This is a forty five minute class", "time 2700 whole of class"],
  ["Forty seconds each side", "time 40 each-side"],
  ["Ten minutes of class left", "time 600 of class"],
  ["We're halfway through the class", "halfway of class"],
  ["Next up: the side plank and reach", "next side plank and reach"],
  ["And next, the side plank, and reach.", "next side plank and reach"],
  ["After this, we have a chest press", "next chest press"],
  ["Get ready for the plank", "next plank"],
  ["Last block, everyone", "last block"],
  ["First block of the class", "first block of class"],
  ["One more round", "rounds 1 more"],
  ["Two sets left", "rounds 2 more"],
  ["Another set", "rounds 1 more"],
  ["Set three of four", "round 3"],
  ["Ten reps.", "reps 10"],
  ["Twelve slow reps, then we rest", "reps 12"],
  ["Eight of these", "reps 8"],
  ["Four more!", "reps 4 more"],
  ["Two more!", "reps 2 more"],
  ["Give me six more, please", "reps 6 more"],
  ["Three reps left", "reps 3 more"],
  ["Last four", "reps 4 more"],
  ["Five to go", "reps 5 more"],
  ["Exhale as you push out", "breath out on out"],
  ["Breathe in on the way back", "breath in on back"],
  ["Breathe out on the way out and in on the way back", "breath in on back"],
  ["As you come back, inhale", "breath in on back"],
  ["Push out on the exhale", "breath out on out"],
  ["Breathe out as you pull", "breath out on pull"],
  ["Inhale when you press", "breath in on push"],
  ["Breathe in as the carriage rolls home", "breath in on back"],
  ["Exhale, push out", "breath out on out"],
  ["Push out and breathe out", "breath out on out"],
  ["Out as the hips rise, in as they lower", "breath in on down"],
  ["In going out, out coming home", "breath out on back"],
  ["Exhale going out, inhale coming back", "breath in on back"],
  ["Inhale out, exhale in", "breath in on out"],
  ["Suck the air in as you press out", "breath in on out"],
  ["On the pull, breathe out", "breath out on pull"],
  ["Second round now", "round 2"],
])("says something: %s", (text, wanted) => {
  expect(claimsIn(text).map(brief)).toContain(wanted.replace("last set", "last round"));
});

it.each([
  ["Stay long. Only 20 seconds left!", "20 seconds left"],
  ["Hüfte hoch — last fifteen seconds, go", "last fifteen seconds"],
  ["You’re halfway, keep it up.", "You’re halfway"],
  ["And next, the side plank and reach. Breathe.", "And next, the side plank and reach"],
  ["Ribs in: exhale as you push out, long neck.", "exhale as you push out"],
  ["Long neck, {seconds-left} to go. Last one!", "Last one"],
  ["On the way back, breathe in.", "On the way back, breathe in"],
])("names the words it was read from: %s", (text, words) => {
  const [claim] = claimsIn(text);
  expect(claim?.said).toBe(words);
  expect(text.slice(claim?.from, claim?.to)).toBe(words);
});

it.each([
  ["Last fifteen seconds", true],
  ["Stay here for twenty seconds", false],
  ["Thirty seconds!", false],
  ["Five to go", false],
  ["Exhale, push out", false],
  ["Halfway", false],
])("is sure or unsure of it: %s", (text, sure) => {
  const claims = claimsIn(text).filter(({ says }) => says !== "springs");
  expect(claims.map((claim) => claim.sure)).toEqual([sure]);
});

it.each([
  "Last but not least, the neck.",
  "First of all, breathe.",
  "Give me a second.",
  "One more time.",
  "Take two breaths.",
  "Two more breaths here.",
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
  "This is not the last one.",
  "It's not halfway yet.",
  "We don't have two minutes left.",
  "Last week we had thirty seconds of work.",
  "Last time the plank was next.",
  "Stay up for the last ten seconds.",
  "Save something for the last round.",
  "When you hear thirty seconds left, drop your knees.",
  "If you have ten seconds left in you, stay.",
  "My teacher said two more minutes.",
  "Two seconds out, two seconds in.",
  "Hold for three seconds.",
  "Every thirty seconds, change arms.",
  "Ten reps each side.",
  "Three sets of breath.",
  "Two more breaths.",
  "One more.",
  "Count down from five.",
  "Four counts out.",
  "Breathe all the way in.",
  "Breathe in, breathe out.",
  "Exhale fully.",
  "Breathe out with a sigh.",
  "Don't breathe out as you push out.",
  "Next week we do the plank.",
  "Exhale out, inhale in.",
  "Out through the heels, up through the waist.",
  "Breathe out as the elbows come in.",
  "Push out, exhale, come back.",
  "Hold the last rep for five seconds.",
  "Every rep counts, even the last one.",
  "Ready for round two?",
  "The second round adds speed.",
  "Stand next to the carriage.",
  "What comes next is up to you.",
  "On to the next breath.",
])("is only a way of speaking: %s", (text) => {
  const claims = claimsIn(text);
  // A bare count of something is looked at only where a spring has that name.
  expect(claims.filter((claim) => claim.says !== "springs" || claim.sure).map(brief)).toEqual([]);
});

it("reads any text quickly", () => {
  for (const part of [
    "on to the other ",
    "and then ",
    "two more seconds ",
    "no spring ",
    "{",
    "last move of ",
    "breathe out as you push out, and in ",
    "next up, the ",
    "a hundred and ",
    "two minutes and ",
  ]) {
    expect(cpuMs(() => claimsIn(part.repeat(2000)))).toBeLessThan(500);
  }
});
