/** Every screen is drawn at these sizes and in these themes. */
export const SIZES = {
  phone: { width: 390, height: 844 },
  tablet: { width: 1024, height: 768 },
  laptop: { width: 1440, height: 900 },
} as const;
export const THEMES = ["light", "dark"] as const;
