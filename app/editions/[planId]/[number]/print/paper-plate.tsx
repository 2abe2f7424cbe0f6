/** A plate on paper, with its figure drawn at once. */
import type { ReactNode } from "react";
import { MoveFigurePicture } from "#app/_parts/figure.tsx";
import { Plate } from "#app/_parts/plate/plate.tsx";
import type { PlateFacts } from "#app/_parts/plate/plate-facts.ts";
import { othersFirst, pxOf } from "./drawn-changes.ts";

const FIGURE_MM = 19;

interface PaperPlateProps {
  readonly facts: PlateFacts;
  readonly number: number;
  /** When its work begins, seconds of the class. */
  readonly at: number;
  readonly marks?: ReactNode;
  readonly children?: ReactNode;
}

export async function PaperPlate({ facts, number, at, marks, children }: PaperPlateProps) {
  await othersFirst();
  const { move, facing, springs, equipment } = facts;
  const side = facts.side === "alternating" ? undefined : facts.side;
  const figure = move && (
    <MoveFigurePicture {...{ move, facing, side, springs, equipment }} px={pxOf(FIGURE_MM)} decoration />
  );
  return (
    <Plate {...{ facts, number, at, marks, figure }} density="print">
      {children}
    </Plate>
  );
}
