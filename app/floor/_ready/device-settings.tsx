"use client";
/** The device's settings for its room: reading distance, the seconds of "more", sound, vibration, a dim room. Kept on the device. */
import { useEffect, useState } from "react";
import { tooSmallWords } from "#lib/floor/legibility.ts";
import { DISTANCES_M, EXTEND_SECONDS } from "#lib/floor/settings.ts";
import { ScreenChoice } from "../_line/screen-choice.tsx";
import { canShake, shakeCall, soundCall, wakeSound } from "../_parts/calls.ts";
import type { Settings } from "../_parts/use-settings.ts";
import styles from "./ready-screen.module.css";

export function DeviceSettings({ settings }: { settings: Settings }) {
  const small = useTooSmall(settings.distanceM);
  return (
    <section className={styles.part}>
      <h2>This device</h2>
      <div className={styles.settings}>
        <NumberChoice
          label="Read from"
          unit="m"
          value={settings.distanceM}
          values={DISTANCES_M}
          onChoose={(distanceM) => settings.set({ distanceM })}
        />
        <NumberChoice
          label="One touch of “more” adds"
          unit="s"
          value={settings.extendSeconds}
          values={EXTEND_SECONDS}
          onChoose={(extendSeconds) => settings.set({ extendSeconds })}
        />
        <Calls settings={settings} />
        <Choice label="Dim room: changes less bright" on={settings.dim} onChange={(dim) => settings.set({ dim })} />
      </div>
      {small && <p className="problem">{small}</p>}
      <ScreenChoice settings={settings} />
    </section>
  );
}

interface NumberChoiceProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly values: readonly number[];
  onChoose(value: number): void;
}

function NumberChoice({ label, unit, value, values, onChoose }: NumberChoiceProps) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onChoose(Number(event.target.value))}>
        {values.map((one) => (
          <option key={one} value={one}>
            {one} {unit}
          </option>
        ))}
      </select>
    </label>
  );
}

function Calls({ settings }: { settings: Settings }) {
  return (
    <>
      <Choice
        label="Sound at heads-up, count-in and change"
        on={settings.sound}
        onChange={(sound) => {
          if (sound) wakeSound();
          settings.set({ sound });
        }}
        onTry={() => {
          wakeSound();
          soundCall("heads-up");
        }}
      />
      {canShake() && (
        <Choice
          label="Vibration"
          on={settings.vibration}
          onChange={(vibration) => settings.set({ vibration })}
          onTry={() => shakeCall("heads-up")}
        />
      )}
    </>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly on: boolean;
  onChange(on: boolean): void;
  onTry?(): void;
}

function Choice({ label, on, onChange, onTry }: ChoiceProps) {
  return (
    <span className={styles.choice}>
      <label>
        <input type="checkbox" checked={on} onChange={(event) => onChange(event.target.checked)} />
        {label}
      </label>
      {on && onTry && (
        <button type="button" className="button" onClick={onTry}>
          Try it
        </button>
      )}
    </span>
  );
}

/** Whether the screen is too small for its distance, in words; checked again whenever it is turned. */
function useTooSmall(distanceM: number): string | null {
  const [words, setWords] = useState<string | null>(null);
  useEffect(() => {
    const look = () => setWords(tooSmallWords(distanceM, window.innerWidth, window.innerHeight));
    look();
    window.addEventListener("resize", look);
    return () => window.removeEventListener("resize", look);
  }, [distanceM]);
  return words;
}
