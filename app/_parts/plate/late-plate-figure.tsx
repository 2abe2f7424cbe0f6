"use client";
/** A figure in a plate on a screen: worked out when it comes into view, and after the page can be used. */
import { lateFigure } from "../late-figure.tsx";
import { LatePart } from "../late-part.tsx";
import type { PlateFacts } from "./plate-facts.ts";

/** Width of a figure in a small plate. */
export const SMALL_PX = 52;

interface LatePlateFigureProps extends Pick<PlateFacts, "move" | "facing" | "side"> {
  /** Width in pixels. */
  readonly px: number;
  /** Drawn at once, for a page that is being printed. */
  readonly eager?: boolean;
}

export function LatePlateFigure({ move, facing, side, px, eager = false }: LatePlateFigureProps) {
  if (!move) return null;
  const props = { move, px, facing, eager, side: side === "alternating" ? undefined : side, decoration: true };
  return <LatePart part={lateFigure} props={props} meanwhile={null} />;
}
