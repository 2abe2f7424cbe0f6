/** The people of the invented studio, one of each role. The password is only for the demo. */
import type { Role } from "#lib/policy/can.ts";

export const STUDIO = { name: "Tidewater Strength", town: "Port Ellery" } as const;
export const DEMO_PASSWORD = "low-tide-demo-12";

export type PersonKey = "ines" | "marta" | "jonas" | "petra" | "sam";
export interface SeedPerson {
  readonly key: PersonKey;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly Role[];
}

/** The manager comes first, since they create the studio and invite the others. */
export const PEOPLE: readonly SeedPerson[] = [
  { key: "petra", name: "Petra Vale", email: "petra@tidewater.example", roles: ["manager"] },
  { key: "ines", name: "Ines Duarte", email: "ines@tidewater.example", roles: ["lead"] },
  { key: "marta", name: "Marta Lindqvist", email: "marta@tidewater.example", roles: ["coach"] },
  { key: "jonas", name: "Jonas Okafor", email: "jonas@tidewater.example", roles: ["trainee"] },
  { key: "sam", name: "Sam Whitlock", email: "sam@tidewater.example", roles: ["crew"] },
];
