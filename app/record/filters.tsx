/** The filter of the record: a form that needs no script. */
import Link from "next/link";
import { RECORD_GROUPS } from "#lib/record/kinds.ts";
import { type Asked, addressOf } from "./asked.ts";
import styles from "./record.module.css";

interface Choice {
  readonly id: string;
  readonly name: string;
}
interface Props {
  readonly asked: Asked;
  readonly choices: Readonly<Record<"plans" | "people", readonly Choice[]>>;
}

export function RecordFilters({ asked, choices }: Props) {
  const groups = Object.entries(RECORD_GROUPS).map(([id, name]) => ({ id, name }));
  return (
    <form className={styles.filters} action="/record" method="get" key={addressOf(asked)}>
      <OneOf label="About" name="kind" all="everything" choices={groups} chosen={asked.kind} />
      <OneOf label="Plan" name="plan" all="any plan" choices={choices.plans} chosen={asked.plan} />
      <OneOf label="Person" name="person" all="anybody" choices={choices.people} chosen={asked.person} />
      <label className="field">
        <span className="label">From</span>
        <input type="date" name="from" defaultValue={asked.from} />
      </label>
      <label className="field">
        <span className="label">Until</span>
        <input type="date" name="until" defaultValue={asked.until} />
      </label>
      <div className={styles.filterActs}>
        <button type="submit" className="button">
          Show
        </button>
        {addressOf({ ...asked, before: undefined }) !== "/record" && (
          <Link className="link-line" href="/record">
            Show everything
          </Link>
        )}
      </div>
    </form>
  );
}

interface OneOfProps {
  readonly label: string;
  readonly name: string;
  /** Said where nothing is chosen. */
  readonly all: string;
  readonly choices: readonly Choice[];
  readonly chosen: string | undefined;
}

function OneOf({ label, name, all, choices, chosen }: OneOfProps) {
  return (
    <label className="field">
      <span className="label">{label}</span>
      <select name={name} defaultValue={chosen ?? ""}>
        <option value="">{all}</option>
        {choices.map((choice) => (
          <option key={choice.id} value={choice.id}>
            {choice.name}
          </option>
        ))}
      </select>
    </label>
  );
}
