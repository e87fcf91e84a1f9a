import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { ComingBackView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { LastTime } from '../deciding/LastTime.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { comingBack } from '../server/queries.ts';
import { betweenInWords, dayInWords } from '../words/dates.ts';
import { dotted, sentence, unbroken } from '../words/texts.ts';
import { CallForm } from './CallForm.tsx';
import css from './ComingBack.module.css';
import { EndForm } from './EndForm.tsx';
import { NoForm } from './NoForm.tsx';
import { SpeakTo } from './SpeakTo.tsx';
import { TalkForm } from './TalkForm.tsx';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** One person before the next dose: what is asked, how they were tried to be reached, what each answer means. */
export function ComingBackScreen() {
  const { patient } = useParams({ from: '/people/$patient/coming-back' });
  const asked = useQuery(comingBack(patient));
  return (
    <Awaited query={asked} what="the recall of this person">
      {(data) => <Sheet key={data.patient} data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: ComingBackView }) {
  const { patient, noCall, due, bloodsBetween } = data;
  return (
    <Page
      title="Coming back"
      sub={dotted(data.name, `born ${data.born}`, unbroken(data.number), data.telephone ?? 'no telephone number')}
      acts={
        <>
          <Link to="/recall">back to the list</Link>
          <Link to="/people/$patient" params={{ patient }}>
            to the person
          </Link>
          <Button onClick={() => window.print()}>Print</Button>
        </>
      }
    >
      <p>
        <InUnitWords>
          {dotted(
            sentence(data.standing.says === '' ? data.standing.standing : data.standing.says),
            data.dose,
            due !== undefined && `due ${dayInWords(due)}`,
            bloodsBetween !== undefined && `bloods ${betweenInWords(bloodsBetween)}`,
          )}
        </InUnitWords>
      </p>
      {noCall !== undefined && (
        <Note tone="stop">
          <p>
            <InUnitWords>{noCall}</InUnitWords>
          </p>
        </Note>
      )}
      <Checklist data={data} />
      <LastTime felt={data.felt} dosesGiven={data.dosesGiven} />
      <section aria-labelledby="tried">
        <h2 id="tried">Tried so far</h2>
        <p>{sentence(data.tried)}.</p>
        {!data.triedEnough && !data.reached && (
          <p className={css['quiet']}>
            Before anyone is said not to be reachable, two routes at least are tried: telephone, letter, a message, the
            family doctor.
          </p>
        )}
      </section>
      {noCall === undefined && <Answers data={data} />}
      <SpeakTo data={data} />
    </Page>
  );
}

/** State is a word and a mark, never a colour alone. */
const states = {
  answered: { mark: '✓', says: 'answered' },
  'needs somebody': { mark: '!', says: 'somebody acts' },
  'to ask': { mark: '○', says: 'to ask' },
} as const;
const writtenElsewhere: Readonly<Record<string, { readonly record: string; readonly says: string }>> = {
  bloods: { record: 'sample', says: 'write the results' },
  weight: { record: 'weight', says: 'write the weight' },
  address: { record: 'contact', says: 'write the address' },
};

function Checklist({ data: { checklist, patient, recallFrom, dosesGiven } }: { data: ComingBackView }) {
  if (recallFrom === undefined || checklist.length === 0)
    return (
      <Note>
        <p>
          {recallFrom === undefined
            ? dosesGiven === 0
              ? 'No dose was given here yet: these questions begin before the second. What stands above does not wait for them.'
              : 'No date for the next dose follows from the notes, so these questions have not begun. What stands above does not wait for them.'
            : `The recall begins on ${dayInWords(recallFrom)}: nothing is asked until then.`}
        </p>
      </Note>
    );
  return (
    <section aria-labelledby="to-ask">
      <h2 id="to-ask">What is asked since {dayInWords(recallFrom)}</h2>
      <table className={`stacks ${css['checklist']}`}>
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">where it stands</th>
            <th scope="col">what is known</th>
            <th scope="col">
              <span className="unseen">acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {checklist.map(({ item, state, says }) => {
            const form = writtenElsewhere[item];
            return (
              <tr key={item} className={css[state === 'answered' ? 'done' : 'open']}>
                <th scope="row">
                  <InUnitWords>{sentence(item)}</InUnitWords>
                </th>
                <td className="nowrap">
                  <span aria-hidden="true">{states[state].mark}</span> {states[state].says}
                </td>
                <td>{says}</td>
                <td className="screenOnly nowrap">
                  {item === 'after the last dose' && state === 'to ask' && (
                    <Link to="/people/$patient/aftercare" params={{ patient }}>
                      ask now
                    </Link>
                  )}
                  {form !== undefined && state !== 'answered' && (
                    <Link to="/people/$patient" params={{ patient }} search={{ record: form.record }}>
                      {form.says}
                    </Link>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

const ways = [
  ['talk', 'They answered'],
  ['in vain', 'Tried in vain'],
  ['no', 'They say no'],
  ['end', 'End the recall'],
] as const;
type Way = (typeof ways)[number][0];

function Answers({ data }: { data: ComingBackView }) {
  const [way, setWay] = useState<Way>();
  const done = (): void => setWay(undefined);
  return (
    <section aria-labelledby="came">
      <h2 id="came" className="screenOnly">
        What came of it
      </h2>
      <p className={`${css['ways']} screenOnly`}>
        {ways.map(([value, says]) => (
          <Button key={value} aria-pressed={way === value} onClick={() => setWay(way === value ? undefined : value)}>
            {says}
          </Button>
        ))}
      </p>
      {way === 'talk' && <TalkForm data={data} done={done} />}
      {way === 'in vain' && <CallForm patient={data.patient} close={done} />}
      {way === 'no' && <NoForm data={data} done={done} />}
      {way === 'end' && <EndForm data={data} done={done} />}
    </section>
  );
}
