"use client";
/**
 * Where the person starts, in centimetres from the move's usual place: nearer to the anchor pulls less, further more.
 * What is tried while the slider moves is shown at once and written when it is let go, as one step of undo.
 */
import { useCallback, useEffect, useId, useRef } from "react";
import { OFFSET_LIMIT_MM } from "#lib/load/load.ts";
import { usualPlaceWords } from "#lib/load/load-words.ts";
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

const CM = 10;

export function OffsetSlider({ offsetMm, says, disabled, onTry, onTake }: SliderProps) {
  const id = useId();
  const words = usualPlaceWords(offsetMm);
  const step = (by: number) => onTake(held(Math.round(offsetMm / CM) * CM + by));
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
          aria-label="1 cm nearer"
          disabled={disabled}
          onClick={() => step(-CM)}
        >
          −
        </button>
        <Range id={id} {...{ offsetMm, disabled, onTry, onTake }} valueText={`${words}, ${says}`} />
        <button
          type="button"
          className="square-button"
          aria-label="1 cm further"
          disabled={disabled}
          onClick={() => step(CM)}
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
  readonly valueText: string;
}

function Range({ id, offsetMm, disabled, onTry, onTake, valueText }: RangeProps) {
  const { input, onMoved, onKeyDown, letGo } = useLetGo(onTake);
  return (
    <input
      ref={input}
      id={id}
      type="range"
      min={-OFFSET_LIMIT_MM / CM}
      max={OFFSET_LIMIT_MM / CM}
      step={1}
      value={Math.round(offsetMm / CM)}
      disabled={disabled}
      aria-valuetext={valueText}
      onChange={(event) => {
        onMoved();
        onTry(Number(event.target.value) * CM);
      }}
      onKeyDown={onKeyDown}
      onKeyUp={letGo}
      onBlur={letGo}
    />
  );
}

/**
 * A held-down arrow key is one step of undo, and so is one drag: the offset is written when the key or the pointer is let
 * go, and only if the slider moved. An offset between two centimetres is not rounded by walking past the slider.
 */
function useLetGo(onTake: (mm: number) => void) {
  const input = useRef<HTMLInputElement>(null);
  const byKey = useRef(false);
  const moved = useRef(false);
  const take = useRef(onTake);
  useEffect(() => {
    take.current = onTake;
  }, [onTake]);
  const letGo = useCallback(() => {
    byKey.current = false;
    if (moved.current && input.current) take.current(Number(input.current.value) * CM);
    moved.current = false;
  }, []);
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
