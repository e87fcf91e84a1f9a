import { barsDrawing } from '@twelvemonth/charts';
import type { StockForecast, StockView } from '@twelvemonth/exchange';
import { Picture } from '../drawing/Picture.tsx';
import { Note } from '../paper/Note.tsx';
import { dayInWords, shortDay } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import css from './Stock.module.css';

/** So many weeks stand as a table on the page; the picture's own table has them all. */
const weeksOnPage = 8;

/** How long the packs last, product by product: said plainly, as a table of the coming weeks, and drawn. */
export function Forecast({ data }: { data: StockView }) {
  const kept = data.forecasts.filter((each) => each.kept);
  const others = data.forecasts.filter((each) => !each.kept && each.needed > 0);
  return (
    <section aria-labelledby="coming-weeks">
      <h2 id="coming-weeks">The coming weeks</h2>
      <p className="quiet">
        Packs that may be used against doses booked and due at {data.unitName}. Due is counted on the day from which the
        dose is due or first possible; a late order, an expired and a stopped pack count as none.
      </p>
      {data.forecasts.length === 0 ? (
        <Note>Nobody is booked or due here, and no packs lie here.</Note>
      ) : (
        <>
          {kept.map((each) => (
            <Product key={each.product} each={each} />
          ))}
          {others.length > 0 && (
            <Note>
              <p>Booked or due here, and no packs of it were ever received or ordered here:</p>
              <ul>
                {others.map(({ product, needed, until }) => (
                  <li key={product}>
                    {product}: {counted(needed, 'pack')} until {shortDay(until)}
                  </li>
                ))}
              </ul>
            </Note>
          )}
        </>
      )}
    </section>
  );
}

const notUsable = ({ expired, stopped, late }: StockForecast): string =>
  [
    expired > 0 ? `${counted(expired, 'pack')} past their date` : '',
    stopped > 0 ? `${counted(stopped, 'pack')} stopped` : '',
    late > 0 ? `${counted(late, 'pack')} ordered and late` : '',
  ]
    .filter((one) => one !== '')
    .join(', ');

function Product({ each }: { each: StockForecast }) {
  const [first, ...rest] = each.says;
  const aside = notUsable(each);
  return (
    <div className={css['card']}>
      <h3>{each.product}</h3>
      <p>
        <strong>{counted(each.usable, 'pack')} may be used today.</strong>
        {aside !== '' && ` Not counted: ${aside}.`}
      </p>
      <div className={each.runsOutOn === undefined ? undefined : css['stopped']}>
        <p>{each.runsOutOn === undefined ? first : <strong>{first}</strong>}</p>
        {rest.map((says) => (
          <p key={says}>{says}</p>
        ))}
      </div>
      <p className="quiet">Packs left at the end of each week:</p>
      <Picture draw={(width) => drawingOf(each, width)} />
      <table>
        <caption className="unseen">
          {each.product}: the coming {weeksOnPage} weeks
        </caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {each.weeks.slice(0, weeksOnPage).map((week) => (
            <tr key={week.from}>
              <th scope="row">{shortDay(week.from)}</th>
              <td>{week.booked}</td>
              <td>{week.due}</td>
              <td>{week.incoming}</td>
              <td>{week.expire}</td>
              <td>{leftWords(week)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const heads = [
  'week of',
  'packs booked',
  'packs due',
  'packs expected',
  'packs that expire unused',
  'packs left at its end',
] as const;

const leftWords = ({ left, short }: StockForecast['weeks'][number]): string =>
  short === 0 ? String(left) : `${left}, ${counted(short, 'dose')} without a pack`;

function drawingOf({ product, weeks, says, runsOutOn }: StockForecast, width: number) {
  const out = runsOutOn === undefined ? -1 : weeks.findIndex(({ short }) => short > 0);
  const drawing = barsDrawing(
    {
      caption: `${product}: packs left at the end of each week`,
      sentence: says.join(' '),
      head: ['week of', 'packs left'],
      bars: weeks.map((week) => ({
        label: shortDay(week.from).replace(/ \d{4}$/, ''),
        value: week.left,
        says: leftWords(week),
      })),
      mark: out < 0 ? undefined : { before: out, says: `runs out, week of ${dayInWords(weeks[out]?.from ?? '')}` },
    },
    width,
  );
  return {
    ...drawing,
    table: {
      caption: drawing.table.caption,
      head: heads,
      rows: weeks.map((week) => [
        shortDay(week.from),
        String(week.booked),
        String(week.due),
        String(week.incoming),
        String(week.expire),
        leftWords(week),
      ]),
    },
  };
}
