import type { ReadinessWire } from '@twelvemonth/exchange';
import { Fragment, useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { Verdict } from '../verdict/Verdict.tsx';
import { dayInWords, shortDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import css from './Person.module.css';
import { Working } from './Working.tsx';

type Requirement = ReadinessWire['requirements'][number];

const saying = (on: {
  verdict: string;
  cause: string;
  nearLimit: boolean;
  exception: boolean;
  until?: string | undefined;
}): string =>
  dotted(
    on.until !== undefined && on.verdict === 'ready' ? `${on.verdict} until ${shortDay(on.until)}` : on.verdict,
    (on.verdict === 'not ready' || on.verdict === 'cannot say') && on.cause !== '' && on.cause,
    on.nearLimit && 'near the limit',
    on.exception && "by a prescriber's exception",
  );

/** Every requirement: its verdict today and on the date asked about, its working in one line, and the whole of it behind why?. */
export function RequirementsTable({ readiness }: { readiness: ReadinessWire }) {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const dated = readiness.requirements.some(({ onDate }) => onDate !== undefined);
  const toggle = (id: string): void =>
    setOpen((before) => {
      const after = new Set(before);
      if (!after.delete(id)) after.add(id);
      return after;
    });
  const onHead = `${dayInWords(readiness.on)}, as things stand`;
  return (
    <table className={`stacks ${css['requirements']}`}>
      <thead>
        <tr>
          <th scope="col">requirement</th>
          <th scope="col">today</th>
          {dated && <th scope="col">{onHead}</th>}
          <th scope="col">working</th>
        </tr>
      </thead>
      <tbody>
        {readiness.requirements.map((each) => (
          <Fragment key={each.id}>
            <Row
              requirement={each}
              dated={dated}
              onHead={onHead}
              open={open.has(each.id)}
              toggle={() => toggle(each.id)}
            />
            {open.has(each.id) && (
              <tr className={css['open']} id={`working-${each.id}`}>
                <td colSpan={dated ? 4 : 3}>
                  <Working working={each.workingOnDate ?? each.working} requirement={each} />
                </td>
              </tr>
            )}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

type RowProps = {
  readonly requirement: Requirement;
  readonly dated: boolean;
  readonly onHead: string;
  readonly open: boolean;
  readonly toggle: () => void;
};

function Row({ requirement, dated, onHead, open, toggle }: RowProps) {
  const { today, onDate } = requirement;
  return (
    <tr>
      <th scope="row">{requirement.title}</th>
      <td data-head="today" className={css['verdictCell']}>
        <Verdict is={today.verdict}>{saying(today)}</Verdict>
      </td>
      {dated && (
        <td data-head={onHead} className={css['verdictCell']}>
          {onDate === undefined ? '' : <Verdict is={onDate.verdict}>{saying(onDate)}</Verdict>}
        </td>
      )}
      <td>
        {requirement.working.says}{' '}
        <Button
          tone="plain"
          aria-expanded={open}
          aria-controls={`working-${requirement.id}`}
          onClick={toggle}
          className="screenOnly"
        >
          {open ? 'close' : 'why?'}
          <span className="unseen"> {requirement.title}</span>
        </Button>
      </td>
    </tr>
  );
}
