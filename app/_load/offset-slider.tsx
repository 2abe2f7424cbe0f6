"use client";
import { useCallback, useEffect, useId, useRef } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import type { Formats, LengthUnit } from "#lib/formats/formats.ts";
import { distanceWords, MM_PER_INCH } from "#lib/formats/units.ts";
import { OFFSET_LIMIT_MM } from "#lib/load/load.ts";
import { usualPlaceWords } from "#lib/load/load-words.ts";
/**
 * Where the person starts, by centimetres or half inches from the move's usual place: nearer to the anchor pulls less, further more.
 * What is tried while the slider moves is shown at once and written when it is let go, as one step of undo.
 */
import { withoutNoise } from "#lib/numbers/round.ts";
import styles from "./load.module.css";

interface SliderProps {
  /** What is being tried, or what is written, mm. */
  readonly offsetMm: number;
  /** The load in the middle of the travel from there, in words. */
  readonly says: string;
  readonly disabled: boolean;
  readonly onTry: (mm: number) => void;
  readonly onTake: (mm: number) => void;
}

/** A step of the slider, mm: a centimetre, or half an inch. */
const STEP_MM: Readonly<Record<LengthUnit, number>> = { cm: 10, in: MM_PER_INCH / 2 };

const stepOf = (f: Formats) => [STEP_MM[f.length], distanceWords(STEP_MM[f.length], f)] as const;

export function OffsetSlider({ offsetMm, says, disabled, onTry, onTake }: SliderProps) {
  const id = useId();
  const f = useFormats();
  const words = usualPlaceWords(offsetMm, f);
  const [stepMm, stepWords] = stepOf(f);
  const step = (by: number) => onTake(held(withoutNoise((Math.round(offsetMm / stepMm) + by) * stepMm)));
  return (
    <div className={styles.offset}>
      <label htmlFor={id}>Start</label>
      <output htmlFor={id} className={styles.where}>
        <b>{words}</b>
      </output>
      <div className={styles.slide}>
        <button
          type="button"
          className="square-button"
          aria-label={`${stepWords} nearer`}
          disabled={disabled}
          onClick={() => step(-1)}
        >
          −
        </button>
        <Range id={id} {...{ offsetMm, stepMm, disabled, onTry, onTake }} valueText={`${words}, ${says}`} />
        <button
          type="button"
          className="square-button"
          aria-label={`${stepWords} further`}
          disabled={disabled}
          onClick={() => step(1)}
        >
          +
        </button>
      </div>
      <p className={styles.ends} aria-hidden="true">
        <span>nearer, less pull</span>
        <span>further, more pull</span>
      </p>
    </div>
  );
}

interface RangeProps extends Omit<SliderProps, "says"> {
  readonly id: string;
  readonly stepMm: number;
  readonly valueText: string;
}

function Range({ id, offsetMm, stepMm, disabled, onTry, onTake, valueText }: RangeProps) {
  const { input, onMoved, onKeyDown, letGo } = useLetGo(onTake, stepMm);
  return (
    <input
      ref={input}
      id={id}
      type="range"
      min={-Math.floor(OFFSET_LIMIT_MM / stepMm)}
      max={Math.floor(OFFSET_LIMIT_MM / stepMm)}
      step={1}
      value={Math.round(offsetMm / stepMm)}
      disabled={disabled}
      aria-valuetext={valueText}
      onChange={(event) => {
        onMoved();
        onTry(withoutNoise(Number(event.target.value) * stepMm));
      }}
      onKeyDown={onKeyDown}
      onKeyUp={letGo}
      onBlur={letGo}
    />
  );
}

/**
 * A held-down arrow key is one step of undo, and so is one drag: the offset is written when the key or the pointer is let
 * go, and only if the slider moved. An offset between two steps is not rounded by walking past the slider.
 */
function useLetGo(onTake: (mm: number) => void, stepMm: number) {
  const input = useRef<HTMLInputElement>(null);
  const byKey = useRef(false);
  const moved = useRef(false);
  const take = useRef(onTake);
  useEffect(() => {
    take.current = onTake;
  }, [onTake]);
  const letGo = useCallback(() => {
    byKey.current = false;
    if (moved.current && input.current) take.current(withoutNoise(Number(input.current.value) * stepMm));
    moved.current = false;
  }, [stepMm]);
  useEffect(() => {
    const slider = input.current;
    // React's change event comes with every movement; the element's own comes when it is let go.
    const onChange = () => !byKey.current && letGo();
    slider?.addEventListener("change", onChange);
    return () => slider?.removeEventListener("change", onChange);
  }, [letGo]);
  const onMoved = () => {
    moved.current = true;
  };
  const onKeyDown = () => {
    byKey.current = true;
  };
  return { input, onMoved, onKeyDown, letGo };
}

const held = (mm: number): number => Math.max(-OFFSET_LIMIT_MM, Math.min(OFFSET_LIMIT_MM, mm));
