"use client";
/** A page that failed. What was typed in a plan is on this device or on the server, so trying again loses nothing. */
import Link from "next/link";
import { useEffect } from "react";
import { lookForNewer } from "./_parts/newer-version.tsx";
import { useNewerKnown } from "./_parts/use-newer-known.ts";
import { Door } from "./_shell/door.tsx";

export default function PageError({ reset }: { readonly error: Error; readonly reset: () => void }) {
  const gone = useNewerKnown();
  useEffect(lookForNewer, []);
  if (gone) return <OfOlderVersion />;
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

/** A part of it was of the build before, which the server no longer has. */
const OfOlderVersion = () => (
  <Door
    title="A newer version is here"
    lead="Springline was updated while this page was open, and a part of it is gone. What you wrote in a plan is kept. Reload the page to go on."
  >
    <p>
      <button type="button" className="button button-strong" onClick={() => location.reload()}>
        Reload the page
      </button>
    </p>
  </Door>
);
