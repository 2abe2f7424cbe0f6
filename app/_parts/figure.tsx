/** A figure of `lib/figure` on the page: body and machine in the page's colours, readable from 48 to 400 px. */
import type { ReactNode } from "react";
import { coilRows } from "#lib/figure/coil-rows.ts";
import { type Drawing, drawFigure } from "#lib/figure/drawing/draw.ts";
import type { Shape } from "#lib/figure/drawing/shapes.ts";
import { type FigureOptions, figureOf, type MoveFigure } from "#lib/figure/figure.ts";
import type { FigureMove } from "#lib/figure/stances/stage.ts";
import { figureWords } from "#lib/figure/words.ts";
import type { Equipment } from "#lib/plan/schema.ts";
import styles from "./figure.module.css";

interface MoveFigureProps extends Pick<FigureOptions, "side" | "facing"> {
  readonly move: FigureMove;
  /** Width in pixels. */
  readonly px: number;
  /** One pose; by default the one that tells the move. */
  readonly phase?: "start" | "end" | undefined;
  /** The other pose, pale, behind it. */
  readonly ghost?: boolean | undefined;
  readonly springs?: Readonly<Record<string, number>> | undefined;
  readonly equipment?: Pick<Equipment, "springs"> | undefined;
  /** Said already beside it: hidden from screen readers. */
  readonly decoration?: boolean;
}

/** Read aloud as "Kneeling on the carriage, facing back, a handle in each hand". */
export function MoveFigurePicture({
  move,
  px,
  phase,
  ghost,
  side,
  facing,
  springs,
  equipment,
  decoration,
}: MoveFigureProps) {
  const figure: MoveFigure = figureOf(move, { side, facing });
  const rows = coilRows(springs ?? usualSprings(move), equipment);
  const drawing = drawFigure(figure, { px, phase, ghost, springs: rows });
  const said = figureWords(move, { ...(side ? { side } : {}), ...(facing ? { facing } : {}) });
  const words = phase ? `${said}: the ${phase}` : said;
  return <DrawingPicture drawing={drawing} px={px} words={decoration ? undefined : words} />;
}

/** The least that the move needs; one spring where it names none and works against springs. */
function usualSprings(move: FigureMove): Readonly<Record<string, number>> {
  const least = move.springs?.min ?? {};
  if (Object.values(least).some((count) => count > 0)) return least;
  return move.resistance === "bodyweight" ? {} : { any: 1 };
}

interface DrawingProps {
  readonly drawing: Drawing;
  readonly px: number;
  /** Undefined: decoration. */
  readonly words?: string | undefined;
  readonly children?: ReactNode;
}

/** Outlines as they come, over one another. */
export function DrawingPicture({ drawing: { frame, shapes }, px, words, children }: DrawingProps) {
  const { x, y, width, height } = frame;
  return (
    <svg
      role={words === undefined ? undefined : "img"}
      aria-label={words}
      aria-hidden={words === undefined || undefined}
      className={styles.figure}
      width={px}
      height={Math.round((px * height) / width)}
      viewBox={`${Math.round(x)} ${Math.round(y)} ${Math.round(width)} ${Math.round(height)}`}
    >
      {/* As one text: forty elements a figure, for fifty figures on a sheet, held everybody up while the server drew them. */}
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: numbers and names of tones from lib/figure, nobody's words */}
      <g dangerouslySetInnerHTML={{ __html: shapes.map(outline).join("") }} />
      {children}
    </svg>
  );
}

const outline = ({ d, fill, stroke, width, dash }: Shape): string => {
  const said = {
    d,
    "data-fill": fill,
    "data-stroke": stroke,
    "stroke-width": width && Math.round(width),
    "stroke-dasharray": dash,
  };
  const attributes = Object.entries(said).flatMap(([name, value]) =>
    value === undefined ? [] : ` ${name}="${value}"`,
  );
  return `<path${attributes.join("")}/>`;
};
