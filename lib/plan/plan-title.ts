/** What a plan is called on screens: its title, or that it has none yet. Pure. */
export const planTitle = (title: string): string => title.trim() || "Untitled plan";
