import { carryOnAsks, paracetamolSays, switchSays } from '@twelvemonth/clinical';
import type { ProtocolView } from '@twelvemonth/exchange';
import { useUnit } from '../frame/unit.ts';
import { Note } from '../paper/Note.tsx';
import { dayInWords, momentInWords } from '../words/dates.ts';
import { counted, sentence } from '../words/texts.ts';
import { Changes } from './Changes.tsx';
import { Flips } from './Flips.tsx';
import { Numbers } from './Numbers.tsx';
import { PartsOfVersion, partsOfVersion } from './PartsOfVersion.tsx';
import { PastMonths } from './PastMonths.tsx';
import { Replay } from './Replay.tsx';
import { SignForm } from './SignForm.tsx';

export type VersionView = ProtocolView['versions'][number];

/** One version, whole: state, signatures, numbers, regimens, questions of the day, policies, cautions. */
export function Version({
  unit,
  version,
  inForce,
}: {
  unit: string;
  version: VersionView;
  inForce: VersionView | undefined;
}) {
  const { unit: shown } = useUnit();
  const open = version.state === 'written' || version.state === 'signed by one';
  return (
    <>
      <h2>
        {version.title} ({version.version})
      </h2>
      <p>
        {sentence(version.state)}
        {version.inForceFrom !== undefined && ` from ${dayInWords(version.inForceFrom)}`}; review by{' '}
        {dayInWords(version.reviewBy)}.
      </p>
      <ul>
        {version.signatures.map((signature) => (
          <li key={signature.as}>
            signed as {signature.as} by {signature.by} on {momentInWords(signature.at, shown?.zone)}, in force from{' '}
            {dayInWords(signature.inForceFrom)}
          </li>
        ))}
      </ul>
      <p className="quiet small" style={{ overflowWrap: 'anywhere' }}>
        content {version.contentHash}
      </p>
      {version.empty.length > 0 && (
        <Note tone="caution">
          {counted(version.empty.length, 'number is', 'numbers are')} empty because the source is silent: the version
          cannot be put into force. Begin a version from this one and fill them in.
        </Note>
      )}
      {version.added.length > 0 && (
        <Note tone="caution">
          <p>
            This version was written by an older version of the product. What it lacks is filled in from the starter,
            decides like the rest, and was signed by nobody here. Begin a version from this one and decide it:
          </p>
          <ul>
            {version.added.map(({ path, says }) => (
              <li key={path}>{says}</li>
            ))}
          </ul>
        </Note>
      )}
      {inForce !== undefined && inForce.version !== version.version && (
        <Changes before={inForce.sheet} after={version.sheet} against={`the version in force, ${inForce.version}`} />
      )}
      {version.state !== 'in force' && version.state !== 'replaced' && (
        <Flips unit={unit} asked={version.empty.length === 0 ? { version: version.version } : undefined} />
      )}
      {version.state !== 'in force' && version.state !== 'replaced' && version.empty.length === 0 && (
        <PastMonths unit={unit} version={version.version} />
      )}
      {open && version.empty.length === 0 && version.added.length === 0 && <SignForm unit={unit} version={version} />}
      <PartsOfVersion />
      <Numbers version={version} />
      <h3 id="regimens">{partsOfVersion.regimens}</h3>
      <ul>
        {version.regimens.map((regimen) => (
          <li key={regimen.id}>
            {regimen.title}: every {regimen.intervalMonths} months, {counted(regimen.plannedDoses, 'dose')} before a
            review. <span className="quiet">{regimen.source}</span>
          </li>
        ))}
      </ul>
      <h3 id="switches">{partsOfVersion.switches}</h3>
      <ul>
        {version.sheet.switches.map((row) => (
          <li key={`${row.from} ${row.to.join()}`}>
            After {row.from}: {row.to.join(', ')}, {switchSays(row)}.{' '}
            <span className="quiet">
              {row.source} ({row.status})
            </span>
          </li>
        ))}
      </ul>
      <h3 id="carry-on">{partsOfVersion['carry-on']}</h3>
      <ul>
        {version.sheet.carryOn.map((criterion) => (
          <li key={criterion.id}>
            {carryOnAsks(criterion, (key) => version.sheet.numbers[key].value ?? 'empty')}.{' '}
            <span className="quiet">
              {criterion.source} ({criterion.status})
            </span>
          </li>
        ))}
      </ul>
      <h3 id="paracetamol">{partsOfVersion.paracetamol}</h3>
      {version.sheet.paracetamol.length === 0 && <p>No table: the patient pack names no amount.</p>}
      <ul>
        {version.sheet.paracetamol.map((row) => (
          <li key={row.id}>
            {paracetamolSays(row)}.{' '}
            <span className="quiet">
              {row.source} ({row.status})
            </span>
          </li>
        ))}
      </ul>
      <h3 id="questions-of-the-day">{partsOfVersion['questions-of-the-day']}</h3>
      <ol>
        {version.dayQuestions.map((question) => (
          <li key={question.asks}>
            {question.asks}{' '}
            <span className="quiet">
              “{question.holdsOn}” means {question.then}
            </span>
          </li>
        ))}
      </ol>
      <h3 id="policies">{partsOfVersion.policies}</h3>
      <ul>
        {version.policies.map((policy) => (
          <li key={policy.what}>
            {policy.what}: {policy.says}
          </li>
        ))}
      </ul>
      {version.state === 'in force' && <Replay />}
      <Note>
        {version.cautions.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
      </Note>
    </>
  );
}
