/** Help with reading, proposing and signing. */
import type { HowTo } from "./types.ts";

const READING = ["/plans/*", "/desk"];

export const READING_AND_SIGNING: readonly HowTo[] = [
  {
    slug: "offer-for-reading",
    title: "Offer a plan for reading",
    about: "Ask a lead to read your plan, and work with the notes that come back.",
    group: "Reading and signing",
    at: READING,
    body: [
      {
        steps: [
          "Look at the findings first: {key:plan.rail.next-finding} goes through them. What must be fixed prevents a signature.",
          "Press {says:Offer for reading} and say, if you like, what you would like to have looked at.",
          "The plan is then read as it is. To go on writing, {says:Take back} puts it in writing again.",
          "When it is returned, the main points stand at the top, and threads stand at the very words they are about. Answer them, change the plan, and offer it again.",
          "Take a proposal whole or in part with {do:plan.proposals} under {says:More}, or decline it and say why.",
        ],
      },
      "Every round is kept: {do:plan.rounds} under {says:More} shows what changed from one to the next.",
    ],
  },
  {
    slug: "read-a-plan",
    title: "Read a trainee’s plan",
    about: "Comment on the words, propose, mark, and return it with notes.",
    group: "Reading and signing",
    at: [...READING, "/rubric", "/remarks", "/plans/*/marks", "/people/*"],
    body: [
      "What waits for you stands on your {to:/desk|desk}, the longest waiting first.",
      {
        steps: [
          "{says:Take up the reading}, so that the other leads see that you have it.",
          "Plates that changed since the last round are marked. {key:plan.plan.next-changed} goes to the next one, {key:plan.plan.mark-read} marks it as read.",
          "Choose words in a script and comment on them; on a plate, {key:plan.rail.comment} begins a comment. A slash offers the {to:/remarks|remarks of the studio}, an @ names a colleague.",
          "{do:plan.propose} offers a change of a plate, which the writers take or decline. Nothing of theirs is overwritten.",
          "{says:Return with notes} and name up to three main points. Set marks by the {to:/rubric|rubric} from the plan’s menu, if the studio uses one.",
        ],
      },
      "A finding that may stand as it is can be accepted with a reason: {says:Accept as it is}. It stands again when its numbers change.",
    ],
  },
  {
    slug: "sign-off",
    title: "Sign off",
    about: "Sign exactly what you have read, and withdraw an edition when you must.",
    group: "Reading and signing",
    at: [...READING, "/editions/**"],
    body: [
      {
        steps: [
          "Open {says:Review and sign}. You see the plan as the server has it, with every finding and whatever prevents a signature.",
          "Go to what is open, or accept it with a reason. Nobody signs a plan that only they wrote, unless the studio allows it.",
          "Sign. The plan becomes an edition with a number; it can never change, and the room’s devices fetch it by themselves.",
        ],
      },
      { picture: "review" },
      "Did the plan change while you read? Then it is not signed: you are shown what changed, and read it again.",
      "An edition that must not be taught any more is taken out of use with {says:Withdraw this edition}. The devices show your reason.",
      {
        note: "A signature says that this plan was read with these findings by this person. It does not say that the class is safe for everybody in the room.",
      },
    ],
  },
  {
    slug: "find-anything",
    title: "Find anything",
    about: "Plans, words of a script, moves, classes, people, rules and help, from every page.",
    group: "You",
    at: ["/**"],
    body: [
      {
        steps: [
          "Press {key:find.page.find}, or {do:find.find} at the top; in a plan it is under {says:More}.",
          "Type the beginning of a word, or of several. Accents, capitals and American spelling make no difference.",
          "{key:find.field.open-first} opens the first result; {key:find.field.into-results} goes into the list.",
        ],
      },
      "A line of a script opens its plan at that line. You find only what you may read. New words are found a few seconds after they were written.",
      "With no network the page looks through what it already has, and says so.",
    ],
  },
];
