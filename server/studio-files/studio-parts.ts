/** What a studio has beside its plans and months, as open files: the library, rooms, people, settings, rules, the record. */
import { tableRows } from "#db/file/table-rows.ts";
import { listMoveRows } from "#db/repos/move-repo.ts";
import { listMembers, namesById } from "#db/repos/people-repo.ts";
import { listRecord } from "#db/repos/record-repo.ts";
import { listStudioRooms } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { recordSentence } from "#lib/record/kinds.ts";
import { RULES } from "#lib/rules/registry.ts";
import { fileStem } from "#server/editions/editions.ts";
import { recordNames, whoDid } from "#server/record/record-names.ts";
import { type ExportedFile, idName, jsonFile } from "./exported-file.ts";
import type { StudioReader } from "./studio-reader.ts";
import { rowTravels } from "./tables.ts";

export function* studioParts(reader: StudioReader): Generator<ExportedFile> {
  const { db } = reader;
  const moves = listMoveRows(db);
  yield jsonFile("library/moves.json", {
    moves: Object.fromEntries(moves.map(({ id, move }) => [id, move])),
    archived: moves.filter(({ archivedAt }) => archivedAt !== null).map(({ id }) => id),
  });
  for (const room of listStudioRooms(db)) yield jsonFile(`rooms/${idName(fileStem(room.name), room.id)}.json`, room);
  yield jsonFile("people.json", people(reader));
  yield jsonFile("settings.json", settings(reader));
  yield jsonFile("rules.json", rules(reader));
  yield* readingFiles(reader);
  yield { path: "record.txt", chunks: () => recordLines(reader) };
}

/** Also who has left: their plans and comments keep their name. */
function people({ db }: StudioReader) {
  const members = new Map(listMembers(db).map((person) => [person.id, person]));
  return [...namesById(db)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([id, name]) => {
      const person = members.get(id);
      return person ? { id, name, email: person.email, roles: person.roles } : { id, name, left: true };
    });
}

function settings({ db }: StudioReader) {
  const studio = readStudio(db);
  const kept = [...tableRows(db.raw, "studio_setting", ["name", "data_json"])].filter(
    (row) => rowTravels("studio_setting", row) && row.name !== "record-head",
  );
  return {
    ...studio,
    settings: Object.fromEntries(kept.map(({ name, data_json }) => [name, JSON.parse(String(data_json))])),
  };
}

/** Each rule's words, its own level, and what the studio set otherwise. */
function rules({ db }: StudioReader) {
  const standards = readStudio(db)?.standards ?? {};
  return RULES.map(({ id, title, why, fix, level, source }) => {
    const standard = standards[id];
    return { id, title, why, fix, level, source, ...(standard === undefined ? {} : { standard }) };
  });
}

/** Tables whose rows are also written to be read: texts of JSON as they are, and names beside ids of people. */
const READABLE: readonly (readonly [table: string, columns: string])[] = [
  [
    "plan_round",
    "plan_id number offered_by offered_at reader_id read_since outcome ended_by ended_at main_points_json edition",
  ],
  ["proposal", "id plan_id item_id by_id at note parts_json state taken_json ended_by ended_at word"],
  ["acceptance", "id plan_id rule_id finding_key message reason by_id at ended_by ended_at"],
  ["month_acceptance", "id month rule message reason accepted_by accepted_at undone_by undone_at"],
  ["marks", "id user_id plan_id round session_id by_id at rubric_json levels_json sentence"],
  ["remark", "id words rule_id move_id created_by updated_at archived_at"],
];
const PEOPLE = new Set([
  "offered_by",
  "reader_id",
  "ended_by",
  "by_id",
  "accepted_by",
  "undone_by",
  "user_id",
  "created_by",
]);

function* readingFiles({ db }: StudioReader): Generator<ExportedFile> {
  const names = namesById(db);
  for (const [table, columns] of READABLE) {
    const rows = [...tableRows(db.raw, table, columns.split(" "))].map((row) =>
      Object.fromEntries(Object.entries(row).flatMap(([name, cell]) => readable(name, cell, names))),
    );
    yield jsonFile(`reading/${table.replaceAll("_", "-")}.json`, rows);
  }
}

function readable(name: string, cell: unknown, names: ReadonlyMap<string, string>): [string, unknown][] {
  if (cell === null) return [];
  if (name.endsWith("_json")) return [[name.slice(0, -"_json".length), JSON.parse(String(cell))]];
  const person = PEOPLE.has(name) ? names.get(String(cell)) : undefined;
  if (/(^|_)(at|since)$/.test(name)) return [[name, new Date(Number(cell)).toISOString()]];
  return person === undefined
    ? [[name, cell]]
    : [
        [name, cell],
        [name.replace(/_(by|id)$/, "_name"), person],
      ];
}

const PAGE = 500;

/** One row a line: number, time, who and what. */
function* recordLines({ db }: StudioReader): Generator<string> {
  const names = recordNames(db);
  for (let after = 0; ; ) {
    const rows = listRecord(db, after, PAGE);
    for (const row of rows) {
      const says = recordSentence(row, names).replace(/\s*\n\s*/g, " ");
      yield `${row.seq}  ${new Date(row.at).toISOString()}  ${whoDid(row.actorId, names)} ${says}\n`;
      after = row.seq;
    }
    if (rows.length < PAGE) return;
  }
}
