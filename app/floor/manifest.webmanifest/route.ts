const MANIFEST = {
  name: "Springline floor",
  short_name: "Floor",
  description: "The signed editions of this room, ready to run without a network.",
  id: "/floor",
  start_url: "/floor",
  scope: "/floor",
  display: "fullscreen",
  background_color: "#0f1318",
  theme_color: "#0f1318",
  icons: [{ src: "/icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" }],
};

export const GET = (): Response =>
  Response.json(MANIFEST, { headers: { "content-type": "application/manifest+json" } });
