import type { StaffView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import css from './Settings.module.css';
import { NewStaff } from './NewStaff.tsx';
import { StaffRow } from './StaffRow.tsx';

export function Staff({ staff, mayChange }: { staff: readonly StaffView[]; mayChange: boolean }) {
  const [adding, setAdding] = useState(false);
  return (
    <section aria-labelledby="staff">
      <h2 id="staff">Staff</h2>
      <p className="quiet">
        Roles say what a person may write and sign. Someone who leaves is closed, never deleted: what they signed stays
        theirs.
      </p>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">name</th>
            <th scope="col">username</th>
            <th scope="col">roles</th>
            <th scope="col">
              <span className="unseen">acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {staff.map((person) => (
            <StaffRow key={person.staff} person={person} mayChange={mayChange} />
          ))}
        </tbody>
      </table>
      {mayChange && (
        <div className={css['acts']}>
          {adding ? (
            <NewStaff close={() => setAdding(false)} />
          ) : (
            <Button onClick={() => setAdding(true)}>Add someone</Button>
          )}
        </div>
      )}
    </section>
  );
}
