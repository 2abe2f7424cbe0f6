/** Changes to the studio standards that a plan is checked by: each rule's level and each of its limits. */

import { percent } from "#lib/formats/percent.ts";
import { storedWords } from "#lib/formats/units.ts";
import { plainNumber, secondsWords, tagWords } from "#lib/plan/format.ts";
import { isStoredUnit, limitNameWords, limitUnitOf } from "#lib/plan/limit-names.ts";
import { own } from "#lib/plan/lookup.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Plan, Standards } from "#lib/plan/schema.ts";
import { became, type DiffUnits, keysOfBoth, sayData, sayTag, type ValueSayer } from "./field-words.ts";

type Standard = Standards[string] | undefined;

export function standardsChanges(before: Plan["standards"], after: Plan["standards"], f: DiffUnits): string[] {
  if (sameData(before, after)) return [];
  const changes = keysOfBoth(before, after).flatMap((rule) =>
    ruleChanges(rule, own(before, rule), own(after, rule), f),
  );
  return changes.length > 0 ? changes : ["The studio standards are written differently."];
}

const ABSENT = "the usual";

function ruleChanges(rule: string, before: Standard, after: Standard, f: DiffUnits): string[] {
  const label = `The studio standard for ${tagWords(rule)}`;
  const limits = keysOfBoth(before?.limits, after?.limits).flatMap((name) =>
    became(`${label}, ${limitNameWords(name)}`, own(before?.limits, name), own(after?.limits, name), {
      say: sayLimit(name, f),
      absent: ABSENT,
    }),
  );
  const said = [...became(`${label}, level`, before?.level, after?.level, { say: sayTag, absent: ABSENT }), ...limits];
  return said.length > 0 || sameData(before, after) ? said : [`${label} is written differently.`];
}

const sayLimit =
  (name: string, f: DiffUnits): ValueSayer =>
  (value) => {
    if (typeof value !== "number") return sayData(value);
    const unit = limitUnitOf(name);
    if (isStoredUnit(unit)) return storedWords(value, unit, f);
    if (unit === "s") return secondsWords(value);
    return unit === "%" ? percent(value) : `${plainNumber(value)} ${unit}`.trimEnd();
  };
