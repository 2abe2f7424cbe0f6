/** The house standards: every check with its level and limits, and where this house differs. To read. */
import type { Standards as HouseStandards } from "#lib/plan/schema.ts";
import { RULES } from "#lib/rules/registry.ts";
import styles from "./studio.module.css";

const LEVEL_WORDS = { must: "must fix", look: "look again", info: "for information", off: "off" } as const;

export function Standards({ own }: { readonly own: HouseStandards }) {
  return (
    <>
      <h2>House standards</h2>
      <p className="quiet">What is checked in every plan. Where a number comes from stands beside it.</p>
      <ul className={styles.rules}>
        {RULES.map((rule) => {
          const house = own[rule.id];
          const level = house?.level ?? rule.level;
          const limits = Object.entries({ ...rule.limits.parse({}), ...house?.limits });
          return (
            <li key={rule.id}>
              <details>
                <summary>
                  <span className={`${styles.level} ${level}`}>{LEVEL_WORDS[level]}</span>
                  <span>{rule.title}</span>
                  {house ? <span className="small">set by this house</span> : null}
                </summary>
                <p>{rule.why}</p>
                <p>{rule.fix}</p>
                {limits.map(([name, value]) => (
                  <p key={name} className="mono small">
                    {limitWords(name)}: {Array.isArray(value) ? value.join(", ") : String(value)}
                  </p>
                ))}
                <p className="quiet small">Source: {rule.source}</p>
              </details>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** "maxOverSeconds" as "max over seconds". */
const limitWords = (name: string): string => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
