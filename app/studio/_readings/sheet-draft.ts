/** Scale readings as typed: texts until they are saved, so that half a number stays while it is being typed. Pure. */
import type { ForceUnit, Formats } from "#lib/formats/formats.ts";
import { distanceWords, forceWords, toMm, toNewtons } from "#lib/formats/units.ts";
import {
  countedReadings,
  fromMm,
  fromNewtons,
  type KeptReading,
  type ReadingSheet,
  type TravelUnit,
} from "#lib/springs/readings.ts";
import { fitForRoom, fitSpring, type SpringFit } from "#lib/springs/spring-fit.ts";

export interface RowDraft {
  readonly row: number;
  readonly travel: string;
  readonly force: string;
  readonly leftOut: boolean;
}
export interface SheetDraft {
  readonly travelUnit: TravelUnit;
  readonly forceUnit: ForceUnit;
  readonly rows: readonly RowDraft[];
}

/** Most that the schema of a sheet takes. */
export const MOST_ROWS = 100;
const FIRST_ROWS = 4;
const LARGEST_N = 5000;

const emptyRow = (row: number): RowDraft => ({ row, travel: "", force: "", leftOut: false });

/** An empty sheet begins in the reader's units; in newtons there is hardly a scale, so that one begins in kilograms. */
export function sheetDraftOf(
  sheet: ReadingSheet | null,
  { force, length }: Pick<Formats, "force" | "length">,
): SheetDraft {
  if (!sheet || sheet.readings.length === 0) {
    return {
      travelUnit: length,
      forceUnit: force === "N" ? "kgf" : force,
      rows: Array.from({ length: FIRST_ROWS }, (_, i) => emptyRow(i)),
    };
  }
  const { travelUnit, forceUnit } = sheet;
  const rows = sheet.readings.map((reading, row) => ({
    row,
    travel: String(fromMm(reading.travelMm, travelUnit)),
    force: String(fromNewtons(reading.newtons, forceUnit)),
    leftOut: reading.leftOut === true,
  }));
  return { travelUnit, forceUnit, rows };
}

export function withRow(draft: SheetDraft): SheetDraft {
  const next = Math.max(-1, ...draft.rows.map((row) => row.row)) + 1;
  return draft.rows.length >= MOST_ROWS ? draft : { ...draft, rows: [...draft.rows, emptyRow(next)] };
}

/** One typed row: a reading, nothing yet, or what is wrong with it. */
type RowRead =
  | { readonly kind: "reading"; readonly reading: KeptReading }
  | { readonly kind: "empty" }
  | { readonly kind: "half" }
  | { readonly kind: "wrong"; readonly say: string };

/** `carriageMm`: how far the carriage of the room travels; further out nothing can be read. */
function readReadingRow(draft: SheetDraft, row: RowDraft, carriageMm: number): RowRead {
  const [travel, force] = [row.travel.trim(), row.force.trim()];
  if (travel === "" && force === "") return { kind: "empty" };
  const [x, f] = [numberOf(travel), numberOf(force)];
  if (travel !== "" && x === null) return { kind: "wrong", say: "Type the travel as a number, 0 or more." };
  if (force !== "" && f === null) return { kind: "wrong", say: "Type the force as a number, 0 or more." };
  if (x === null || f === null) return { kind: "half" };
  const reading = { travelMm: toMm(x, draft.travelUnit), newtons: toNewtons(f, draft.forceUnit) };
  if (reading.travelMm > carriageMm) {
    const has =
      draft.travelUnit === "mm" ? `${carriageMm} mm` : distanceWords(carriageMm, { length: draft.travelUnit }, true);
    return { kind: "wrong", say: `This room’s carriage travels ${has}. Check the number and its unit.` };
  }
  if (reading.newtons > LARGEST_N) {
    const most = forceWords(LARGEST_N, { force: draft.forceUnit });
    return { kind: "wrong", say: `No spring pulls more than ${most}. Check the unit.` };
  }
  return { kind: "reading", reading: row.leftOut ? { ...reading, leftOut: true } : reading };
}

function numberOf(text: string): number | null {
  const value = text === "" ? Number.NaN : Number(text.replace(",", "."));
  return Number.isFinite(value) && value >= 0 ? value : null;
}

export interface SheetRead {
  /** By row id. */
  readonly rows: ReadonlyMap<number, RowRead>;
  /** What can be kept: null while a row is wrong or half written. */
  readonly sheet: ReadingSheet | null;
  /** The fit of the readings that count, as the room would take it. */
  readonly fit: SpringFit;
  /** The line to draw, also where the room would not take it. */
  readonly line: { readonly stiffnessNPerMm: number; readonly preloadN: number } | null;
  /** Row ids of the readings that count, in order: "Reading 2" is the second of them. */
  readonly counted: readonly number[];
  /** Row id of the reading that is off the line of the others. */
  readonly doubtful: number | null;
}

/** `f`: the reader's units, for what the fit says. */
export function readSheetDraft(draft: SheetDraft, carriageMm: number, f: Pick<Formats, "force" | "length">): SheetRead {
  const rows = new Map(draft.rows.map((row) => [row.row, readReadingRow(draft, row, carriageMm)]));
  const whole = draft.rows.flatMap(({ row }) => {
    const read = rows.get(row);
    return read?.kind === "reading" ? [{ row, reading: read.reading }] : [];
  });
  const { readings, places } = countedReadings(whole.map(({ reading }) => reading));
  const counted = places.flatMap((place) => whole[place]?.row ?? []);
  const fit = fitForRoom(readings, { words: f });
  const drawn = fit.ok ? fit : fitSpring(readings);
  const unfinished = [...rows.values()].some((read) => read.kind === "wrong" || read.kind === "half");
  const { travelUnit, forceUnit } = draft;
  const sheet = unfinished ? null : { travelUnit, forceUnit, readings: whole.map(({ reading }) => reading) };
  return {
    rows,
    sheet,
    fit,
    line: drawn.ok ? drawn : null,
    counted,
    doubtful: drawn.ok && drawn.doubtful !== null ? (counted[drawn.doubtful] ?? null) : null,
  };
}
