"use client";
/** Light, dark, or as the device is set; remembered on this device. */
import { useState, useSyncExternalStore } from "react";
import { parseScheme, SCHEME_COOKIE, type Scheme } from "./scheme.ts";
import styles from "./scheme-choice.module.css";

type Choice = Scheme | "device";
const CHOICES: readonly [Choice, string][] = [
  ["device", "as on this device"],
  ["light", "light"],
  ["dark", "dark"],
];
const YEAR = 31_536_000;

function keep(choice: Choice): void {
  const root = document.documentElement;
  if (choice === "device") delete root.dataset.scheme;
  else root.dataset.scheme = choice;
  const value = choice === "device" ? "; max-age=0" : `${choice}; max-age=${YEAR}`;
  // biome-ignore lint/suspicious/noDocumentCookie: one small choice for this device; the Cookie Store API is not in every browser
  document.cookie = `${SCHEME_COOKIE}=${value}; path=/; samesite=lax`;
}

const never = () => () => {};
const kept = (): Choice => parseScheme(document.documentElement.dataset.scheme) ?? "device";

export function SchemeChoice() {
  const found = useSyncExternalStore<Choice>(never, kept, () => "device");
  const [chosen, setChosen] = useState<Choice | null>(null);
  return (
    <fieldset>
      <legend className="small">Colours</legend>
      <div className={styles.choices}>
        {CHOICES.map(([value, words]) => (
          <label key={value} className={styles.choice}>
            <input
              type="radio"
              name="scheme"
              value={value}
              checked={(chosen ?? found) === value}
              onChange={() => {
                keep(value);
                setChosen(value);
              }}
            />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
