"use client";
/** How wide words are on the sheet, in the typeface that the page really has. */
import { useEffect, useState } from "react";
import type { Measure, TideKind } from "#lib/tide/types.ts";

/** The sheet's type, as its style sheet has it: px at the usual size of type. */
const SIZES: Readonly<Record<TideKind, number>> = { laptop: 12.5, tablet: 14, phone: 16 };
const FAMILY = '"Atkinson Hyperlegible Next", "Sans meanwhile", Verdana, sans-serif';
/** Canvas and page round letters differently; a label also has its ground on both sides. */
const SPARE_PX = 2;

/** A new function once the typeface has come, so that what was measured before is measured again. */
export function useMeasure(kind: TideKind): Measure {
  const [measure, setMeasure] = useState<Measure>(() => measureWith(SIZES[kind]));
  useEffect(() => {
    let here = true;
    const take = () => here && setMeasure(() => measureWith(SIZES[kind] * rootScale()));
    take();
    void document.fonts.ready.then(take);
    return () => {
      here = false;
    };
  }, [kind]);
  return measure;
}

const rootScale = () => Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;

function measureWith(px: number): Measure {
  const pen = document.createElement("canvas").getContext("2d");
  const known = new Map<string, number>();
  return (words, bold) => {
    const key = `${bold ? "b" : ""}${words}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    if (pen) pen.font = `${bold ? 700 : 400} ${px}px ${FAMILY}`;
    const width = (pen?.measureText(words).width ?? words.length * px * 0.55) + SPARE_PX / 2;
    known.set(key, width);
    return width;
  };
}
