"use client";
/** The reader's time zone: the browser's own, once the page is in a browser; before that the one that is given. */
import { useSyncExternalStore } from "react";

const never = () => () => {};
const own = () => Intl.DateTimeFormat().resolvedOptions().timeZone || "UTC";

export const useZone = (before: string): string => useSyncExternalStore(never, own, () => before);
