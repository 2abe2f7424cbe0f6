/** Logs of classes as tables for a spreadsheet (RFC 4180), one line a class and one line a step, and whole as JSON lines. */
import Papa from "papaparse";
import { type TableRow, tableRows } from "#db/file/table-rows.ts";
import { nameOfDevice } from "#db/repos/device-repo.ts";
import { readPlanRow } from "#db/repos/plan-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import type { ExportedFile } from "./exported-file.ts";
import type { StudioReader } from "./studio-reader.ts";

const COLUMNS = [
  "session_id",
  "plan_id",
  "number",
  "room_id",
  "device_id",
  "kind",
  "started_at",
  "received_at",
  "log_json",
];

export function* classLogFiles(reader: StudioReader): Generator<ExportedFile> {
  yield { path: "class-logs/classes.csv", chunks: () => classes(reader) };
  yield { path: "class-logs/steps.csv", chunks: () => steps(reader) };
  yield { path: "class-logs/class-logs.jsonl", chunks: () => whole(reader) };
}

const CLASS_HEAD = ["session", "kind", "started", "plan", "edition", "room", "device", "seconds", "whole"];
const STEP_HEAD = ["session", "step", "phase", "item", "planned", "given", "took", "held"];

function* classes({ db }: StudioReader): Generator<string> {
  yield line(CLASS_HEAD);
  for (const row of logRows(db.raw)) {
    const log = logOf(row);
    const plan = readPlanRow(db, String(row.plan_id))?.title ?? row.plan_id;
    const room = readRoom(db, String(row.room_id))?.name ?? row.room_id;
    const device = nameOfDevice(db, String(row.device_id)) ?? row.device_id;
    const started = new Date(Number(row.started_at)).toISOString();
    yield line([row.session_id, row.kind, started, plan, row.number, room, device, log.elapsed, log.whole]);
  }
}

function* steps({ db }: StudioReader): Generator<string> {
  yield line(STEP_HEAD);
  for (const row of logRows(db.raw))
    for (const [at, step] of (logOf(row).rows ?? []).entries())
      yield line([row.session_id, at + 1, step.phase, step.item, step.planned, step.given, step.took, step.held]);
}

/** The log itself as it was stored, byte for byte. */
function* whole({ db }: StudioReader): Generator<string> {
  for (const { log_json, ...row } of logRows(db.raw)) yield `${JSON.stringify(row).slice(0, -1)},"log":${log_json}}\n`;
}

const logRows = (raw: StudioReader["db"]["raw"]) => tableRows(raw, "class_log", COLUMNS);

interface LoggedClass {
  readonly elapsed?: number;
  readonly whole?: boolean;
  readonly rows?: readonly Readonly<Record<string, unknown>>[];
}

/** Checked when it was taken. */
const logOf = (row: TableRow): LoggedClass => JSON.parse(String(row.log_json)) as LoggedClass;

/** A cell that begins like a formula is not worked out by a spreadsheet. */
const line = (cells: readonly unknown[]): string =>
  `${Papa.unparse([cells], { newline: "\r\n", escapeFormulae: true })}\r\n`;
