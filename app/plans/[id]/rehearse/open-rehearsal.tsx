"use client";
/** Loads the rehearsal in the browser only: what it shows depends on the device it runs on. */
import dynamic from "next/dynamic";

export const OpenRehearsal = dynamic(() => import("./draft-rehearsal.tsx").then((module) => module.DraftRehearsal), {
  ssr: false,
  loading: () => <p role="status">Opening the plan…</p>,
});
