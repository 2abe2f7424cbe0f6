"use client";
/** A small length: stored in millimetres, typed in millimetres or inches. What is not typed anew stays as it is stored. */
import type { ComponentProps } from "react";
import { smallNumber, smallUnit, toMm } from "#lib/formats/units.ts";
import { useFormats } from "./formats.tsx";
import { NumberField } from "./number-field.tsx";

interface LengthFieldProps extends Omit<ComponentProps<typeof NumberField>, "unit" | "clock" | "show" | "min" | "max"> {
  /** Millimetres, as `value` and what `onCommit` gets. */
  readonly min: number;
  readonly max: number;
}

export function LengthField({ value, min, max, onCommit, ...props }: LengthFieldProps) {
  const f = useFormats();
  const unit = smallUnit(f);
  return (
    <NumberField
      {...props}
      unit={unit}
      value={value === undefined ? undefined : smallNumber(value, f)}
      min={smallNumber(min, f)}
      max={smallNumber(max, f)}
      show={String}
      onCommit={(typed) => onCommit(typed === undefined ? undefined : toMm(typed, unit))}
    />
  );
}
