/** Each kind of row in the record: the sentence that it is read as, and the group under which it is looked for. */

import type { RecordRow } from "./chain.ts";
import { deletedWords, ERASED_BODY, erasedWords } from "./erased.ts";
import { readingsKept } from "./readings-kept.ts";

/** Names of what a row is about, looked up when it is read. */
export interface RecordNames {
  person(id: string): string;
  plan(id: string): string;
  move(id: string): string;
  room(id: string): string;
  rule(id: string): string;
  device(id: string): string;
}

export const RECORD_GROUPS = {
  editions: "Editions and classes",
  plans: "Plans",
  reading: "Reading and marks",
  people: "People and access",
  studio: "Rooms, devices, standards",
  library: "Library",
} as const;
export type RecordGroup = keyof typeof RECORD_GROUPS;

interface Told {
  /** The name of the subject. */
  readonly of: string;
  /** Its id, without what it is. */
  readonly id: string;
  readonly body: Readonly<Record<string, unknown>>;
  readonly names: RecordNames;
}
type Sentence = readonly [group: RecordGroup, words: (told: Told) => string];

const text = (value: unknown): string => (typeof value === "string" ? value : "");
const quoted = (value: unknown): string => (text(value).trim() === "" ? "" : `: “${text(value).trim()}”`);
const list = (value: unknown): string =>
  Array.isArray(value) && value.length > 0 ? value.filter((part) => typeof part === "string").join(", ") : "none";
const people = (count: unknown, one: string, many: string): string => `${Number(count)} ${count === 1 ? one : many}`;
const nameIn = (data: unknown, key: string): string =>
  typeof data === "object" && data !== null && key in data ? text((data as Record<string, unknown>)[key]) : "";

const PLANS: Readonly<Record<string, Sentence>> = {
  created: ["plans", ({ of }) => `began the plan ${of}`],
  imported: ["plans", ({ of }) => `brought the plan ${of} from a file`],
  "from-edition": [
    "plans",
    ({ of, body, names }) => {
      const [plan = "", edition] = text(body.note).split("/");
      return `made the plan ${of} from edition ${edition} of “${names.plan(plan)}”`;
    },
  ],
  duplicated: ["plans", ({ of }) => `made the plan ${of} from another`],
  "from-example": ["plans", ({ of }) => `made the example class ${of}`],
  "handed-in": ["plans", ({ of, body }) => `offered ${of} for reading${quoted(body.note)}`],
  "taken-back": ["plans", ({ of, body }) => `took ${of} back, so that it is in writing again${quoted(body.note)}`],
  "handed-back": ["plans", ({ of, body }) => `returned ${of} with notes${quoted(body.note)}`],
  "signed-off": ["plans", ({ of, body }) => `signed off ${of}${quoted(body.note)}`],
  "written-on": ["plans", ({ of }) => `wrote in ${of}, which was signed off and is in writing again`],
  shared: ["plans", ({ of, body, names }) => `shared ${of} with ${names.person(text(body.note))}`],
  unshared: ["plans", ({ of, body, names }) => `ended sharing ${of} with ${names.person(text(body.note))}`],
  "team-on": ["plans", ({ of }) => `made ${of} a plan of the team`],
  "team-off": ["plans", ({ of }) => `made ${of} a plan of one person`],
  "room-changed": ["plans", ({ of, body, names }) => `moved ${of} to ${names.room(text(body.note))}`],
  deleted: ["plans", ({ of }) => `deleted ${of}`],
  unarchived: ["plans", ({ of }) => `took ${of} from the archive`],
  // The row before it says of which edition, and why.
  withdrawn: ["plans", ({ of }) => `noted the withdrawal in the plan ${of}`],
  edition: ["editions", ({ of, body }) => `signed edition ${body.number} of ${of}${quoted(body.note)}`],
  "edition-withdrawn": ["editions", ({ of, body }) => `withdrew edition ${body.number} of ${of}${quoted(body.reason)}`],
  "class-log": [
    "editions",
    ({ of, body, names }) =>
      `sent the log of a ${text(body.ran) || "class"} from edition ${body.number} of ${of}, ${names.room(text(body.room))}`,
  ],
};

const LIBRARY: Readonly<Record<string, Sentence>> = {
  added: ["library", ({ of }) => `added the move ${of}`],
  changed: ["library", ({ of }) => `changed the move ${of}`],
};

/** Kinds that plans and moves share. */
const BOTH: Readonly<Record<string, Sentence>> = {
  archived: ["plans", ({ of }) => `archived ${of}`],
  restored: ["plans", ({ of }) => `restored ${of}`],
};

const STUDIO: Readonly<Record<string, Sentence>> = {
  begun: ["studio", ({ body }) => `began the record${earlierWords(body.earlier)}`],
  "broken-end": ["studio", () => "found that the record did not end as it had been written, and went on from there"],
  "tables-added": ["studio", ({ body }) => `put more of what is stored into the record${earlierWords(body.earlier)}`],
  "studio-made": ["studio", () => "made the studio, in its first run"],
  standard: [
    "studio",
    ({ of, body }) => (body.data === null ? `put the rule ${of} back to its own level` : `changed the rule ${of}`),
  ],
  machines: ["studio", ({ of }) => `changed the machines or the name of ${of}`],
  "room-added": ["studio", ({ of }) => `added the room ${of}`],
  spring: ["studio", ({ of, body }) => readingsKept(body.data, of)],
  "spring-out": ["studio", ({ of, body }) => `took the spring “${nameIn(body.data, "label")}” out of ${of}`],
  timings: ["studio", ({ of }) => `set the times of changes in ${of}`],
  "timings-taken": ["studio", ({ of }) => `took times of changes in ${of} from classes taught`],
  "device-added": [
    "studio",
    ({ body, names }) => `made a pairing code for “${text(body.name)}” in ${names.room(text(body.room))}`,
  ],
  paired: [
    "studio",
    ({ body, names }) =>
      `was paired in ${names.room(text(body.room))}, by a code of ${names.person(text(body.codeBy))}`,
  ],
  "device-removed": [
    "studio",
    ({ body, names }) => `removed the device “${text(body.name)}” from ${names.room(text(body.room))}`,
  ],
  "studio-named": [
    "studio",
    ({ body }) => `named the studio “${text(body.name)}”, before “${nameIn(body.before, "name")}”`,
  ],
  "mail-settings": ["studio", () => "changed how the studio sends e-mail"],
  "backup-settings": ["studio", () => "changed when and where backups are made, and how long they are kept"],
  "studio-formats": ["studio", () => "changed the studio's time zone, week, dates or units"],
  "month-settings": ["studio", () => "changed what a month says of the studio"],
  "sole-author": [
    "studio",
    ({ body }) => {
      if (body.joined === true) return "joined, so that a second person has to sign off again";
      return body.may === true
        ? "allowed people to sign off a plan that only they wrote"
        : "ended that people sign off a plan that only they wrote";
    },
  ],
};

const PEOPLE: Readonly<Record<string, Sentence>> = {
  exported: ["people", () => "exported everything that the studio keeps"],
  invited: ["people", ({ body }) => `invited ${text(body.to)} as ${list(body.roles)}`],
  "invitation-revoked": ["people", ({ body }) => `revoked the invitation of ${text(body.to)}`],
  joined: [
    "people",
    ({ body }) => `${body.again === true ? "joined again" : "joined"} by invitation as ${list(body.roles)}`,
  ],
  roles: ["people", ({ of, body }) => `changed the roles of ${of} from ${list(body.before)} to ${list(body.roles)}`],
  "person-deleted": ["people", ({ body }) => deletedWords(body)],
  removed: ["people", ({ of }) => `removed ${of} from the studio`],
  "signed-out": [
    "people",
    ({ of, body }) => `signed ${of} out everywhere (${people(body.ended, "session", "sessions")})`,
  ],
  "name-changed": ["people", ({ body }) => `changed their own name from ${text(body.before)} to ${text(body.name)}`],
  "email-changed": [
    "people",
    ({ body }) => `changed their own address from ${text(body.before)} to ${text(body.email)}`,
  ],
  "password-changed": ["people", () => "changed their own password"],
  "reset-link": ["people", ({ of }) => `made a link for a new password of ${of}`],
  "reset-asked": ["people", ({ of }) => `mailed a link for a new password to ${of}, as asked for on the sign-in page`],
  "reset-link-withdrawn": ["people", ({ of }) => `withdrew the link for a new password of ${of}`],
  "password-reset": ["people", () => "set a new password by a link"],
  "feed-made": ["people", ({ of, body }) => `made a calendar address ${calendarWords(of, body.calendar)}`],
  "feed-renewed": ["people", ({ of, body }) => `renewed the calendar address ${calendarWords(of, body.calendar)}`],
  "feed-withdrawn": ["people", ({ of, body }) => `withdrew the calendar address ${calendarWords(of, body.calendar)}`],
  "links-ended": [
    "people",
    ({ of }) => `ended the unused links, codes and calendar addresses of ${of}, who may not make them any more`,
  ],
};

const calendarWords = (of: string, calendar: unknown): string => (calendar === "studio" ? "of the studio" : `of ${of}`);

const READING: Readonly<Record<string, Sentence>> = {
  "reading-taken-up": ["reading", ({ of, body }) => `took up the reading of ${of}, round ${body.round}`],
  "reading-let-go": ["reading", ({ of, body }) => `let the reading of ${of} go, round ${body.round}`],
  moment: [
    "reading",
    ({ of, body }) => `kept ${of} as it was when it was ${stepWords(body.step)}, round ${body.round}`,
  ],
  "main-points": [
    "reading",
    ({ of, body }) => `named the main points of round ${body.round} of ${of}${quoted(sentences(body.mainPoints))}`,
  ],
  "month-signed": ["editions", ({ of, body }) => `signed edition ${body.edition} of ${of}${quoted(body.note)}`],
  "class-log-coach": ["editions", ({ body, names }) => `noted that ${names.person(text(body.coachId))} led a class`],
  "class-log-struck": [
    "editions",
    ({ body }) => `struck the log of a class, so that it does not count${quoted(body.reason)}`,
  ],
  "class-log-counted": ["editions", () => "let the log of a class count again"],
  "signed-with-open": [
    "reading",
    ({ of, body }) => `signed edition ${body.edition} of ${of} with findings left open:\n${messages(body.findings)}`,
  ],
  "finding-accepted": [
    "reading",
    ({ of, body }) => `accepted in ${of}: “${text(body.message)}” Reason${quoted(body.reason)}`,
  ],
  "acceptance-ended": ["reading", ({ of, body }) => `no longer accepts in ${of}${quoted(body.message)}`],
  "proposal-made": ["reading", ({ of, body }) => `proposed a change in ${of}${quoted(body.note)}`],
  "proposal-taken": [
    "reading",
    ({ of, body }) =>
      typeof body.of === "number" && Array.isArray(body.parts)
        ? `took ${body.parts.length} of ${body.of} parts of a proposed change in ${of}: ${list(body.named)}`
        : `took a proposed change in ${of}`,
  ],
  "proposal-declined": ["reading", ({ of, body }) => `declined a proposed change in ${of}${quoted(body.word)}`],
  "proposal-withdrawn": ["reading", ({ of }) => `took back a change that they had proposed in ${of}`],
  marks: ["reading", ({ of, body, names }) => `set marks for ${names.person(text(body.userId))}, from ${of}`],
  rubric: ["reading", () => "changed the rubric for marks"],
  "remark-added": ["reading", ({ body }) => `added a stock remark${quoted(body.words)}`],
  "remark-changed": ["reading", ({ body }) => `changed a stock remark${quoted(body.words)}`],
  "remark-out-of-use": ["reading", ({ body }) => `took a stock remark out of use${quoted(body.words)}`],
  "remark-in-use-again": ["reading", ({ body }) => `put a stock remark in use again${quoted(body.words)}`],
};

/** Steps of a round as they are said. */
const STEPS: Readonly<Record<string, string>> = {
  offered: "offered for reading",
  returned: "returned with notes",
  signed: "signed off",
  "taken-back": "taken back",
};
const stepWords = (step: unknown): string => STEPS[text(step)] ?? text(step);

const sentences = (value: unknown): string => (Array.isArray(value) ? value.map(text).join(" ") : "");
const messages = (value: unknown): string =>
  Array.isArray(value) ? value.map((part, i) => `${i + 1}. ${nameIn(part, "message")}`).join("\n") : "";

const SENTENCES: Readonly<Record<string, Sentence>> = {
  ...BOTH,
  ...PLANS,
  ...READING,
  ...LIBRARY,
  ...STUDIO,
  ...PEOPLE,
};

const RECORD_KINDS: readonly string[] = Object.keys(SENTENCES);

/** What rows of a group have in common. */
export interface GroupTest {
  readonly kinds?: readonly string[];
  /** All kinds but these. */
  readonly otherKinds?: readonly string[];
  /** What its subject begins with. */
  readonly about?: string;
}

/** Kinds that have no sentence of their own here are about reading. */
export function testOfGroup(group: RecordGroup): GroupTest {
  if (group === "library") return { about: "move/" };
  if (group === "reading") return { otherKinds: RECORD_KINDS.filter((kind) => SENTENCES[kind]?.[0] !== group) };
  const kinds = RECORD_KINDS.filter((kind) => SENTENCES[kind]?.[0] === group);
  return group === "plans" ? { kinds, about: "plan/" } : { kinds };
}

/** What a row says, after the name of who did it: "signed edition 3 of “Morning class”." */
export function recordSentence(row: Pick<RecordRow, "kind" | "subject" | "bodyJson">, names: RecordNames): string {
  const said = sayRow(row, names);
  return /[.!?]”?$/.test(said) ? said : `${said}.`;
}

function sayRow(
  { kind, subject, bodyJson }: Pick<RecordRow, "kind" | "subject" | "bodyJson">,
  names: RecordNames,
): string {
  const { what, id } = splitSubject(subject);
  const body = bodyOf(bodyJson);
  const of = nameOfSubject(what, id, names, body);
  if (bodyJson === ERASED_BODY) return erasedWords(kind);
  const known = Object.hasOwn(SENTENCES, kind) ? SENTENCES[kind] : undefined;
  if (known) return known[1]({ of, id, body, names });
  const said = `noted “${kind.replaceAll("-", " ")}”`;
  return what === "studio" ? said : `${said} for ${of}`;
}

/** "plan/<id>" in its two parts. */
export function splitSubject(subject: string): { readonly what: string; readonly id: string } {
  const at = subject.indexOf("/");
  return at < 0 ? { what: subject, id: "" } : { what: subject.slice(0, at), id: subject.slice(at + 1) };
}

function nameOfSubject(what: string, id: string, names: RecordNames, body: Told["body"]): string {
  if (what === "plan") return `“${names.plan(id)}”`;
  if (what === "move") return `“${names.move(id)}”`;
  // A room that was renamed since is said by its name now.
  if (what === "room") return names.room(id) || nameIn(body, "name");
  if (what === "rule") return `“${names.rule(id)}”`;
  if (what === "device") return names.device(id);
  if (what === "month") return `the month ${id}`;
  if (what === "class") return "a class";
  return what === "person" ? names.person(id) : "the studio";
}

function bodyOf(json: string): Told["body"] {
  try {
    const body: unknown = JSON.parse(json);
    return typeof body === "object" && body !== null ? (body as Told["body"]) : {};
  } catch {
    return {};
  }
}

function earlierWords(earlier: unknown): string {
  const counts = typeof earlier === "object" && earlier !== null ? Object.values(earlier) : [];
  const rows = counts.reduce<number>((sum, count) => sum + Number(count), 0);
  return rows === 0 ? "" : ` with what had been stored before it: ${people(rows, "row", "rows")}, in order of time`;
}

/** The number of the edition that a row is about; null for none. */
export function editionOfRow({ bodyJson }: Pick<RecordRow, "bodyJson">): number | null {
  const { of, number } = bodyOf(bodyJson);
  return typeof number === "number" && of !== undefined ? number : null;
}
