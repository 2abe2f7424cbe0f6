"use client";
/**
 * The words of the whole class as one text, in order of time: what is said when, what there is no time for, what is for the
 * crew. It is read here and edited in the item's script, which each line opens. It can be printed.
 */
import { useDeferredValue, useMemo, useRef } from "react";
import { type PlateFacts, platesOf } from "#app/_parts/plate/plate-facts.ts";
import { goToLine } from "#app/_session/go-to-line.ts";
import { nameOf } from "#app/_session/item-words.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { classClock } from "#lib/clock/clock.ts";
import {
  keepSameParts,
  type ReadPart,
  readThrough,
  sumsWords,
  type ReadThrough as Text,
} from "#lib/cues/read-through.ts";
import type { CueTrack } from "#lib/cues/types.ts";
import { sideWords } from "#lib/plan/format.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import styles from "./read.module.css";
import { Part } from "./read-part.tsx";
import { HOW_TO_READ } from "./read-words.ts";
import { useReading } from "./use-reading.ts";

interface ReadThroughViewProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
}

export function ReadThroughView({ session, snap }: ReadThroughViewProps) {
  const { pick } = usePageActs();
  const { plan, track, selectedId } = useDeferredValue(snap);
  const text = useText(plan, track);
  const plateOf = usePlates(plan, track);
  const reading = useReading(text.parts);
  const go = useRef((_item: string, _line: number | null): void => undefined);
  go.current = (item, line) => {
    pick(item);
    if (line !== null) goToLine(session, item, line);
  };
  return (
    <section className={styles.reading} aria-labelledby="reading-title">
      <Head title={plan.title} text={text} />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys of the lines inside, which are buttons */}
      <div ref={reading.box} onKeyDown={reading.onKeyDown} onFocus={reading.onFocus} data-reading>
        {text.parts.map((part) => (
          <Part
            key={part.key}
            part={part}
            name={sidedName(plan, part.item)}
            plate={plateOf(part)}
            selected={part.item.id === selectedId}
            tabbable={part.lines.some(({ key }) => key === reading.current) ? reading.current : null}
            go={go}
          />
        ))}
      </div>
    </section>
  );
}

function Head({ title, text }: { readonly title: string; readonly text: Text }) {
  return (
    <header className={styles.head}>
      <h2 id="reading-title">Read-through</h2>
      <button type="button" className={`button ${styles.print}`} onClick={() => print()}>
        Print
      </button>
      <p className={styles.printTitle}>{title}</p>
      <p className={styles.sums}>{sumsWords(text)}</p>
      <p className={`small quiet ${styles.how}`}>{HOW_TO_READ}</p>
    </header>
  );
}

const sidedName = (plan: Plan, item: PlanItem): string =>
  item.kind === "move" && item.side !== "both" ? `${nameOf(plan, item)}, ${sideWords(item.side)}` : nameOf(plan, item);

/** Facts that are the same stay the same object, so that the part is not drawn again. */
function usePlates(plan: Plan, track: CueTrack): (part: ReadPart) => PlateFacts | null {
  const kept = useRef(new Map<string, PlateFacts>());
  return useMemo(() => {
    const { rows } = classClock(plan);
    const factsOf = platesOf(plan, { rows, cues: track.cues, dropped: track.dropped });
    return ({ item, again }) => {
      if (item.kind !== "move" || again) return null;
      const before = kept.current.get(item.id);
      const facts = factsOf(item);
      if (before && sameData(before, facts)) return before;
      kept.current.set(item.id, facts);
      return facts;
    };
  }, [plan, track]);
}

/** A part in which nothing changed stays the same object and is not drawn again. */
function useText(plan: Plan, track: CueTrack): Text {
  const before = useRef<readonly ReadPart[]>([]);
  return useMemo(() => {
    const text = readThrough(plan, track);
    before.current = keepSameParts(text.parts, before.current);
    return { ...text, parts: before.current };
  }, [plan, track]);
}
