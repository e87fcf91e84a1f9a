import { type PlainDate, type Role, registrants } from '@twelvemonth/clinical';
import type { SessionDayView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { shortDay } from '../words/dates.ts';
import { ExpiryField } from '../visit/steps/ExpiryField.tsx';
import { PackCountFields } from './PackCountFields.tsx';
import { type PackCounts, countsToSend } from './pack-counts.ts';

type Member = SessionDayView['staff'][number];

/** The role somebody is here in: the one in which they may do most at the chair. */
const roleOf = ({ roles }: Member): Role =>
  registrants.find((role) => roles.includes(role)) ?? ((roles[0] ?? 'clerk') as Role);

const inWords = (member: Member): string => {
  const shown = member.competences.map(
    ({ what, until, inDate }) => `${what} ${inDate ? 'until' : 'ran out'} ${shortDay(until)}`,
  );
  return `${member.name}, ${roleOf(member)}${shown.length === 0 ? ': nothing shown' : `: ${shown.join(', ')}`}`;
};

/** Nothing is preset: who is here and what is there is looked at each time. */
export function OpenForm({ data, done }: { data: SessionDayView; done: () => void }) {
  const attempt = useAct(done, { [`session/${data.session}`]: data.seq });
  const [here, setHere] = useState<readonly string[]>([]);
  const [checkers, setCheckers] = useState<readonly string[]>([]);
  const [checkedBy, setCheckedBy] = useState<string>();
  const [complete, setComplete] = useState<'yes' | 'no'>();
  const [expiresOn, setExpiresOn] = useState<string>();
  const [chairs, setChairs] = useState<number>();
  const [counts, setCounts] = useState<PackCounts>({});
  const present = data.staff.filter(({ staff }) => here.includes(staff));
  const chairside = data.staff.filter(({ roles }) =>
    roles.some((role) => role !== 'administrator' && role !== 'auditor'),
  );
  const missing =
    present.length === 0
      ? 'Who is here?'
      : checkers.length === 0
        ? 'Who may check?'
        : checkedBy === undefined || complete === undefined || expiresOn === undefined
          ? 'Look at the emergency kit'
          : chairs === undefined
            ? 'How many chairs?'
            : undefined;
  const send = (): void => {
    if (checkedBy === undefined || complete === undefined || expiresOn === undefined || chairs === undefined) return;
    void attempt.send({
      name: 'open session',
      session: data.session,
      unit: data.unit,
      body: {
        present: present.map((member) => ({ staff: member.staff, role: roleOf(member) })),
        secondCheckers: checkers.filter((staff) => here.includes(staff)),
        kit: { checkedBy, complete: complete === 'yes', expiresOn: expiresOn as PlainDate },
        chairs,
        counts: countsToSend(counts, data),
      },
    });
  };
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (missing === undefined) send();
      }}
    >
      <h2>Open the session</h2>
      <TicksField
        label="Who is here"
        help="Two registered people in date for medicines into a vein, and somebody in date for life support, or it does not open."
        at="present"
        size="big"
        value={here}
        onChange={setHere}
        options={chairside.map((member) => ({ value: member.staff, says: inWords(member) }))}
      />
      <TicksField
        label="Who may make the second check"
        at="secondCheckers"
        size="big"
        value={checkers}
        onChange={setCheckers}
        options={present.filter(({ mayCheck }) => mayCheck).map(({ staff, name }) => ({ value: staff, says: name }))}
      />
      <ChoiceField
        label="Who looked at the emergency kit"
        at="checkedBy"
        size="big"
        value={checkedBy}
        onChange={setCheckedBy}
        options={present.map(({ staff, name }) => ({ value: staff, says: name }))}
      />
      <ChoiceField
        label="Is everything in it?"
        at="complete"
        size="big"
        value={complete}
        onChange={setComplete}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <ExpiryField label="What in it runs out first" at="kit.expiresOn" value={expiresOn} onChange={setExpiresOn} />
      <NumberField label="Chairs in use" unit={`of ${data.chairs}`} at="chairs" value={chairs} onChange={setChairs} />
      <PackCountFields data={data} counts={counts} setCounts={setCounts} />
      <Outcome of={attempt} />
      <p style={{ marginTop: '1rem' }}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={missing !== undefined}>
          {missing ?? 'Open the session'}
        </Button>
      </p>
    </ActForm>
  );
}
