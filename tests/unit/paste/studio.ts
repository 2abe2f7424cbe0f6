/** An invented studio to read lists for: a few moves, four springs. */
import { sidesOf } from "#app/_plan/acts.ts";
import { startingSeconds } from "#app/_plan/starting-seconds.ts";
import { startingSprings } from "#app/_plan/starting-springs.ts";
import { type Answers, NO_ANSWERS } from "#lib/paste/answers.ts";
import { judgeRows } from "#lib/paste/judge.ts";
import type { JudgedRow } from "#lib/paste/judged.ts";
import { readPaste } from "#lib/paste/read-paste.ts";
import type { PasteContext, PasteReading } from "#lib/paste/types.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";

export const STUDIO: PasteContext = {
  moves: STARTER_MOVES,
  equipment: STARTER_EQUIPMENT,
  sidesOf,
  startingSeconds,
  startingSprings: (move) => startingSprings(move, STARTER_EQUIPMENT),
};

type Read = Extract<PasteReading, { ok: true }>;

/** Reads a list that is short enough; throws for one that is refused. */
export function read(text: string): Read {
  const reading = readPaste(text, STUDIO);
  if (!reading.ok) throw new Error(reading.say);
  return reading;
}

export const judge = (text: string, answers: Answers = NO_ANSWERS): JudgedRow[] =>
  judgeRows(read(text).rows, answers, STUDIO);

/** The only row of a list of one. */
export function judgeOne(text: string, answers: Answers = NO_ANSWERS): JudgedRow {
  const rows = judge(text, answers);
  const [row] = rows;
  if (!row || rows.length !== 1) throw new Error(`${rows.length} rows`);
  return row;
}

/** "plank-pike both 60 light2", "pause 30 Water", "# Arms": what a row makes, short enough to compare. */
export function made(row: JudgedRow): string {
  if (row.state !== "ready") return row.state;
  return row.drafts
    .map((draft) => {
      if (draft.kind === "heading") return `# ${draft.title}`;
      if (draft.kind === "pause") return `pause ${draft.seconds} ${draft.text}`;
      const springs = Object.entries(draft.springs).map(([id, n]) => `${id}${n}`);
      return [draft.move, draft.side, draft.seconds, springs.join("+") || "none"].join(" ");
    })
    .join(" | ");
}
