"use client";
/** Scale readings of one spring: typed row by row, drawn with the line through them, kept, and used. */
import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import type { StudioRoom } from "#db/repos/room-repo.ts";
import type { Spring } from "#lib/plan/schema.ts";
import type { KeptSheet } from "#lib/springs/readings.ts";
import { roundedSpring } from "#lib/springs/readings.ts";
import type { SeenSpring } from "#server/rooms/keep-readings.ts";
import { Problem } from "../../_parts/problem.tsx";
import { useSend } from "../../_parts/use-send.ts";
import { FitFigure } from "./fit-figure.tsx";
import { FitWords } from "./fit-words.tsx";
import styles from "./readings.module.css";
import { ReadingsTable } from "./readings-table.tsx";
import { draftOf, readSheet, type SheetDraft } from "./sheet-draft.ts";
import { UnitChoice } from "./unit-choice.tsx";
import { springWords } from "./words.ts";

interface ReadingsFormProps {
  readonly roomId: string;
  readonly spring: Spring;
  readonly kept: KeptSheet | null;
  /** How far the room's carriage travels. */
  readonly carriageMm: number;
}

export function ReadingsForm({ roomId, spring, kept, carriageMm }: ReadingsFormProps) {
  const router = useRouter();
  const sending = useSend();
  const [draft, setDraft] = useState<SheetDraft>(() => draftOf(kept));
  const [done, setDone] = useState("");
  const [seen, setSeen] = useState(() => seenOf(spring, kept));
  const table = useRef<HTMLTableElement>(null);
  const read = readSheet(draft, carriageMm);
  const change = (next: SheetDraft) => {
    setDone("");
    sending.clear();
    setDraft(next);
  };
  const leaveOut = (row: number, leftOut: boolean) =>
    change({ ...draft, rows: draft.rows.map((r) => (r.row === row ? { ...r, leftOut } : r)) });
  const keep = async (use: boolean) => {
    if (!read.sheet) return;
    const url = `/api/rooms/${roomId}/springs/${spring.id}/readings`;
    const room = await sending.run<StudioRoom>("PUT", url, { sheet: read.sheet, use, seen });
    if (!room) return;
    const now = room.equipment.springs.find((s) => s.id === spring.id) ?? spring;
    setSeen(seenOf(now, room.readings?.[spring.id] ?? null));
    setDone(
      use ? `${spring.label} is now ${springWords(now)}. Open plans were checked again.` : "The readings are kept.",
    );
    router.refresh();
  };
  const line = read.fit.ok ? roundedSpring(read.fit) : null;
  const straight = read.fit.ok && read.fit.straight;
  return (
    <div className={styles.readings}>
      <div className={styles.typed}>
        <UnitChoice draft={draft} onChange={change} />
        <ReadingsTable ref={table} draft={draft} read={read} onChange={change} onLeaveOut={leaveOut} />
      </div>
      <div className={styles.fitted}>
        <FitFigure draft={draft} read={read} label={spring.label} />
        <FitWords read={read} onLeaveOut={(row) => leaveOut(row, true)} />
        <div className="acts">
          <button
            type="button"
            className={straight ? "button button-strong" : "button"}
            aria-disabled={sending.busy}
            disabled={line === null || read.sheet === null}
            onClick={() => keep(true)}
          >
            {useWords(line, straight)}
          </button>
          <button
            type="button"
            className="button"
            aria-disabled={sending.busy}
            disabled={read.sheet === null}
            onClick={() => keep(false)}
          >
            Keep the readings only
          </button>
        </div>
        <Problem say={sending.problem} />
        <p role="status" className={done ? "done" : undefined}>
          {done}
        </p>
      </div>
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
  if (line === null) return "Use this";
  return `${straight ? "Use this" : "Use it all the same"}: ${springWords(line)}`;
}
