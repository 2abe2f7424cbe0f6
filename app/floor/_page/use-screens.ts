/**
 * The screens of a class, fetched once the first screen is drawn, which needs none of them. The worker keeps them like
 * everything else that the page loads, so a device that is ready has them all.
 */
import { useEffect, useState } from "react";

export type Screens = typeof import("./class-screens.ts");

let here: Screens | null = null;

export async function fetchScreens(): Promise<Screens> {
  here ??= await import("./class-screens.ts");
  return here;
}

/** "failed": they could not be fetched; opening the page again may help. */
export function useScreens(): Screens | "coming" | "failed" {
  const [screens, set] = useState<Screens | "coming" | "failed">(here ?? "coming");
  useEffect(() => {
    fetchScreens().then(set, () => set("failed"));
  }, []);
  return screens;
}
