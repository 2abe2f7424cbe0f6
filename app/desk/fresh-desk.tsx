"use client";
/** Asks for the desk again while it is in sight, so that leads who share the queue see who has taken what. */
import { useRouter } from "next/navigation";
import { useEffect } from "react";

const EVERY_MS = 30_000;

export function FreshDesk() {
  const router = useRouter();
  useEffect(() => {
    const refresh = () => document.visibilityState === "visible" && router.refresh();
    const timer = setInterval(refresh, EVERY_MS);
    document.addEventListener("visibilitychange", refresh);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", refresh);
    };
  }, [router]);
  return null;
}
