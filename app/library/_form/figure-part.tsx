"use client";
import { useDeferredValue } from "react";
import { MoveFigurePicture } from "#app/_parts/figure.tsx";
import { figureOf } from "#lib/figure/figure.ts";
import type { FigureMove } from "#lib/figure/stances/stage.ts";
import { figureWords } from "#lib/figure/words.ts";
/** The figure of what is typed so far, start and end, beside the fields that make it. */
import { toMm } from "#lib/formats/units.ts";
import { type MoveDraft, readFigureDraft } from "#lib/library/draft.ts";
import { listWords } from "#lib/plan/format.ts";
import { type Group, moveSchema } from "#lib/plan/schema.ts";
import styles from "./form.module.css";

interface FigurePartProps {
  readonly draft: MoveDraft;
  /** Width of each picture in pixels. */
  readonly px: number;
}

export function FigurePart({ draft, px }: FigurePartProps) {
  // The fields come first: the figure may follow a moment later.
  const move = figureMoveOf(useDeferredValue(draft));
  if (move === null) {
    return (
      <p className={styles.noFigure}>Choose position, station, facing, hands, feet and pattern to see the figure.</p>
    );
  }
  const { unmet, held } = figureOf(move);
  return (
    <figure className={styles.figure}>
      {held ? null : <MoveFigurePicture move={move} px={px} phase="start" ghost={false} decoration />}
      <MoveFigurePicture move={move} px={px} phase="end" ghost={false} />
      <figcaption className="quiet small">
        {figureWords(move)}. {held ? "" : "Start, then end. "}
        {unmet.length > 0
          ? `No body can follow all of these fields at once, so they are not drawn: ${listWords(unmet)}.`
          : ""}
      </figcaption>
    </figure>
  );
}

/** What is chosen and typed, as far as a figure needs it; null while a choice is missing. Numbers that are no numbers are left out. */
function figureMoveOf(draft: MoveDraft): FigureMove | null {
  const { position, station, facing, hands, feet, pattern } = draft;
  if (!position || !station || !facing || !hands || !feet || !pattern) return null;
  const [from, to] = draft.travel.map(numberOf);
  return {
    ...{ position, station, facing, hands, feet, pattern },
    ...(draft.sides ? { sides: draft.sides } : {}),
    ...(draft.resistance ? { resistance: draft.resistance } : {}),
    ...(from !== undefined && to !== undefined && from <= to
      ? { travelMm: [toMm(from, draft.units.length), toMm(to, draft.units.length)] as const }
      : {}),
    ...(draft.tempo === "held" ? { tempo: { holdSeconds: true } as const } : {}),
    ...correctionOf(draft),
    ...(draft.pose ? { handsShare: { pose: draft.pose } } : {}),
    muscles: musclesOf(draft),
    spine: [...draft.spine],
    cautions: [...draft.cautions],
  };
}

/** Once all that is typed of it can be read. */
function correctionOf(draft: MoveDraft): Pick<FigureMove, "figure"> {
  const read = moveSchema.shape.figure.safeParse(readFigureDraft(draft, undefined));
  return read.success && read.data ? { figure: read.data } : {};
}

function musclesOf({ muscles }: MoveDraft): NonNullable<FigureMove["muscles"]> {
  const weights = Object.entries(muscles).map(([group, typed]) => [group as Group, numberOf(typed ?? "")] as const);
  return Object.fromEntries(weights.filter(([, weight]) => weight !== undefined && weight >= 0 && weight <= 1));
}

function numberOf(typed: string): number | undefined {
  const value = Number(typed.trim().replace(",", "."));
  return typed.trim() === "" || !Number.isFinite(value) || value < 0 ? undefined : value;
}
