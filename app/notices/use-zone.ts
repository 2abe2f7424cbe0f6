"use client";
import { useSyncExternalStore } from "react";
/** The reader's time zone: the browser's own, once the page is in a browser; before that the one that is given. */
import { deviceZone } from "#lib/calendar/zone.ts";

const never = () => () => {};
export const useZone = (before: string): string => useSyncExternalStore(never, deviceZone, () => before);
