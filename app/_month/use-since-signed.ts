"use client";
import { useEffect, useMemo, useState } from "react";
/** What became of each class since the month was signed off, for marks on the sheet and for the list of changes. */
import { timesIn } from "#lib/formats/canonical-times.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { changeMarks, changeSentence } from "#lib/month/changes/change-words.ts";
import { type RenamedPart, renamedSince } from "#lib/month/changes/renamed-since.ts";
import { type ChangedSlot, slotChanges, withinMonth } from "#lib/month/changes/slot-changes.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { listWords } from "#lib/plan/format.ts";
import { send } from "../_parts/send.ts";
import type { MonthSnapshot } from "./month-types.ts";

export interface SinceSigned {
  /** False where no edition is signed, and until the signed one is here: then nothing is known. */
  readonly known: boolean;
  /** By class: "moved from 18:00 since it was signed". Small things have none. */
  readonly marks: ReadonlyMap<string, string>;
  /** Every class that differs, by time: its id and the whole sentence. */
  readonly changes: readonly { readonly id: string; readonly sentence: string }[];
  /** What classes have that goes by another name now: once each, with how many have it. */
  readonly renamed: readonly RenamedPart[];
  /** The classes that differ, as they are compared. */
  readonly slots: readonly ChangedSlot[];
}

const NOTHING: SinceSigned = { known: false, marks: new Map(), changes: [], renamed: [], slots: [] };

/** Empty until the signed edition is here. */
export function useSinceSigned(month: MonthSnapshot, name: string, f: Formats): SinceSigned {
  const was = useSignedFile(month, name);
  const { file } = month;
  return useMemo(() => (was ? sinceSigned(was, file, f) : NOTHING), [was, file, f]);
}

function sinceSigned(was: MonthFile, now: MonthFile, f: Formats): SinceSigned {
  const changes = withinMonth(slotChanges(was, now), now.dates);
  const marked = changes.flatMap((change) => {
    const marks = changeMarks(change);
    return marks.length > 0 ? [[change.id, `${timesIn(listWords(marks), f)} since it was signed`] as const] : [];
  });
  return {
    known: true,
    marks: new Map(marked),
    changes: changes.map((change) => ({ id: change.id, sentence: timesIn(changeSentence(change, { was, now }), f) })),
    renamed: renamedSince(was, now),
    slots: changes,
  };
}

/** Fetched once an edition; tried again when the page is connected again. */
function useSignedFile({ signed, saveState }: MonthSnapshot, name: string): MonthFile | null {
  const [got, setGot] = useState<{ readonly number: number; readonly file: MonthFile } | null>(null);
  const number = signed?.number ?? null;
  const reachable = saveState === "saved" || saveState === "sending";
  const there = got?.number === number;
  useEffect(() => {
    if (number === null || !reachable || there) return;
    const stop = new AbortController();
    void send<{ readonly file: MonthFile }>("GET", `/api/programme/${name}/editions/${number}`, undefined, {
      signal: stop.signal,
    }).then((sent) => {
      if (sent.ok && !stop.signal.aborted) setGot({ number, file: sent.value.file });
    });
    return () => stop.abort();
  }, [number, reachable, there, name]);
  return there && number !== null ? (got?.file ?? null) : null;
}
