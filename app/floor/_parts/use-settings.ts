/** The device's own settings: read once, kept at every change. Without storage they last as long as the page. */
import { useCallback, useEffect, useState } from "react";
import { FLOOR_SETTINGS, type FloorSettings } from "#lib/floor/settings.ts";
import { keep, kept } from "./kept.ts";

export interface Settings extends FloorSettings {
  set(change: Partial<FloorSettings>): void;
}

export function useSettings(): Settings {
  const [settings, setSettings] = useState<FloorSettings>(FLOOR_SETTINGS);
  useEffect(() => {
    let here = true;
    kept("settings")
      .then((was) => here && was && setSettings({ ...FLOOR_SETTINGS, ...was }))
      .catch(() => undefined);
    return () => {
      here = false;
    };
  }, []);
  useEffect(() => {
    document.documentElement.toggleAttribute("data-dim", settings.dim);
  }, [settings.dim]);
  const set = useCallback((change: Partial<FloorSettings>) => {
    setSettings((was) => {
      const next = { ...was, ...change };
      keep("settings", next).catch(() => undefined);
      return next;
    });
  }, []);
  return { ...settings, set };
}
