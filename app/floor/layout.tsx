/** The floor stands alone: its own dark ground, no navigation, its own manifest, so that it can be a device's only page. */
import type { Metadata, Viewport } from "next";
import type { ReactNode } from "react";
import "./floor.css";

export const metadata: Metadata = {
  title: "Floor",
  description: "The signed classes of this room, ready to run with the network gone.",
  manifest: "/floor/manifest.webmanifest",
};
export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  viewportFit: "cover",
  themeColor: "#0f1318",
  colorScheme: "dark",
};

export default function FloorLayout({ children }: { children: ReactNode }) {
  return <main className="floor">{children}</main>;
}
