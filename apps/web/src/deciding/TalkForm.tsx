import { talkTopics } from '@twelvemonth/clinical';
import type { ActBody, DecidingView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TicksField } from '../fields/TicksField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './Deciding.module.css';
import {
  type TalkEntered,
  consents,
  decisions,
  followsFrom,
  linesOf,
  nothingSaid,
  teachBacks,
  waits,
} from './talk-lines.ts';

const topics = talkTopics.map((value) => ({ value, says: value.charAt(0).toUpperCase() + value.slice(1) }));

/** Nothing is preset: what was not said stays open, and the server names what is missing. */
export function TalkForm({ data }: { data: DecidingView }) {
  const [talk, setTalk] = useState<TalkEntered>(nothingSaid);
  const attempt = useAct(() => setTalk(nothingSaid), { [`patient/${data.patient}`]: data.seq });
  const set = (change: Partial<TalkEntered>): void => setTalk((before) => ({ ...before, ...change }));
  const send = (): void => {
    const act = { name: 'record together', patient: data.patient, lines: linesOf(talk, data.today) };
    void attempt.send(act as ActBody['act']);
  };
  const { decision } = talk;
  const saysNo = decision === 'not now' || decision === 'no treatment';
  const follows = followsFrom(talk);
  return (
    <ActForm refusals={attempt.refusals} className={css['form']} send={send}>
      <h3>Write down this talk</h3>
      <Outcome of={attempt} />
      <TextField
        label="What matters to them"
        help="In their own words."
        at="matters"
        lines="several"
        optional
        value={talk.matters}
        onChange={(matters) => set({ matters })}
      />
      <TicksField
        label="What was talked about"
        at="topics"
        value={talk.topics}
        onChange={(value) => set({ topics: value })}
        options={topics}
      />
      <ChoiceField
        label="Could they say it back?"
        help="In their own words: what it is for, what they may feel, whom to call."
        at="teachBack"
        value={talk.teachBack}
        onChange={(teachBack) => set({ teachBack })}
        options={teachBacks}
      />
      <TextField
        label="Who was there"
        help="A relative, a carer, an interpreter."
        at="present"
        optional
        value={talk.present}
        onChange={(present) => set({ present })}
      />
      <TextField
        label="Leaflet given, with its version"
        at="leaflet"
        optional
        value={talk.leaflet}
        onChange={(leaflet) => set({ leaflet })}
      />
      <ChoiceField
        label="Reminder card given?"
        at="cardGiven"
        value={talk.cardGiven}
        onChange={(cardGiven) => set({ cardGiven })}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <ChoiceField
        label="What they decided"
        help="Not now is a good outcome too."
        at="decision"
        value={decision}
        onChange={(value) => set({ decision: value })}
        options={decisions}
      />
      {decision !== undefined && (
        <TextField
          label="Why, in their words"
          at="words"
          lines="several"
          optional={!saysNo}
          value={talk.words}
          onChange={(words) => set({ words })}
        />
      )}
      {(waits(decision) || decision === 'no treatment') && (
        <DateField
          label="We may ask again on"
          at="askAgainOn"
          optional={decision === 'no treatment'}
          value={talk.askAgainOn}
          onChange={(askAgainOn) => set({ askAgainOn })}
        />
      )}
      {decision === 'this treatment' && (
        <ChoiceField
          label="Consent"
          at="how"
          value={talk.consent}
          onChange={(consent) => set({ consent })}
          options={consents}
        />
      )}
      <div className={css['follows']} aria-live="polite">
        {follows.length > 0 && (
          <>
            <h4>What follows</h4>
            <ul>
              {follows.map((says) => (
                <li key={says}>{says}</li>
              ))}
            </ul>
          </>
        )}
      </div>
      <Button type="submit" tone="act" size="big" busy={attempt.busy}>
        Record the talk
      </Button>
    </ActForm>
  );
}
