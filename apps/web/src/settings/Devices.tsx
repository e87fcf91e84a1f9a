import type { SettingsView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { usePosting } from '../server/use-posting.ts';
import { momentInWords } from '../words/dates.ts';
import css from './Settings.module.css';

/** Shared screens: enrolled from the screen itself; who tried to sign at one and was refused. */
export function Devices({ data, mayChange }: { data: SettingsView; mayChange: boolean }) {
  const withdraw = usePosting('withdrawDevice');
  const active = data.devices.filter((device) => device.active);
  return (
    <section aria-labelledby="devices">
      <h2 id="devices">Shared screens</h2>
      <p className="quiet">
        At an enrolled screen, while the session is open, each person signs their steps by PIN or badge, whoever is
        signed in. At a screen of the unit that nobody enrolled each group of steps is signed with name and password
        then, and a PIN signs nothing.
      </p>
      {active.length === 0 && <p>None is enrolled.</p>}
      <ul>
        {active.map(({ device, name, by, at }) => (
          <li key={device}>
            {name}, enrolled by {by} on {momentInWords(at)}{' '}
            {mayChange && (
              <Button busy={withdraw.busy} onClick={() => void withdraw.send({ device })}>
                Withdraw<span className="unseen"> {name}</span>
              </Button>
            )}
          </li>
        ))}
      </ul>
      {mayChange && <EnrolThisScreen units={data.units} />}
      {data.signaturesRefused.length > 0 && (
        <>
          <h3>Signatures refused lately</h3>
          <ul>
            {data.signaturesRefused.map(({ at, device, staff, how, outcome }) => (
              <li key={`${at} ${staff} ${outcome}`}>
                {momentInWords(at)}, {device}: {staff}, by {how}: {outcome.replaceAll('-', ' ')}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function EnrolThisScreen({ units }: Pick<SettingsView, 'units'>) {
  const [name, setName] = useState('');
  const [unit, setUnit] = useState<string | undefined>(units.length === 1 ? units[0]?.unit : undefined);
  const enrol = usePosting('enrolDevice');
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (unit !== undefined) void enrol.send({ name: name.trim(), unit });
      }}
    >
      <h3>Enrol this screen</h3>
      <TextField
        label="Where it stands"
        help="For example: tablet at chair 2."
        at="name"
        value={name}
        onChange={setName}
      />
      {units.length > 1 && (
        <ChoiceField
          label="Unit"
          at="unit"
          value={unit}
          onChange={setUnit}
          options={units.map((each) => ({ value: each.unit, says: each.name }))}
        />
      )}
      {enrol.error !== undefined && <Trouble error={enrol.error} />}
      {enrol.answer !== undefined && (
        <output>
          This screen is enrolled: {enrol.answer.name}. Leave, so that nobody is signed in as administrator here.
        </output>
      )}
      <div className={css['acts']}>
        <Button
          type="submit"
          tone="act"
          size="big"
          busy={enrol.busy}
          disabled={name.trim() === '' || unit === undefined}
        >
          Enrol this screen
        </Button>
      </div>
    </form>
  );
}
