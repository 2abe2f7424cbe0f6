"use client";
/** A page that broke. What was typed in a plan is on this device or on the server; a new try loses nothing. */
import Link from "next/link";
import { Door } from "./_shell/door.tsx";

export default function PageError({ reset }: { readonly error: Error; readonly reset: () => void }) {
  return (
    <Door
      title="This page broke"
      lead="Something went wrong in showing it. What you wrote in a plan is kept. Try again; if it stays, tell your manager what you did last."
    >
      <p style={{ display: "flex", gap: "var(--space-2)", flexWrap: "wrap" }}>
        <button type="button" className="button button-strong" onClick={reset}>
          Try again
        </button>
        <Link className="button" href="/desk">
          To the desk
        </Link>
      </p>
    </Door>
  );
}
