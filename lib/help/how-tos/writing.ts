/** Help with writing a class. */
import type { HowTo } from "./types.ts";

const PLAN = ["/plans/*"];

export const WRITING: readonly HowTo[] = [
  {
    slug: "write-your-first-class",
    title: "Write your first class",
    about: "From an empty plan to a class that can be talked through.",
    group: "Writing a class",
    at: ["/desk", ...PLAN],
    body: [
      "A plan is one class on paper. It opens on its rail: every move is a plate, as tall as the time it takes. Between two plates stands the change, everything that people have to do to get from one set-up to the next.",
      {
        steps: [
          "On your {to:/desk|desk} press {says:New plan}. Give it a title, a length and the room it is for, then {says:Make the plan}.",
          "Press {do:plan.add} ({key:plan.rail.add}). Type a few letters of a move, a muscle or a position, and take what you want with Enter. Where a move has sides, left and right can be added together.",
          "Open a plate ({key:plan.rail.open-item}) and set its time, side and springs. The clock at the top answers at once.",
          "Write what you will say under {says:Script}. Every line is of one kind: set-up, start, breath, form and so on. Alt with a digit changes the kind.",
          "In a plate or on a heading, {key:plan.rail.take-draft} takes the lines that are proposed. Put them into your own words.",
          "Put in a heading wherever a block begins, so that the class can be read at a glance.",
        ],
      },
      { picture: "rail" },
      "There is no button to save. The line at the top says when the server has everything. {key:undo.page.undo} takes back what you did last, never what somebody else did.",
      "Did your class begin as a list? Under {says:More}, {do:plan.paste} reads one from a spreadsheet or an e-mail and asks about whatever it is not sure of.",
    ],
  },
  {
    slug: "fit-to-length",
    title: "Fit a class to its length",
    about: "Let the seconds be worked out so that the class ends on time and both sides match.",
    group: "Writing a class",
    at: PLAN,
    body: [
      "The line at the top says how long the class takes and what is left of its length. You need not move the seconds about yourself.",
      {
        steps: [
          "Choose {do:plan.fit} ({key:plan.rail.fit}).",
          "Compare {says:Now} with {says:Then}, move by move. The nearest times to yours are found: left stays equal to right, and every time stays within the range of its move.",
          "Tick {says:Keep} beside a time that must stay. The others are worked out again.",
          "{says:Take these times}, or close and nothing has changed. One undo takes all of them back.",
        ],
      },
      { picture: "fit" },
      "When nothing fits, it says what prevents it, by how many seconds, and what would help: a wider range, another move, a shorter opening. No other times would be closer to yours; that is proven, not guessed.",
      "A time that must never be changed can be locked in the plate: {says:Lock this time}.",
    ],
  },
  {
    slug: "tell-a-change",
    title: "Tell a change of set-up",
    about: "Say every step that people have to do, in the order in which they do it.",
    group: "Writing a class",
    at: PLAN,
    body: [
      "What goes wrong on the floor was often never said: a spring that stayed on, a strap still on a foot. So Springline works out the steps from the two set-ups and compares them with your set-up lines.",
      {
        steps: [
          "Open the plate that people change into. Beside its set-up lines stands every step: said, not said, out of order, or said otherwise.",
          "Put a missing step into your words, or press {do:plan.write-set-up} ({key:plan.rail.write-set-up}) and have a line written from the steps.",
          "Look at the seconds of the change. They are an estimate from the room’s timings until you set your own under {says:Time to change into it}.",
          "Where a block takes too many changes, {do:plan.fewer-set-ups} under {says:More} finds the order with the least set-up time.",
        ],
      },
      { picture: "change" },
      {
        note: "Springs are changed with the carriage home, and by the machine maker’s manual. Springline knows what you wrote, not what stands in the room: look before anybody moves.",
      },
    ],
  },
  {
    slug: "both-sides-alike",
    title: "Treat both sides alike",
    about: "Find a side that gets less time, and give it back.",
    group: "Writing a class",
    at: PLAN,
    body: [
      "A move that is done on one side at a time is two items: the left and the right one are a pair.",
      {
        steps: [
          "As you add a move, tick {says:Add left and right together where a move has sides}. For one that stands alone, {do:plan.add-other-side} beside its plate adds the rest of the pair.",
          "A pair whose times differ is a finding. {key:plan.rail.next-finding} goes from one finding to the next; Enter there takes the fix that it offers.",
          "Open {do:plan.whole-class} ({key:plan.rail.whole-class}) to see the seconds of each group of muscles under the lanes, left to the left and right to the right.",
        ],
      },
      { picture: "balance" },
      "{do:plan.fit} always keeps a pair equal, and so does the floor when a class runs late.",
    ],
  },
  {
    slug: "say-it-in-time",
    title: "Say it all in time",
    about: "What is said when, and what to do with words that do not fit.",
    group: "Writing a class",
    at: [...PLAN, "/plans/*/rehearse"],
    body: [
      "You have one voice. Springline places your lines so that none runs into another, each where it helps: set-up before the start, breath in the first repetitions, the count-in last.",
      {
        steps: [
          "Open {do:plan.read-through} ({key:plan.rail.read-through}): the whole class as you will say it, with its times. Lines that find no time are set aside and say by how many seconds.",
          "Shorten a line, give the move more time, or leave the line aside. Safety and set-up are never set aside first.",
          "Use live fields for what the plan knows: type an opening brace in the script and choose seconds left, springs, side or next move. They are right even after you change a time.",
          "Find your own speaking rate: {says:Read aloud to find your rate} is on the class’s panel, under {do:plan.show-class}.",
          "{do:plan.rehearse} runs the plan as it is, with no class: one key as each line is said and each set-up is done. You then see your own seconds beside the plan’s.",
        ],
      },
    ],
  },
  {
    slug: "write-together",
    title: "Write with others, and offline",
    about: "Who sees a plan, how several people write in it, and what happens without a network.",
    group: "Writing a class",
    at: ["/desk", ...PLAN, "/programme/*"],
    body: [
      "A plan is yours until you share it. On the {to:/desk|desk}, {says:Share it} gives it to one colleague and {says:Share with the team} to every coach. Leads read all plans.",
      "Several people may write at once, even in one sentence. You see who is here and where they are.",
      {
        steps: [
          "When the network goes, go on writing. The page says that it is kept on this device.",
          "When the network is back, everything goes to the server by itself and joins what others wrote. Nothing is overwritten.",
          "Before you sign out, wait for everything to be saved, or keep it on this device: you are asked.",
        ],
      },
      "An item that is taken out is not gone: {says:Put back} returns it with its words.",
    ],
  },
];
