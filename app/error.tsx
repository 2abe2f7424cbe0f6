"use client";
/** A page that failed. What was typed in a plan is on this device or on the server, so trying again loses nothing. */
import Link from "next/link";
import { Door } from "./_shell/door.tsx";

export default function PageError({ reset }: { readonly error: Error; readonly reset: () => void }) {
  return (
    <Door
      title="This page stopped working"
      lead="Something went wrong while showing it. What you wrote in a plan is kept. Try again; if it happens again, tell your manager what you did last."
    >
      <p style={{ display: "flex", gap: "var(--space-2)", flexWrap: "wrap" }}>
        <button type="button" className="button button-strong" onClick={reset}>
          Try again
        </button>
        <Link className="button" href="/desk">
          Go to the desk
        </Link>
      </p>
    </Door>
  );
}
