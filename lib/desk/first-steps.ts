/**
 * The first steps of a studio and of its coaches: which are done, how far the others are, and where each is taken. All of it
 * follows from what the studio holds; nothing is ever ticked by hand. Pure.
 */
import { plural } from "#lib/plan/format.ts";
import type { PlanState } from "#lib/protocol/messages.ts";

export type StepId = "people" | "room" | "example" | "class" | "rehearsal" | "signing" | "device" | "taught" | "backup";
/** What one press does: it leads to the very place, or makes the example class and opens it. */
export type StepAct =
  | { readonly kind: "go"; readonly href: string; readonly label: string }
  | { readonly kind: "example"; readonly label: string };

export interface FirstStep {
  readonly id: StepId;
  readonly title: string;
  /** What it is for, in one sentence. */
  readonly why: string;
  /** `begun`: something is there, and something is missing. */
  readonly state: "open" | "begun" | "done";
  /** How far it is, in one sentence. */
  readonly far: string;
  /** Null where it is somebody else's, or nothing is left to do. */
  readonly act: StepAct | null;
}

/** A plan that is no example, on somebody's desk. */
export interface FirstClass {
  readonly id: string;
  /** Null where the asker may not read the plan. */
  readonly title: string | null;
  readonly moves: number;
  /** It is as it was copied: nobody has written in it. */
  readonly copied: boolean;
  readonly state: PlanState;
  /** Number of its newest edition that was not withdrawn; 0 for none. */
  readonly edition: number;
}

/** What the one who asks may do. */
interface Asker {
  readonly writes: boolean;
  readonly signs: boolean;
}

export interface StudioFacts extends Asker {
  readonly people: number;
  readonly openInvitations: number;
  /** Nobody but the asker writes plans, and the studio lets them sign off their own. */
  readonly worksAlone: boolean;
  readonly rooms: readonly {
    readonly id: string;
    readonly name: string;
    /** `typical`: with the numbers that a new studio begins with. */
    readonly springs: readonly { readonly id: string; readonly measured: boolean; readonly typical: boolean }[];
  }[];
  /** An example class that lies on a desk or did; its plan while it can be opened. */
  readonly example: { readonly made: boolean; readonly plan: FirstClass | null };
  /** The newest first. */
  readonly classes: readonly FirstClass[];
  readonly devices: { readonly paired: number; readonly waiting: number };
  readonly taught: number;
  /** ms since the epoch; null where no backup is known. */
  readonly lastBackupAt: number | null;
  readonly now: number;
}

const DAY_MS = 86_400_000;
/** Our own choice: a studio that loses a week of plans has lost a month of evenings. */
const BACKUP_DAYS = 7;

export const allDone = (steps: readonly FirstStep[]): boolean => steps.every(({ state }) => state === "done");

/** For managers, in the order in which a studio needs them. */
export const studioSteps = (facts: StudioFacts): FirstStep[] => [
  peopleStep(facts),
  roomStep(facts),
  exampleStep(facts.example.made, facts),
  classStep(facts.classes, facts),
  signingStep(facts),
  deviceStep(facts),
  taughtStep(facts),
  backupStep(facts),
];

export interface CoachFacts {
  readonly exampleMade: boolean;
  /** Their own, the newest first. */
  readonly classes: readonly FirstClass[];
  /** Their example, while it can be opened. */
  readonly examplePlan: FirstClass | null;
  /** Rehearsals of their plans that devices have reported. */
  readonly rehearsals: number;
}

/** For somebody who writes plans and has none of their own yet. */
export function coachSteps({ exampleMade, classes, examplePlan, rehearsals }: CoachFacts): FirstStep[] {
  const asker = { writes: true, signs: false };
  const ready = classes.find(({ moves }) => moves > 0) ?? examplePlan;
  const rehearsal: FirstStep = {
    id: "rehearsal",
    title: "Rehearse",
    why: "One key as each line is said shows your own seconds beside the plan’s.",
    state: rehearsals > 0 ? "done" : "open",
    far: rehearsals > 0 ? `${plural(rehearsals, "rehearsal")} on a device.` : "Not on a device yet.",
    act: ready === null || ready === undefined ? null : go(`/plans/${ready.id}/rehearse`, "Rehearse a class"),
  };
  return [exampleStep(exampleMade, asker), classStep(classes, asker), rehearsal];
}

const go = (href: string, label: string): StepAct => ({ kind: "go", href, label });
/** A plan as a sentence begins with it. */
const called = ({ title }: FirstClass): string =>
  title === null ? "A colleague’s class" : `“${title.trim() || "Untitled"}”`;
const isWritten = ({ moves }: FirstClass): boolean => moves > 0;
/** Written by somebody here: a copy, of the example or of a colleague's class, is not until it is changed. */
export const isOwnClass = (one: FirstClass): boolean => isWritten(one) && !one.copied;

function peopleStep({ people, openInvitations, worksAlone }: StudioFacts): FirstStep {
  const waiting = openInvitations === 0 ? "" : `, ${plural(openInvitations, "link")} not used yet`;
  const far =
    people > 1
      ? `${plural(people, "person", "people")} here${waiting}.`
      : worksAlone
        ? `You work alone, and sign off your own plans${waiting}.`
        : `Only you so far${waiting}.`;
  const done = people > 1 || worksAlone;
  return {
    id: "people",
    title: "Invite your people",
    why: "Coaches write, leads sign off, the crew sees where it stands.",
    state: done ? "done" : openInvitations > 0 ? "begun" : "open",
    far,
    act: go("/people?open=invite", done ? "Invite somebody else" : "Invite somebody"),
  };
}

function roomStep({ rooms }: StudioFacts): FirstStep {
  const step = {
    id: "room",
    title: "A room and its springs",
    why: "How heavy a move is, and how long a change takes, depend on your machines.",
  } as const;
  const room = rooms.find(({ springs }) => springs.some(({ measured }) => !measured)) ?? rooms[0];
  if (!room || room.springs.length === 0) {
    const act = go("/studio?open=room#rooms", "Add a room");
    return { ...step, state: "open", far: "No room yet.", act };
  }
  const next = room.springs.find(({ measured }) => !measured);
  const measured = room.springs.filter((spring) => spring.measured).length;
  const many = room.springs.length;
  const kind = room.springs.some((spring) => spring.typical && !spring.measured) ? "typical" : "as typed";
  const far =
    measured === many
      ? `${room.name}: all ${many} springs measured.`
      : measured === 0
        ? `${room.name}: springs ${kind}, none measured yet.`
        : `${room.name}: ${measured} of ${many} springs measured, the others ${kind}.`;
  const act = next ? go(`/studio/rooms/${room.id}/springs/${next.id}`, "Measure a spring") : null;
  return { ...step, state: "done", far, act };
}

function exampleStep(made: boolean, { writes }: Asker): FirstStep {
  return {
    id: "example",
    title: "An example class to take apart",
    why: "Twelve whole minutes: change a time or a spring and see what answers.",
    state: made ? "done" : "open",
    far: made ? "Made." : writes ? "Not made yet." : "Whoever writes plans makes it.",
    act: writes ? { kind: "example", label: made ? "Open the example" : "Make the example" } : null,
  };
}

function classStep(classes: readonly FirstClass[], { writes }: Asker): FirstStep {
  const [own] = classes.filter(({ copied }) => !copied).sort((a, b) => b.moves - a.moves);
  const begun =
    !own || own.title === null ? null : go(`/plans/${own.id}`, isWritten(own) ? "Open it" : "Go on writing");
  return {
    id: "class",
    title: "A first class of your own",
    why: "A title, a length and a room; then moves from the library, or a list you paste.",
    state: own === undefined ? "open" : isWritten(own) ? "done" : "begun",
    far:
      own === undefined
        ? writes
          ? "None yet."
          : "None yet: whoever writes plans begins one."
        : `${called(own)}: ${own.moves === 0 ? "no move yet" : plural(own.moves, "move")}.`,
    act: writes ? (begun ?? go("/desk?open=plan", "Begin a plan")) : null,
  };
}

/** The class that is nearest to its signature: offered, else written; one of one's own before the example. */
function nextToSign({ classes, example }: StudioFacts): FirstClass | undefined {
  const all = [...classes, ...(example.plan ? [example.plan] : [])].filter(isWritten);
  return all.find(({ state }) => state === "handed-in") ?? all[0];
}

const signedOf = ({ classes, example }: StudioFacts): FirstClass | undefined =>
  [...classes, ...(example.plan ? [example.plan] : [])].find(({ edition }) => edition > 0);

function signingStep(facts: StudioFacts): FirstStep {
  const signed = signedOf(facts);
  const next = nextToSign(facts);
  const offered = next?.state === "handed-in";
  return {
    id: "signing",
    title: "Sign it off",
    why: "What is signed is what the room gets, word for word, and it stays so.",
    state: signed ? "done" : offered ? "begun" : "open",
    far: signed
      ? `${called(signed)} is signed, edition ${signed.edition}.`
      : !next
        ? "It needs a class with moves first."
        : offered
          ? `${called(next)} is offered for reading.`
          : `${called(next)} is in writing. It is offered for reading first.`,
    act: signed || !next ? null : signAct(next, facts),
  };
}

function signAct({ id, state, title }: FirstClass, { writes, signs }: Asker): StepAct | null {
  if (title === null) return null;
  if (state === "handed-in") return signs ? go(`/plans/${id}?open=review`, "Review and sign") : null;
  return writes ? go(`/plans/${id}?open=offer`, "Offer it for reading") : null;
}

function deviceStep({ devices: { paired, waiting } }: StudioFacts): FirstStep {
  return {
    id: "device",
    title: "Pair a device",
    why: "A tablet in the room shows what is now and what comes next, without a network.",
    state: paired > 0 ? "done" : waiting > 0 ? "begun" : "open",
    far: paired > 0 ? `${plural(paired, "device")} paired.` : waiting > 0 ? "One waits for its code." : "None yet.",
    act: go("/studio?open=device#devices", paired > 0 ? "Pair another" : "Pair a device"),
  };
}

function taughtStep(facts: StudioFacts): FirstStep {
  const { taught, devices } = facts;
  const ready = signedOf(facts) !== undefined && devices.paired > 0;
  return {
    id: "taught",
    title: "Teach the first class",
    why: "Its log tells how long changes really take in your room.",
    state: taught > 0 ? "done" : "open",
    far:
      taught > 0
        ? `${plural(taught, "class", "classes")} taught.`
        : ready
          ? "The device has the class: choose it there and start."
          : "It needs a signed class and a paired device.",
    act: ready && taught === 0 ? go("/floor", "Open the floor") : null,
  };
}

function backupStep({ lastBackupAt, now }: StudioFacts): FirstStep {
  const days = lastBackupAt === null ? null : Math.max(0, Math.floor((now - lastBackupAt) / DAY_MS));
  const fresh = days !== null && days < BACKUP_DAYS;
  return {
    id: "backup",
    title: "See a backup",
    why: "One file holds the whole studio. Without one, a broken disk is the end of it.",
    state: fresh ? "done" : days === null ? "open" : "begun",
    far: lastBackupWords(days),
    act: go("/studio#backups", fresh ? "See it" : "How to make one"),
  };
}

/** `days`: whole days since; null where none is known. */
export function lastBackupWords(days: number | null): string {
  if (days === null) return "No backup is known yet.";
  if (days === 0) return "The last backup is from the last 24 hours.";
  return `The last backup is ${plural(days, "day")} old.`;
}
