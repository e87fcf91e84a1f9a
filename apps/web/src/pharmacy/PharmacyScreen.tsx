import { useQuery } from '@tanstack/react-query';
import type { PharmacyView, PrescriptionToVerify as Row } from '@twelvemonth/exchange';
import { useState } from 'react';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { pharmacy } from '../server/queries.ts';
import { counted } from '../words/texts.ts';
import { GroupDirections } from './GroupDirections.tsx';
import css from './Pharmacy.module.css';
import { PrescriptionCard } from './PrescriptionCard.tsx';

/** Prescriptions for the pharmacist to verify, question or refuse; the prescriber answers in the same place. */
export function PharmacyScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...pharmacy(unit?.unit), enabled: unit !== undefined });
  return (
    <Page
      title="Pharmacy"
      sub="Prescriptions whose dose is still to come, the soonest place first. A corrected prescription comes back unverified."
      acts={<Button onClick={() => window.print()}>Print</Button>}
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="the prescriptions">
          {(data) => <Lists data={data} />}
        </Awaited>
      )}
    </Page>
  );
}

const ruleWords = ({ needed, unitName }: PharmacyView): string => {
  if (needed === undefined) return `No protocol is in force at ${unitName}.`;
  return needed
    ? `The protocol of ${unitName} wants a pharmacist's word before anything is prepared.`
    : `The protocol of ${unitName} does not ask for a pharmacist's word. A question or a refusal holds the preparation all the same.`;
};

function Lists({ data }: { data: PharmacyView }) {
  const forPrescriber = data.prescriptions.filter(({ state }) => state.is === 'asked' || state.is === 'refused');
  const forPharmacist = data.prescriptions.filter((one) => !forPrescriber.includes(one));
  return (
    <>
      <Note>{ruleWords(data)} Local policy and the licensed prescriber decide.</Note>
      <nav aria-label="On this page" className="screenOnly">
        {forPrescriber.length > 0 && (
          <a className={css['below']} href="#for-prescriber">
            For the prescriber: {forPrescriber.length}
          </a>
        )}
        <a className={css['below']} href="#group-directions">
          Group directions: {data.directions.filter(({ notInForce }) => notInForce === undefined).length} in force
        </a>
      </nav>
      <Group
        id="for-pharmacist"
        title="For the pharmacist"
        none="No prescription waits for a pharmacist."
        rows={forPharmacist}
      />
      {forPrescriber.length > 0 && (
        <Group id="for-prescriber" title="For the prescriber" none="" rows={forPrescriber} />
      )}
      {data.verified.length > 0 && (
        <details className={css['verified']}>
          <summary>{counted(data.verified.length, 'prescription')} verified, with the place still to come</summary>
          <ul className={css['cards']}>
            {data.verified.map((row) => (
              <PrescriptionCard key={row.patient} row={row} />
            ))}
          </ul>
        </details>
      )}
      <GroupDirections data={data} />
    </>
  );
}

/** As many as can be read in one go; the others are one press away. */
const shownAtOnce = 20;

function Group({ id, title, none, rows }: { id: string; title: string; none: string; rows: readonly Row[] }) {
  const [all, setAll] = useState(false);
  const shown = all ? rows : rows.slice(0, shownAtOnce);
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        {title}
        {rows.length > 0 && <span className={css['count']}>{rows.length}</span>}
      </h2>
      {rows.length === 0 ? (
        <Empty says={none} />
      ) : (
        <ul className={css['cards']}>
          {shown.map((row) => (
            <PrescriptionCard key={row.patient} row={row} />
          ))}
        </ul>
      )}
      {shown.length < rows.length && (
        <Button size="big" onClick={() => setAll(true)}>
          Show the other {rows.length - shown.length}
        </Button>
      )}
    </section>
  );
}
