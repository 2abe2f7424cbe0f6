/**
 * The root of every page: language, type and the look. No navigation here, so that the floor can be bare; a page of
 * the workspace wraps itself in `Shell`.
 */
import "@fontsource/atkinson-hyperlegible-next/400.css";
import "@fontsource/atkinson-hyperlegible-next/700.css";
import "@fontsource/atkinson-hyperlegible-mono/400.css";
import "@fontsource/atkinson-hyperlegible-mono/700.css";
import type { Metadata, Viewport } from "next";
import { cookies } from "next/headers";
import type { ReactNode } from "react";
import { springline } from "#server/context/springline.ts";
import { LateKeyHelp } from "./_parts/late-key-help.tsx";
import { parseScheme, SCHEME_COOKIE } from "./_shell/scheme.ts";
import "./look.css";
import "./controls.css";
import "./shared.css";

export const metadata: Metadata = {
  title: { default: "Springline", template: "%s · Springline" },
  description: "Write, check, sign and run timed strength classes together.",
};
export const viewport: Viewport = { width: "device-width", initialScale: 1, viewportFit: "cover" };

export default async function RootLayout({ children }: { children: ReactNode }) {
  const scheme = parseScheme((await cookies()).get(SCHEME_COOKIE)?.value);
  return (
    <html lang="en-GB" data-scheme={scheme ?? undefined} data-build={springline().env.build ?? undefined}>
      <body>
        {children}
        <LateKeyHelp />
      </body>
    </html>
  );
}
