/**
 * What travels: one decision for each table and each of its columns. A table or a column that nobody has decided about fails
 * `tests/unit/studio-files/decisions.test.ts`, so that nothing is lost and no secret leaves unseen.
 */
import type { TableRow } from "#db/file/table-rows.ts";
import type { SettingName } from "#db/repos/setting-repo.ts";

interface Travels {
  /** What README.txt says of it. */
  readonly holds: string;
  /** Columns that are written, in this order. */
  readonly columns: readonly string[];
  /** Columns that stay, and why. */
  readonly stay?: Readonly<Record<string, string>>;
}
interface Stays {
  /** Why it does not travel, as README.txt says it. */
  readonly stays: string;
}

const words = (list: string): string[] => list.split(" ");
const SECRET = "opens something";

/** In the order in which an import puts them in. */
export const TABLES: Readonly<Record<string, Travels | Stays>> = {
  studio: {
    holds: "name, town, standards and policy of the studio",
    columns: words("id name town standards_json sole_author_may_sign created_at"),
  },
  organization: {
    holds: "the studio as the accounts know it",
    columns: words("id name slug logo created_at metadata"),
  },
  user: {
    holds: "people, also those who have left: name and address, no password",
    columns: words("id name email email_verified image created_at updated_at"),
  },
  member: {
    holds: "who is in the studio, with which roles",
    columns: words("id organization_id user_id role created_at"),
  },
  studio_setting: {
    holds: "settings by name: the rubric, the month, what classes people were told of, the end of the record",
    columns: words("name data_json updated_at"),
  },
  signing_key: {
    holds: "public keys that signatures are checked with",
    columns: words("id public_key created_at"),
    stay: { sealed_private_key: "it signs; a studio signs with a new key after an import" },
  },
  room: {
    holds: "rooms with machines, springs, set-up timings and scale readings",
    columns: words("id name equipment_json readings_json"),
  },
  move: { holds: "the library of moves", columns: words("id data_json updated_at archived_at") },
  plan: {
    holds: "plans: whose, which room, which state",
    columns: words(
      "id title length_seconds owner_id room_id team state handed_in_by handed_in_at state_note created_at updated_at deleted_at archived_at origin",
    ),
  },
  plan_share: { holds: "who shares a plan", columns: words("plan_id user_id") },
  plan_author: { holds: "who has written in a plan", columns: words("plan_id user_id first_at") },
  document: { holds: "shared documents (plans and months) by name", columns: words("name generation created_at") },
  doc_snapshot: {
    holds: "what documents held up to a row of their log: Yjs updates, base64",
    columns: words("name seq bytes at"),
  },
  doc_update: {
    holds: "what was written into documents since: Yjs updates, base64",
    columns: words("seq name bytes actor_id at"),
  },
  plan_text: { holds: "texts of plans at the steps of their rounds", columns: words("plan_id hash plan_json") },
  plan_round: {
    holds: "rounds of reading",
    columns: words(
      "plan_id number offered_by offered_at reader_id read_since outcome ended_by ended_at main_points_json edition",
    ),
  },
  plan_moment: {
    holds: "plans as they were at each step of a round",
    columns: words("id plan_id round kind at actor_id note hash findings_json threads_json"),
  },
  plan_reading: {
    holds: "what a lead had read when they opened a sign-off",
    columns: words("plan_id user_id hash plan_json at"),
  },
  plate_read: {
    holds: "what a lead has read of a plan, item by item",
    columns: words("plan_id user_id item_id hash at"),
  },
  edition: {
    holds: "signed editions with their cards and findings",
    columns: words(
      "plan_id number hash plan_json card_json findings_json signed_by signed_at note accepted_json round",
    ),
  },
  edition_withdrawal: {
    holds: "editions that were withdrawn, and why",
    columns: words("plan_id number withdrawn_by withdrawn_at reason"),
  },
  month_reading: {
    holds: "what a lead had read when they opened a month's sign-off",
    columns: words("month user_id hash file_json at"),
  },
  month_edition: {
    holds: "months as they were signed off",
    columns: words("month number hash file_json findings_json accepted_json signed_by signed_at note"),
  },
  month_acceptance: {
    holds: "findings of months that were accepted with a reason",
    columns: words("id month rule finding_id finding_key message reason accepted_by accepted_at undone_by undone_at"),
  },
  thread: {
    holds: "threads and the spot each is pinned to",
    columns: words("id plan_id anchor_json settled created_at"),
  },
  comment: { holds: "comments", columns: words("id thread_id author_id body at as_lead") },
  mention: { holds: "who is named in a comment", columns: words("comment_id user_id thread_id seen_at") },
  remark: { holds: "stock remarks", columns: words("id words rule_id move_id created_by updated_at archived_at") },
  proposal: {
    holds: "changes that were offered",
    columns: words("id plan_id item_id by_id at note parts_json state taken_json ended_by ended_at word"),
  },
  acceptance: {
    holds: "findings that were accepted with a reason",
    columns: words("id plan_id rule_id finding_key message reason by_id at ended_by ended_at"),
  },
  marks: {
    holds: "marks by the rubric",
    columns: words("id user_id plan_id round session_id by_id at rubric_json levels_json sentence"),
  },
  device: {
    holds: "cue devices: name and room; each is paired again",
    columns: words("id name room_id last_seen_at revoked_at created_by"),
    stay: { token_hash: SECRET, code_hash: SECRET, code_expires_at: SECRET, paired_at: "it is paired again" },
  },
  class_log: {
    holds: "logs of classes and rehearsals",
    columns: words("session_id plan_id number room_id device_id kind started_at received_at log_json"),
  },
  class_log_remark: {
    holds: "who led a class, and logs that do not count",
    columns: words("id session_id kind coach_id reason actor_id at"),
  },
  class_log_seen: { holds: "who has looked at a log", columns: words("session_id user_id at") },
  calendar_feed: {
    holds: "calendar addresses that were made; each is renewed before it answers again",
    columns: words("id kind subject made_by made_at withdrawn_by withdrawn_at last_read_at"),
    stay: { secret_hash: SECRET },
  },
  desk_visit: { holds: "when somebody last saw their desk", columns: words("user_id at before") },
  notice: { holds: "what people were told", columns: words("id user_id at kind plan_id data_json seen_at mailed_at") },
  notice_choice: {
    holds: "how people want to be told",
    columns: words("user_id digest_at time_zone kinds_json digest_sent_at"),
  },
  format_choice: { holds: "how people want dates and units written", columns: words("user_id choices_json") },
  studio_event: {
    holds: "changes of standards, machines and access",
    columns: words("id at actor_id kind subject data_json"),
  },
  move_event: { holds: "changes of the library", columns: words("id move_id at actor_id kind data_json") },
  plan_event: { holds: "what happened to plans", columns: words("id plan_id at actor_id kind note hash") },
  record: {
    holds: "the record, as a chain",
    columns: words("seq at actor_id subject kind body_json previous_hash hash"),
  },
  session: { stays: "who is signed in: everybody signs in again" },
  account: { stays: "passwords: everybody gets in by a reset link" },
  verification: { stays: "reset links: they are made again" },
  invitation: { stays: "invitations are links that let people in: they are made again" },
  mail: { stays: "mails that wait: the studio they were written in sends them" },
  plan_check: { stays: "the result of each plan's last check: it is worked out again" },
  doc_client: { stays: "which page wrote which change: as after a restore, any page may bring what it still holds" },
};

/** A setting that stays says why. */
type SettingDecision = "travels" | { readonly stays: string };
const SETTINGS: Readonly<Record<SettingName | "record-head", SettingDecision>> = {
  rubric: "travels",
  month: "travels",
  "told-classes": "travels",
  "first-steps": "travels",
  formats: "travels",
  "record-head": "travels",
  mail: { stays: "the mail server: an import does not begin to write to people, and its password stays" },
  backups: { stays: "when and where backups are made: folders of the former machine" },
  "backup-state": { stays: "what became of the former machine's backups" },
};

export const travels = (table: string): Travels | undefined => {
  const decided = Object.hasOwn(TABLES, table) ? TABLES[table] : undefined;
  return decided && "columns" in decided ? decided : undefined;
};

export const travellingTables = (): readonly string[] => Object.keys(TABLES).filter((table) => travels(table));

/** Whether a row is written. */
export function rowTravels(table: string, row: TableRow): boolean {
  if (table !== "studio_setting") return true;
  const name = String(row.name);
  return Object.hasOwn(SETTINGS, name) && SETTINGS[name as keyof typeof SETTINGS] === "travels";
}

/** One line of a table's file. Bytes are base64. */
export function lineOfRow(row: TableRow): string {
  const cells = Object.entries(row).map(([name, cell]) => [name, cell instanceof Uint8Array ? base64(cell) : cell]);
  return `${JSON.stringify(Object.fromEntries(cells))}\n`;
}

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64");
