"use client";
/** Over the lanes: how wide a minute is, the print, and in words what the pointer or the keyboard is on. */
import type { ReactNode } from "react";
import type { ZoomState } from "./use-zoom.ts";
import styles from "./whole-class.module.css";

interface LanesToolsProps {
  readonly zoom: ZoomState;
  readonly onZoom: (by: 1 | -1 | 0) => void;
  readonly children: ReactNode;
}

export function LanesTools({ zoom, onZoom, children }: LanesToolsProps) {
  const whole = zoom.zoom === "fit";
  return (
    <div className={`light ${styles.tools}`}>
      <fieldset className="button-group">
        <legend className="visually-hidden">Width of the class</legend>
        <button type="button" className="button" disabled={whole} onClick={() => onZoom(-1)}>
          Narrower
        </button>
        <button type="button" className="button" disabled={zoom.atMost} onClick={() => onZoom(1)}>
          Wider
        </button>
        <button type="button" className="button" aria-pressed={whole} onClick={() => onZoom(0)}>
          All in view
        </button>
      </fieldset>
      <button type="button" className="button" onClick={() => print()}>
        Print
      </button>
      {children}
    </div>
  );
}
