"use client";
/** Scale readings of one spring: typed row by row, drawn with the line through them, saved, and used by the room. */
import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { StudioRoom } from "#db/repos/room-repo.ts";
import type { Spring } from "#lib/plan/schema.ts";
import type { KeptSheet, ReadingSheet } from "#lib/springs/readings.ts";
import { roundedSpring } from "#lib/springs/readings.ts";
import type { SeenSpring } from "#server/rooms/keep-readings.ts";
import { ProblemLine } from "../../_parts/problem-line.tsx";
import { useSend } from "../../_parts/use-send.ts";
import { FitFigure } from "./fit-figure.tsx";
import { FitWords } from "./fit-words.tsx";
import { measuredSpringWords } from "./measured-spring-words.ts";
import { PasteReadings } from "./paste-readings.tsx";
import styles from "./readings.module.css";
import { ReadingsTable } from "./readings-table.tsx";
import { readSheetDraft, type SheetDraft, type SheetRead, sheetDraftOf } from "./sheet-draft.ts";
import { UnitChoice } from "./unit-choice.tsx";

interface ReadingsFormProps {
  readonly roomId: string;
  readonly spring: Spring;
  readonly kept: KeptSheet | null;
  /** How far the room's carriage travels. */
  readonly carriageMm: number;
}

export function ReadingsForm({ roomId, spring, kept, carriageMm }: ReadingsFormProps) {
  const f = useFormats();
  const [draft, setDraft] = useState<SheetDraft>(() => sheetDraftOf(kept, f));
  const table = useRef<HTMLTableElement>(null);
  const read = readSheetDraft(draft, carriageMm, f);
  const saving = useSaving({ roomId, spring, kept });
  const change = (next: SheetDraft) => {
    saving.clear();
    setDraft(next);
  };
  const leaveOut = (row: number, leftOut: boolean) =>
    change({ ...draft, rows: draft.rows.map((r) => (r.row === row ? { ...r, leftOut } : r)) });
  return (
    <div className={styles.readings}>
      <div className={styles.typed}>
        <UnitChoice draft={draft} onChange={(units) => change({ ...draft, ...units })} />
        <PasteReadings draft={draft} carriageMm={carriageMm} onTake={change} />
        <ReadingsTable ref={table} draft={draft} read={read} onChange={change} onLeaveOut={leaveOut} />
      </div>
      <div className={styles.fitted}>
        <FitFigure draft={draft} read={read} label={spring.label} />
        <FitWords read={read} onLeaveOut={(row) => leaveOut(row, true)} />
        <SaveActs read={read} busy={saving.busy} onSave={(use) => saving.save(read.sheet, use)} />
        <ProblemLine say={saving.problem} />
        <p role="status" className={saving.done ? "done" : undefined}>
          {saving.done}
        </p>
      </div>
    </div>
  );
}

function useSaving({ roomId, spring, kept }: Pick<ReadingsFormProps, "roomId" | "spring" | "kept">) {
  const f = useFormats();
  const router = useRouter();
  const sending = useSend();
  const [done, setDone] = useState("");
  const [seen, setSeen] = useState(() => seenOf(spring, kept));
  const save = async (sheet: ReadingSheet | null, use: boolean) => {
    if (!sheet) return;
    const url = `/api/rooms/${roomId}/springs/${spring.id}/readings`;
    const room = await sending.run<StudioRoom>("PUT", url, { sheet, use, seen });
    if (!room) return;
    const now = room.equipment.springs.find((s) => s.id === spring.id) ?? spring;
    setSeen(seenOf(now, room.readings?.[spring.id] ?? null));
    setDone(
      use
        ? `${spring.label} is now ${measuredSpringWords(now, f)}. Open plans were checked again.`
        : `Readings ${sheet.readings.length === 0 ? "removed" : "saved"}. The spring’s numbers stay as they are.`,
    );
    router.refresh();
  };
  const clear = () => {
    setDone("");
    sending.clear();
  };
  return { busy: sending.busy, problem: sending.problem, done, save, clear };
}

interface SaveActsProps {
  readonly read: SheetRead;
  readonly busy: boolean;
  /** `use`: the room takes the line's numbers too. */
  readonly onSave: (use: boolean) => void;
}

function SaveActs({ read, busy, onSave }: SaveActsProps) {
  const line = read.fit.ok ? roundedSpring(read.fit) : null;
  const straight = read.fit.ok && read.fit.straight;
  return (
    <div className="acts">
      <button
        type="button"
        className={straight ? "button button-strong" : "button"}
        aria-disabled={busy}
        disabled={line === null || read.sheet === null}
        onClick={() => onSave(true)}
      >
        {useWords(line, straight)}
      </button>
      <button
        type="button"
        className="button"
        aria-disabled={busy}
        disabled={read.sheet === null}
        onClick={() => onSave(false)}
      >
        Save the readings only
      </button>
    </div>
  );
}

/** What this page shows as it stands in the room, for the server to compare with. */
const seenOf = ({ stiffnessNPerMm, preloadN }: Spring, kept: KeptSheet | null): SeenSpring => ({
  readingsAt: kept?.at ?? null,
  stiffnessNPerMm,
  preloadN,
});

function useWords(line: Pick<Spring, "stiffnessNPerMm" | "preloadN"> | null, straight: boolean): string {
  const f = useFormats();
  if (line === null) return "Use this";
  return `${straight ? "Use this" : "Use it anyway"}: ${measuredSpringWords(line, f)}`;
}
