import { type Day, type Drawn, clockAt, loadsOf } from '@twelvemonth/planning';
import { TableOf } from '../../drawing/TableOf.tsx';
import { Why } from '../../paper/Why.tsx';
import { staffWords } from './StaffRows.tsx';
import { visitWords } from './visit-words.ts';

/** The board as tables: the same for who does not see it, and for paper. */
export function BoardTable({ day, drawn, broken }: { day: Day; drawn: Drawn; broken: ReadonlySet<number> }) {
  const people = [...day.visits.keys()]
    .flatMap((visit) => {
      const words = visitWords(day, drawn, visit);
      return words === undefined ? [] : [{ ...words, isBroken: broken.has(visit) }];
    })
    .toSorted((a, b) => a.comes.localeCompare(b.comes));
  const over = loadsOf(day, drawn.plan).flatMap(({ of, needed, there }) =>
    needed.flatMap((count, tick) =>
      count > (there[tick] ?? 0) ? [[clockAt(day, tick), staffWords[of], String(count), String(there[tick] ?? 0)]] : [],
    ),
  );
  return (
    <Why about="the chair board" word="as a table">
      <TableOf
        table={{
          caption: 'Visits in order of coming',
          head: ['comes', 'who', 'chair', 'leaves', 'locked', 'plan checker'],
          rows: people.map(({ comes, name, chair, leaves, lock, isBroken }) => [
            comes,
            name,
            chair,
            leaves,
            lock ?? 'no',
            isBroken ? 'breaks a rule' : 'keeps the rules',
          ]),
        }}
      />
      {over.length > 0 && (
        <TableOf
          table={{ caption: 'More needed than there are', head: ['at', 'what', 'needed', 'there'], rows: over }}
        />
      )}
    </Why>
  );
}
