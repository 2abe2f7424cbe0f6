/** `npm run -s import -- FOLDER or FILE.zip [--with-faults]`: puts an exported studio into an empty one, with the server stopped. */
import { openDatabase } from "#db/connection.ts";
import { listMembers, type StudioPerson } from "#db/repos/people-repo.ts";
import { type DataLocation, readDataLocation } from "#server/base/env.ts";
import { BY_SERVER, storeReset } from "#server/people/reset-password.ts";
import { importStudio } from "#server/studio-files/import-studio.ts";
import { shownFaults } from "#server/studio-files/manifest.ts";
import { recordedManagers } from "#server/studio-files/recorded-managers.ts";
import { CommandRefused, runCommand } from "./run.ts";

const WITH_FAULTS = "--with-faults";

await runCommand(async (words) => {
  const [from, ...rest] = words.filter((word) => word !== WITH_FAULTS);
  if (from === undefined || from.startsWith("-") || rest.length > 0)
    throw new CommandRefused("Name one export, a folder or a zip file: import FOLDER [--with-faults]");
  const place = readDataLocation();
  const manifest = await importStudio(place, from, { withFaults: words.includes(WITH_FAULTS) });
  const { studio, madeAt } = manifest;
  process.stdout.write(`“${studio}” is as it was at ${madeAt}. Start the server. Nobody has a password yet.\n`);
  for (const fault of shownFaults(manifest)) process.stdout.write(`Taken though it does not hold: ${fault}\n`);
  for (const line of managersLines(place)) process.stdout.write(`${line}\n`);
  process.stdout.write(
    "Each link works once, for a day; later: npm run -s reset-password -- EMAIL. A manager makes links for everybody else under People, pairs the cue devices again, renews calendar addresses, and sets e-mail and backups.\n",
  );
  if (!place.originGiven)
    process.stdout.write("For links with the server's address, set SPRINGLINE_URL as the server has it.\n");
});

/** A line for each manager: by the record too, a link; else a warning and none. */
function managersLines({ databaseFile, origin }: DataLocation): string[] {
  const db = openDatabase(databaseFile);
  try {
    const managers = listMembers(db).filter(({ roles }) => roles.includes("manager"));
    const recorded = recordedManagers(db);
    const linkFor = (person: StudioPerson) => storeReset(db, { person, by: BY_SERVER, at: Date.now(), origin });
    const line = (person: StudioPerson) =>
      recorded.has(person.id)
        ? `${person.name}, a manager by the record: ${linkFor(person).link}`
        : `Warning: ${person.name} (${person.email}) is a manager in this export, but not by its record, so there is no link. Ask the studio; if it is right: npm run -s reset-password -- ${person.email}`;
    return db.raw.transaction(() => managers.map(line)).immediate();
  } finally {
    db.close();
  }
}
