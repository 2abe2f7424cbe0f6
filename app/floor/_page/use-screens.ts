/**
 * The screens of a class, fetched as soon as the first screen stands: the first needs none of them. The worker keeps them
 * like everything else that the page names, so a device that is ready has them all.
 */
import { useEffect, useState } from "react";

type Screens = typeof import("./class-screens.ts");

let here: Screens | null = null;

export async function fetchScreens(): Promise<Screens> {
  here ??= await import("./class-screens.ts");
  return here;
}

/** "failed": they could not be fetched, and opening the page again may help. */
export function useScreens(): Screens | "coming" | "failed" {
  const [screens, set] = useState<Screens | "coming" | "failed">(here ?? "coming");
  useEffect(() => {
    fetchScreens().then(set, () => set("failed"));
  }, []);
  return screens;
}
