/** The people of the invented studio, one of each role. The password is only for the demo. */
import type { Role } from "#lib/policy/can.ts";

export const STUDIO = { name: "Tholepin Strength", town: "Port Ellery" } as const;
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
  { key: "petra", name: "Petra Vale", email: "petra@tholepin.example", roles: ["manager"] },
  { key: "ines", name: "Ines Duarte", email: "ines@tholepin.example", roles: ["lead"] },
  { key: "marta", name: "Marta Lindqvist", email: "marta@tholepin.example", roles: ["coach"] },
  { key: "jonas", name: "Jonas Okafor", email: "jonas@tholepin.example", roles: ["trainee"] },
  { key: "sam", name: "Sam Whitlock", email: "sam@tholepin.example", roles: ["crew"] },
];
