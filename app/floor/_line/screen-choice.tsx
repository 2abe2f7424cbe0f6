"use client";
import { VIEW_WORDS } from "#lib/line/line-words.ts";
/** What this screen is for: leads classes, or follows with a view of its own. Kept on the device. */
import { SCREEN_VIEWS, type ScreenView } from "#lib/protocol/line-wire.ts";
import type { Settings } from "../_parts/use-settings.ts";
import styles from "./line.module.css";

export function ScreenChoice({ settings, onChoose }: { settings: Settings; onChoose?: (view: ScreenView) => void }) {
  return (
    <fieldset className={styles.choice}>
      <legend>This screen</legend>
      {SCREEN_VIEWS.map((view) => (
        <label key={view}>
          <input
            type="radio"
            name="screen"
            checked={settings.screen === view}
            onChange={() => {
              settings.set({ screen: view });
              onChoose?.(view);
            }}
          />
          <span>
            <strong>{VIEW_WORDS[view].name}</strong> {VIEW_WORDS[view].shows}
          </span>
        </label>
      ))}
    </fieldset>
  );
}
