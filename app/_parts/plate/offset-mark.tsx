"use client";
/** Starting away from the usual place changes the load as a spring does, so it is shown beside the springs. */
import { distanceWords } from "#lib/formats/units.ts";
import { useFormats } from "../formats.tsx";

/** "8 cm further" */
export const OffsetMark = ({ mm }: { readonly mm: number }) => (
  <span>{`${distanceWords(Math.abs(mm), useFormats())} ${mm > 0 ? "further" : "nearer"}`}</span>
);
