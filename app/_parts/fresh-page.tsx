"use client";
/** Asks for the page again while it is in sight, so that it says what others have done, or what has happened, since. */
import { useRouter } from "next/navigation";
import { useEffect } from "react";

export function FreshPage({ everyMs }: { readonly everyMs: number }) {
  const router = useRouter();
  useEffect(() => {
    const refresh = () => document.visibilityState === "visible" && router.refresh();
    const timer = setInterval(refresh, everyMs);
    document.addEventListener("visibilitychange", refresh);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", refresh);
    };
  }, [router, everyMs]);
  return null;
}
