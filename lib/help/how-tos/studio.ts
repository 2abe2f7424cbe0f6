/** Help with the studio, its people and one's own account. */
import { DEVICES_PLACE, DEVICES_WORDS } from "#lib/protocol/places.ts";
import type { HowTo } from "./types.ts";

export const STUDIO_AND_YOU: readonly HowTo[] = [
  {
    slug: "measure-a-room",
    title: "Springs: measure a room",
    about: "From a luggage scale to newtons, so that loads are your machines’ own.",
    group: "The studio",
    at: ["/studio", "/studio/rooms/**", "/plans/*"],
    body: [
      {
        steps: [
          "Under {to:/studio|Studio} make the room: how many machines, how far the carriage travels, and the springs, lightest first, by the names you use. No colours: makers’ colours differ.",
          "Hang a luggage scale on the carriage with one spring on. Pull to a known travel, read the scale, and type both under {says:Scale readings}. At least three places, five are better; a list can be pasted.",
          "Stiffness and preload are worked out, with how far each reading lies off the line. One that lies far off was probably misread.",
          "Press {says:Take the readings}. Plans of the room use them from then on; signed editions keep the old ones.",
          "Time a few changes in the same room and put them under {says:Set-up timings}.",
        ],
      },
      { picture: "readings" },
      {
        note: "The maker’s manual comes first. Only whoever measures is at the machine: one spring at a time, pulled slowly, and the carriage brought home by hand. A spring that looks worn is changed, not measured.",
      },
    ],
  },
  {
    slug: "add-a-move",
    title: "Add a move to the library",
    about: "How a move is set up, what it trains, and how it may be varied.",
    group: "The studio",
    at: ["/library", "/library/**"],
    body: [
      {
        steps: [
          "Look first: the {to:/library|library} is searched by name, muscle, position and pattern, and forgives typing errors.",
          "{says:Add a move}. Name it plainly, by anatomy or as your gym says it.",
          "Say how it is set up, what it trains, its tempo and its usual time. The figure is drawn from what you say.",
          "Tick what it asks of people under {says:Care}. The rules then ask for a safety line and a way round it.",
          "Give an easier and a harder way: they are offered as lines.",
        ],
      },
      "Leads and managers change the library; everybody else asks them. A signed edition keeps a move as it was when it was signed.",
    ],
  },
  {
    slug: "rules-and-standards",
    title: "Rules and your studio’s limits",
    about: "What a finding means, and how a studio makes a rule milder or stricter.",
    group: "The studio",
    at: ["/rules", "/rules/**", "/plans/*", "/studio"],
    body: [
      "Every plan is checked as it is written. A finding says what is wrong with the real numbers, then what to do. There are three levels: must fix, look again, for information.",
      {
        steps: [
          "Follow a finding to its rule, or open the {to:/rules|rules}: why it matters, how to fix it, where it comes from, and small classes in which it finds something or nothing.",
          "A manager changes the level or a limit on the rule’s page under {says:In your studio}, and sees first what that would change in the team’s plans.",
          "{says:Back to the usual level and limits} undoes that. Open plans are checked again at once.",
        ],
      },
    ],
  },
  {
    slug: "people-and-rights",
    title: "People and rights",
    about: "Who may do what, how people join, and what happens when somebody leaves.",
    group: "The studio",
    at: ["/people", "/people/*", "/record", "/sign-in", "/join/*", "/reset/*", "/first-run"],
    body: [
      "Trainees write their own plans and those shared with them. Coaches also write the team’s plans and the month. Leads read everything, propose, return and sign. Managers look after people, rooms, devices and limits. Crew read what is signed.",
      {
        steps: [
          "A manager invites somebody under {to:/people|People}: {says:Make a link}. Where the studio sends e-mail it goes to them by mail; else send it yourself. It works once.",
          "Roles are ticked on the same page. A change reaches open pages at once.",
          "For a forgotten password a manager makes a reset link there; it works once, for a day. Where the studio sends e-mail, {says:Forgot your password?} on the sign-in page mails one.",
          "When somebody leaves, {says:Remove} ends their sessions at once. Their plans stay under their name, and a new invitation brings everything back.",
          "{says:Delete} removes an account for good: name, address and what is theirs alone go, and what others’ work rests on stays under a pseudonym. It is told in numbers first. Give their classes in the programme to somebody else before.",
        ],
      },
      "What people with rights did stands in the {to:/record|record}. {says:Verify now} proves that nothing in it was changed.",
    ],
  },
  {
    slug: "pair-a-device",
    title: "Pair a device",
    about: "Make a tablet the cue device of a room.",
    group: "The studio",
    at: ["/studio", "/floor"],
    body: [
      {
        steps: [
          `Under {to:${DEVICES_PLACE.href}|${DEVICES_WORDS}} name the tablet, choose its room and make a code.`,
          "On the tablet point the camera at the square, or open the address beside it and type the {says:Pairing code}. It works once and expires soon.",
          "Wait until the tablet says that the page is kept on it. From then on it opens with no network.",
          "Signed editions of the room come by themselves, whenever the studio can be reached.",
        ],
      },
      "A tablet that is lost is removed in the same place. It can fetch nothing more from then on; what it has already kept expires.",
    ],
  },
  {
    slug: "backups-and-health",
    title: "Backups and health",
    about: "Where backups go, how to see that they hold, and what to do when something is wrong.",
    group: "The studio",
    at: ["/studio", "/studio/health"],
    body: [
      {
        steps: [
          "Under {to:/studio#backups|Studio, Backups} set the time of day and the folder. Name one on another disk.",
          "Each backup is restored into an empty folder and compared before it counts. {says:Back up now} makes one at once.",
          "If a day is too much to lose, name a {says:Copy folder}: a copy that is at most a minute old.",
          "{to:/studio/health|Health} says how everything is, and what to do about it. The desk says so when something is wrong.",
        ],
      },
      "Restoring is done on the server itself, with the program stopped; the README that came with it says how.",
      "{to:/studio#export|Studio, Export} downloads everything that the studio keeps as open files: plans, months, library, people, threads, class logs, editions with their signatures. A command on an empty server, which the README names, makes the same studio from them.",
    ],
  },
  {
    slug: "notices-and-settings",
    title: "Notices, e-mail, dates and units",
    about:
      "What you are told and how; your name, address and password; how dates, times, forces and lengths are written for you.",
    group: "You",
    at: ["/notices", "/settings", "/desk"],
    body: [
      {
        steps: [
          "{to:/notices|Notices} lists what concerns you, and each leads to its place.",
          "On that page choose for each kind: {says:In the app only}, {says:In the daily digest} or {says:At once}. Nothing is mailed before you choose.",
          "{to:/settings|Settings}, behind your name at the top, change your name, address and password. A new password signs you out everywhere else.",
          "On the same page choose the language of dates, the clock, the first day of the week, and newtons, kilograms or pounds, centimetres or inches. It is for you alone, on pages, printed sheets and mails; the studio’s own choice is under {to:/studio|Studio}.",
          "Light or dark is chosen behind your name, too, for this browser.",
        ],
      },
    ],
  },
];
