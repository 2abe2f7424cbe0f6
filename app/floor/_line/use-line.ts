/** This page's place on its room's line: one connection as long as the device is paired, and what it last heard. */
import { useEffect, useState } from "react";
import { explainAddress } from "#lib/client/ask-address.ts";
import { type LineLink, openLine } from "#lib/client/line-link.ts";
import { type LinkState, UNKNOWN_LINK } from "#lib/client/link-state.ts";
import type { ScreenView } from "#lib/protocol/line-wire.ts";

export interface FloorLine {
  readonly state: LinkState;
  /** Null while the device is not paired. */
  readonly link: LineLink | null;
}

export function useLine(token: string | undefined, view: ScreenView): FloorLine {
  const [state, setState] = useState<LinkState>(UNKNOWN_LINK);
  const [link, setLink] = useState<LineLink | null>(null);
  useEffect(() => {
    if (!token) return;
    const origin = window.location.origin.replace(/^http/, "ws");
    const made = openLine({ origin, token, view: "lead", onState: setState, askAddress: explainAddress });
    setLink(made);
    window.addEventListener("online", made.retry);
    window.addEventListener("offline", made.lose);
    return () => {
      window.removeEventListener("online", made.retry);
      window.removeEventListener("offline", made.lose);
      made.close();
      setLink(null);
      setState(UNKNOWN_LINK);
    };
  }, [token]);
  useEffect(() => link?.setView(view), [link, view]);
  return { state, link };
}
