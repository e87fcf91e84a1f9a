import { useQuery } from '@tanstack/react-query';
import type { ProtocolView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useMay } from '../frame/may.ts';
import { useServiceToday, useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { protocols } from '../server/queries.ts';
import { dayInWords, shortDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import css from './Protocol.module.css';
import { Exceptions } from './Exceptions.tsx';
import { Version } from './Version.tsx';
import { Editor } from './editor/Editor.tsx';

export function ProtocolScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...protocols(unit?.unit), enabled: unit !== undefined });
  return (
    <Page
      title="Protocol"
      sub="The unit's signed, dated rule sheet: every number that decides, with its unit and its source. A clinician and a pharmacist put a version into force."
      acts={<Button onClick={() => window.print()}>Print</Button>}
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="the protocol">
          {(data) => <Versions data={data} />}
        </Awaited>
      )}
    </Page>
  );
}

function Versions({ data }: { data: ProtocolView }) {
  const today = useServiceToday();
  const may = useMay();
  const inForce = data.versions.find(({ state }) => state === 'in force');
  const [chosen, setChosen] = useState<string>();
  const [drafting, setDrafting] = useState(false);
  const shown = data.versions.find(({ version }) => version === (chosen ?? inForce?.version)) ?? data.versions[0];
  const late = inForce !== undefined && inForce.reviewBy < today;
  return (
    <>
      {inForce === undefined && (
        <Empty says="No version is in force at this unit: nothing can be said about any dose.">
          <p>
            The first step: begin a version from a starter, fill in what its source leaves open, and have it signed by a
            clinician and a pharmacist.
          </p>
        </Empty>
      )}
      {late && <Note tone="caution">The version in force was to be reviewed by {dayInWords(inForce.reviewBy)}.</Note>}
      {data.unreadable.map(({ version, adopted, says }) => (
        <Note key={version} tone="caution">
          The text of version {version} cannot be read. {says}
          {adopted &&
            ' It was adopted: nothing before it counts any more, and nothing can be said until a version that can be read is in force.'}
        </Note>
      ))}
      <div className={`${css['tabs']} screenOnly`} style={{ marginTop: '1rem' }}>
        {data.versions.map((version) => (
          <button
            key={version.version}
            type="button"
            className={css['tab']}
            aria-pressed={!drafting && version.version === shown?.version}
            onClick={() => {
              setChosen(version.version);
              setDrafting(false);
            }}
          >
            <strong>{version.version}</strong>
            <span>
              {dotted(version.state, version.inForceFrom !== undefined && `from ${shortDay(version.inForceFrom)}`)}
            </span>
          </button>
        ))}
        {may('protocolDraft') && (
          <Button aria-pressed={drafting} onClick={() => setDrafting(!drafting)}>
            Begin a version
          </Button>
        )}
      </div>
      {drafting ? (
        <Editor
          data={data}
          done={(version) => {
            setChosen(version);
            setDrafting(false);
          }}
        />
      ) : (
        shown !== undefined && <Version key={shown.version} unit={data.unit} version={shown} inForce={inForce} />
      )}
      {!drafting && data.exceptions !== undefined && <Exceptions {...data.exceptions} />}
    </>
  );
}
