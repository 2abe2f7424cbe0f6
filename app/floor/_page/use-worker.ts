/** Registers the floor's service worker and tells it what this page loaded, so that it opens again with no network. */
import { useEffect, useState } from "react";
import type { WorkerState } from "../_parts/floor-words.ts";
import { fetchScreens } from "./use-screens.ts";

export function useWorker(): WorkerState {
  const [state, setState] = useState<WorkerState>("asking");
  useEffect(() => {
    const screens = fetchScreens();
    if (!("serviceWorker" in navigator)) {
      screens.catch(() => undefined); // the page says so where they are needed
      setState("unsafe");
      return;
    }
    let here = true;
    const register = async () => {
      await screens;
      await navigator.serviceWorker.register("/floor/sw.js", { scope: "/floor" });
      const { active } = await navigator.serviceWorker.ready;
      await made(active, loadedParts());
      if (here) setState("ready");
    };
    register().catch(() => here && setState("failed"));
    return () => {
      here = false;
    };
  }, []);
  return state;
}

/** Scripts, styles and fonts that this page loaded. */
const loadedParts = (): string[] =>
  performance
    .getEntriesByType("resource")
    .map((entry) => new URL(entry.name))
    .filter((url) => url.origin === location.origin && url.pathname.startsWith("/floor/parts/"))
    .map((url) => url.pathname + url.search);

/** Resolves when the worker says that it keeps them. */
function made(worker: ServiceWorker | null, parts: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    if (!worker) return reject(new Error("no worker"));
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => (event.data === "kept" ? resolve() : reject(new Error("not kept")));
    worker.postMessage({ keep: parts }, [channel.port2]);
  });
}
