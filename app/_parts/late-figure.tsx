"use client";
/** A small figure on a page that starts without the code that works figures out: its place is kept until that has come. */
import { loadLater } from "#lib/client/late.ts";
import type { Move } from "#lib/plan/schema.ts";
import { LatePart } from "./late-part.tsx";
import styles from "./seen-figure.module.css";

export const lateFigure = loadLater(() => import("./seen-figure.tsx").then((module) => module.SeenFigure));

const WIDTH = 48;

/** Decoration beside the move's name. */
export function SmallFigure({ move }: { readonly move: Move }) {
  const place = <span className={styles.place} style={{ width: WIDTH, height: WIDTH }} />;
  return <LatePart part={lateFigure} props={{ move, px: WIDTH, decoration: true }} meanwhile={place} />;
}
