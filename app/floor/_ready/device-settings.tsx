"use client";
/** How this device is set for its room: reading distance, one touch of longer, sound, vibration. Kept on the device. */
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
        <label>
          Read from
          <select
            value={settings.distanceM}
            onChange={(event) => settings.set({ distanceM: Number(event.target.value) })}
          >
            {DISTANCES_M.map((metres) => (
              <option key={metres} value={metres}>
                {metres} m
              </option>
            ))}
          </select>
        </label>
        <label>
          One touch of longer
          <select
            value={settings.extendSeconds}
            onChange={(event) => settings.set({ extendSeconds: Number(event.target.value) })}
          >
            {EXTEND_SECONDS.map((seconds) => (
              <option key={seconds} value={seconds}>
                {seconds} s
              </option>
            ))}
          </select>
        </label>
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
      </div>
      {small && <p className="problem">{small}</p>}
      <ScreenChoice settings={settings} />
    </section>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly on: boolean;
  onChange(on: boolean): void;
  onTry(): void;
}

function Choice({ label, on, onChange, onTry }: ChoiceProps) {
  return (
    <span className={styles.choice}>
      <label>
        <input type="checkbox" checked={on} onChange={(event) => onChange(event.target.checked)} />
        {label}
      </label>
      {on && (
        <button type="button" className="button" onClick={onTry}>
          Try it
        </button>
      )}
    </span>
  );
}

/** Asked again whenever the screen is turned. */
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
