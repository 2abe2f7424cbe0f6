/** Adds the demo people like real ones: the manager by the first run, the others by invitation links. */
import { readPersonByEmail } from "#db/repos/people-repo.ts";
import { studioExists } from "#db/repos/studio-repo.ts";
import type { Person } from "#lib/policy/can.ts";
import { DEMO_PASSWORD, PEOPLE, type PersonKey, type SeedPerson, STUDIO } from "#seed/studio/people.ts";
import type { Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { firstRun } from "#server/people/first-run.ts";
import { invite } from "#server/people/invite.ts";
import { join } from "#server/people/join.ts";

export type Cast = Readonly<Record<PersonKey, Person>>;

/** A refusal stops the seeding, with the command's own message. */
export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`The demo studio could not be created: ${result.error.message}`);
  return result.value;
}

/** Adds the people who are missing. The manager creates the studio. */
export async function addPeople(app: Springline): Promise<Cast> {
  const manager = seedPerson("petra");
  if (!studioExists(app.db)) {
    const { name, email } = manager;
    const made = {
      studio: STUDIO.name,
      town: STUDIO.town,
      name,
      email,
      password: DEMO_PASSWORD,
      teaches: false,
      starter: false,
    };
    must(await firstRun(app, made));
  }
  const petra = actorOf(app, "petra");
  for (const person of PEOPLE) {
    if (readPersonByEmail(app.db, person.email)) continue;
    const { id } = must(invite(app, petra, { email: person.email, name: person.name, roles: [...person.roles] }));
    must(await join(app, id, { name: person.name, password: DEMO_PASSWORD }));
  }
  const [ines, marta, jonas, sam] = (["ines", "marta", "jonas", "sam"] as const).map((key) => actorOf(app, key));
  if (!ines || !marta || !jonas || !sam) throw new Error("Somebody is missing from the demo studio.");
  return { petra, ines, marta, jonas, sam };
}

function seedPerson(key: PersonKey): SeedPerson {
  const person = PEOPLE.find((p) => p.key === key);
  if (!person) throw new Error(`The demo has nobody called ${key}.`);
  return person;
}

function actorOf(app: Springline, key: PersonKey): Person {
  const { email } = seedPerson(key);
  const found = readPersonByEmail(app.db, email);
  if (!found) throw new Error(`${email} is not in this studio. The demo needs a data folder of its own.`);
  return { kind: "person", id: found.id, roles: found.roles };
}
