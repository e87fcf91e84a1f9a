import type { UnitView } from '@twelvemonth/exchange';
import { usualPlanning } from '@twelvemonth/planning';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { FieldGroup } from '../fields/FieldGroup.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './Settings.module.css';
import { missingFrom, planningGroups, settingsFrom, typedFrom } from './planning-fields.ts';
import { unitBodyOf } from './unit-body.ts';

const usual = typedFrom(usualPlanning);

/** Staff, places and minutes that planning reckons with; the rest of the unit's settings stays as it is. */
export function PlanningForm({ unit, close }: { unit: UnitView; close: () => void }) {
  const attempt = useAct(close);
  const [typed, setTyped] = useState(() => typedFrom(unit.planning ?? usualPlanning));
  const [isTried, setTried] = useState(false);
  const missing = missingFrom(typed);
  const send = (): void => {
    setTried(true);
    if (missing.length > 0) return;
    void attempt.send({
      name: 'set unit',
      unit: unit.unit,
      body: { ...unitBodyOf(unit), planning: settingsFrom(typed) },
    });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['wide']}>
      <h3>What planning reckons with: {unit.name}</h3>
      {unit.planning === undefined && (
        <Note tone="caution">
          Nothing of this was written yet: what stands here are starting values (common practice, no source). Look at
          each; recorded, they are the unit’s own.
        </Note>
      )}
      <p className="quiet">
        Minutes in steps of five. How long an infusion runs and is watched after is in the protocol.
      </p>
      {planningGroups.map(({ label, fields }) => (
        <FieldGroup key={label} label={label}>
          <div className={css['grid']}>
            {fields.map((field) => (
              <NumberField
                key={field.key}
                label={field.label}
                unit={field.unit}
                help={[
                  field.help,
                  typed[field.key] === usual[field.key] ? undefined : `Starting value ${usual[field.key]}.`,
                ]
                  .filter((words) => words !== undefined)
                  .join(' ')}
                at={`planning.${field.key}`}
                trouble={isTried && missing.includes(field.key) ? 'Write a number.' : undefined}
                value={typed[field.key]}
                onChange={(value) => setTyped((before) => ({ ...before, [field.key]: value }))}
              />
            ))}
          </div>
        </FieldGroup>
      ))}
      <Outcome of={attempt} />
      <div className={css['acts']}>
        <Button type="submit" tone="act" busy={attempt.busy}>
          Record
        </Button>
        <Button onClick={close}>Leave</Button>
      </div>
    </ActForm>
  );
}
