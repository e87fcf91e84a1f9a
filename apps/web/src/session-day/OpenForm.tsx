import type { SessionDayView } from '@twelvemonth/exchange';
import { type ReactNode, useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Why } from '../paper/Why.tsx';
import { useAct } from '../server/use-act.ts';
import { ExpiryField } from '../visit/steps/ExpiryField.tsx';
import { PackCountFields } from './PackCountFields.tsx';
import { type Opening, bodyOf, chairsideOf, inWords, lackingIn, openingFrom, withHere } from './opening-state.ts';

/**
 * In the morning nothing is preset: who is here and what is there is looked at. Written anew during the day, what was said stands
 * until it is changed.
 */
export function OpenForm({ data, done }: { data: SessionDayView; done: () => void }) {
  const attempt = useAct(done, { [`session/${data.session}`]: data.seq });
  const [opening, setOpening] = useState<Opening>(() => openingFrom(data));
  const isAnew = data.opened !== undefined;
  const change = (part: Partial<Opening>): void => setOpening((before) => ({ ...before, ...part }));
  const present = data.staff.filter(({ staff }) => opening.here.includes(staff));
  const lacking = lackingIn(opening, data);
  const act = data.state === 'not opened' ? 'Open the session' : isOpen(data) ? 'Write it anew' : 'Open it again';
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        const body = lacking === undefined ? bodyOf(opening, data) : undefined;
        if (body !== undefined)
          void attempt.send({ name: 'open session', session: data.session, unit: data.unit, body });
      }}
    >
      <h2>{isAnew ? 'What has changed' : 'Open the session'}</h2>
      <TicksField
        label="Who is here"
        help="Two registered people in date for medicines into a vein, and somebody in date for life support."
        at="present"
        size="big"
        value={opening.here}
        onChange={(here) => setOpening((before) => withHere(before, here, isAnew))}
        options={chairsideOf(data).map((member) => ({ value: member.staff, says: inWords(member) }))}
      />
      <TicksField
        label="Who may make the second check"
        help={whoMayCheck(present)}
        at="secondCheckers"
        size="big"
        value={opening.checkers}
        onChange={(checkers) => change({ checkers })}
        options={present.filter(({ mayCheck }) => mayCheck).map(({ staff, name }) => ({ value: staff, says: name }))}
      />
      <Kit data={data} opening={opening} change={change} />
      <NumberField
        label="Chairs in use"
        unit={`of ${data.chairs}`}
        at="chairs"
        value={opening.chairs}
        onChange={(chairs) => change({ chairs })}
      />
      <PacksAnew isAnew={isAnew}>
        <PackCountFields data={data} counts={opening.counts} setCounts={(counts) => change({ counts })} />
      </PacksAnew>
      <Outcome of={attempt} />
      <p style={{ marginTop: '1rem' }}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={lacking !== undefined}>
          {lacking ?? act}
        </Button>
      </p>
    </ActForm>
  );
}

const isOpen = ({ state }: SessionDayView): boolean => state === 'open';

/** Why there is nobody to tick, or whom to tick. */
const whoMayCheck = (present: SessionDayView['staff']): string =>
  present.length === 0
    ? 'Tick first who is here.'
    : present.some(({ mayCheck }) => mayCheck)
      ? 'Two at least: the one who prepares cannot check it.'
      : 'Nobody who is ticked above is registered and in date for medicines into a vein.';

/** Counted each morning; during the day only where somebody counts again. */
const PacksAnew = ({ isAnew, children }: { isAnew: boolean; children: ReactNode }) =>
  isAnew ? (
    <Why word="packs were counted again" about="leave it shut if they were not">
      {children}
    </Why>
  ) : (
    children
  );

type KitProps = {
  readonly data: SessionDayView;
  readonly opening: Opening;
  readonly change: (part: Partial<Opening>) => void;
};

/** Looked at in the morning; during the day only where it was used or looked at again. */
function Kit({ data, opening, change }: KitProps) {
  const [looks, setLooks] = useState(data.opened === undefined);
  if (!looks)
    return (
      <p>
        Emergency kit: {data.opened?.kit}.{' '}
        <Button
          tone="plain"
          onClick={() => {
            change({ checkedBy: undefined, complete: undefined, expiresOn: undefined });
            setLooks(true);
          }}
        >
          it was used, or looked at again
        </Button>
      </p>
    );
  const present = data.staff.filter(({ staff }) => opening.here.includes(staff));
  return (
    <>
      <ChoiceField
        label="Who looked at the emergency kit"
        help={present.length === 0 ? 'Tick first who is here.' : undefined}
        at="checkedBy"
        size="big"
        value={opening.checkedBy}
        onChange={(checkedBy) => change({ checkedBy })}
        options={present.map(({ staff, name }) => ({ value: staff, says: name }))}
      />
      <ChoiceField
        label="Is everything in it?"
        at="complete"
        size="big"
        value={opening.complete}
        onChange={(complete) => change({ complete })}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <ExpiryField
        label="What in it runs out first"
        at="kit.expiresOn"
        value={opening.expiresOn}
        onChange={(expiresOn) => change({ expiresOn })}
      />
    </>
  );
}
