/** Help with the month and with the floor. */
import type { HowTo } from "./types.ts";

const MONTH = ["/programme", "/programme/*"];

export const MONTH_AND_FLOOR: readonly HowTo[] = [
  {
    slug: "write-the-month",
    title: "Write the month with your team",
    about: "Put plans on classes, see what tires whom, and sign the month off.",
    group: "The month",
    at: [...MONTH, "/programme/*/sign", "/programme/*/looking-back", "/rules/month/*"],
    body: [
      "The {to:/programme|programme} is a month on one sheet: a line a day, its classes, and for a group of regulars a column for each group of muscles. Work thins out as its rest runs out.",
      {
        steps: [
          "Arrows go from day to day and from class to class; Enter opens one. {key:month.sheet.add} adds a class, {key:month.sheet.move} moves it with the arrows.",
          "A class that comes every week belongs in {says:The weekly pattern}, under {says:More}.",
          "Put a plan on a class from its list, or press its number.",
          "{key:month.sheet.next-finding} goes through what the rules found: clashes, a coach who is away, muscles asked again too soon.",
          "{says:Fill the empty classes} shows which plans would go where, with the next best for each. Take all of it, some, or none.",
          "When nothing has to be fixed, a lead signs the month off.",
        ],
      },
      { picture: "month" },
      "Afterwards {says:Looking back} sets what was taught against what was planned.",
      { note: "What is said of rest and recovery is general guidance, not advice to a person." },
    ],
  },
  {
    slug: "calendars",
    title: "Calendars, paper and files",
    about: "The month in a calendar, on the wall, in a spreadsheet; a plan on paper.",
    group: "The month",
    at: [...MONTH, "/programme/feeds", "/editions/**"],
    body: [
      {
        steps: [
          "{to:/programme/feeds|Calendar addresses} makes a secret address that a calendar reads. Whoever has it sees the classes: renew it when it got into the wrong hands.",
          "{says:A room's week for the wall} and {says:Print the month} are under {says:More} in the month.",
          "{says:Table for a spreadsheet} and {says:Month file} are there too, and can be read back in.",
          "Every edition has a {says:Print sheet} for the wall and a {says:Crew sheet} for those who film or help.",
        ],
      },
    ],
  },
  {
    slug: "teach-with-a-device",
    title: "Teach with a device",
    about: "Begin a class on the floor, hold it, skip, go back, and follow on other screens.",
    group: "The floor",
    at: ["/floor", "/editions/**", "/plans/*/rehearse"],
    body: [
      {
        steps: [
          "On the device choose the edition and press {says:Start the class}. It needs no network.",
          "Look up: what is now, what to say, how many seconds are left, and what comes next. A change is a screen of its own.",
          "Space ({key:floor.hold-or-go-on}) holds the class or goes on, {key:floor.next} skips, {key:floor.back} goes back. Pedals and presenters work too; the keys can be chosen on the device.",
          "{key:floor.undo} takes back the last touch. The clock does not go back with it.",
          "Another device of the room can show the class to a demonstrator, the crew or the wall: {says:Follow the class of this room}.",
        ],
      },
      { picture: "floor" },
      {
        note: "The device reminds; you lead. Pain, dizziness or numbness: stop, and step off with the carriage home. Your eyes on the room come before the screen.",
      },
    ],
  },
  {
    slug: "when-a-class-starts-late",
    title: "When a class starts late",
    about: "Let the rest be timed again so that it ends on time and both sides still match.",
    group: "The floor",
    at: ["/floor", "/plans/*/rehearse"],
    body: [
      {
        steps: [
          "Start when people are ready. The device knows when the class should end.",
          "Press {says:End on time} ({key:floor.end-on-time}). It offers up to three ways: {says:New times for the rest}, {says:From the closing alone}, or {says:From both}. Each says how many seconds it takes, and from what.",
          "Take one, or press the key again for the first. What is behind you does not change, and a pair stays equal.",
        ],
      },
      "When a step needs longer, {key:floor.extend} adds some seconds to it; the rest waits.",
    ],
  },
  {
    slug: "what-the-class-log-brings-back",
    title: "What the class log brings back",
    about: "Teach the next plan’s numbers with what really happened.",
    group: "The floor",
    at: ["/editions/**", "/studio/rooms/**", "/programme/*/looking-back", "/people/*", "/plans/*"],
    body: [
      "The device keeps a log of every class, item by item, and sends it when the studio can be reached.",
      {
        steps: [
          "{says:Classes taught} of an edition shows each class against its plan, and where the time went.",
          "The room’s {says:Set-up timings} show what its classes tell of each part of a change, and how sure that is. A manager ticks the numbers that the room takes over.",
          "From a rehearsal you take your own seconds of changes and your speaking rate into the plan.",
          "{says:Looking back} at a month says what keeps coming late. A class that does not count is struck, with a reason.",
        ],
      },
      "Nothing in a signed edition changes by it: new numbers are for the next plan.",
    ],
  },
];
