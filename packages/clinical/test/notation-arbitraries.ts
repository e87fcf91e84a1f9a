/** Arbitrary bodies of every entry kind, made from the kind's own schema, and drafts that refer to one another. */
import fc from 'fast-check';
import {
  type KindName,
  type NotedDraft,
  type PlainDate,
  type Subject,
  addDays,
  checkDigit,
  day,
  kindNamed,
  kindNames,
  plainDate,
  roles,
} from '@twelvemonth/clinical';

type Described = {
  def: {
    type: string;
    innerType?: Described;
    shape?: Record<string, Described>;
    options?: Described[];
    entries?: Record<string, string>;
    values?: unknown[];
    element?: Described;
    valueType?: Described;
    checks?: {
      _zod: { def: { check: string; format?: string; minimum?: number; value?: number; pattern?: RegExp } };
    }[];
    pattern?: RegExp;
    format?: string;
  };
};

const dates: fc.Arbitrary<PlainDate> = fc
  .integer({ min: 0, max: 60_000 })
  .map((days) => plainDate(addDays(day('1899-12-30'), days)));

/** Texts people type, and the ones that break parsers: quotes, backslashes, separators, arrows, line ends. */
const texts = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 40, unit: 'binary' }),
    fc.string({ minLength: 1, maxLength: 40 }),
    fc.stringMatching(/^[A-Za-z0-9 ,;#"\\{}[\]<>=\n\r\t-]{1,40}$/),
    fc.constantFrom(
      'signed',
      'by nurse',
      'corrects #a',
      'yes',
      '12',
      '2026-03-03',
      '3 Mar 2026',
      '-> ready',
      '"',
      '\\',
      ';',
      '__proto__',
      'none known',
    ),
  )
  .map((text) => text.trim())
  .filter((text) => text.length > 0);

const decimals = fc
  .tuple(
    fc.integer({ min: 0, max: 9_999_999 }),
    fc.constantFrom('', '.5', '.20', '.0001', '.2900'),
    fc.constantFrom('', '-'),
  )
  .map(([whole, fraction, sign]) => `${sign}${whole}${fraction}`);

/** Strings that a schema refines by a rule of its own: the ones of a few sorts that it accepts. */
function refined(schema: Described): fc.Arbitrary<string> {
  const accepts = (text: string): boolean =>
    (schema as unknown as { safeParse: (text: string) => { success: boolean } }).safeParse(text).success;
  const sorts = [
    { sample: '1941-06-02', of: fc.oneof(dates.map(String), fc.constantFrom('1941', '1941-06')) },
    { sample: '88', of: decimals },
    {
      sample: '09506000134352',
      of: fc.stringMatching(/^\d{13}$/).map((digits) => `${digits}${checkDigit(digits)}`),
    },
    { sample: 'Europe/London', of: fc.constantFrom('Europe/London', 'Europe/Paris', 'America/Argentina/Buenos_Aires') },
  ].filter(({ sample }) => accepts(sample));
  if (sorts.length === 0)
    throw new Error('a refined text of a new sort: say here what it accepts, or the search for one never ends');
  return fc.oneof(...sorts.map(({ of }) => of)).filter(accepts);
}

function strings(schema: Described): fc.Arbitrary<string> {
  const checks = schema.def.checks ?? [];
  const pattern =
    schema.def.pattern ?? checks.map((check) => check._zod.def.pattern).find((found) => found !== undefined);
  if (schema.def.format === 'email') return fc.emailAddress();
  if (pattern !== undefined && schema.def.format !== 'email') return fc.stringMatching(pattern);
  if (checks.some((check) => check._zod.def.check === 'custom')) return refined(schema);
  return texts;
}

function numbers(schema: Described): fc.Arbitrary<number> {
  let min = 0;
  let max = 100_000;
  let whole = false;
  let step: number | undefined;
  for (const check of schema.def.checks ?? []) {
    const { def } = check._zod;
    if (def.check === 'greater_than') min = Number(def.value);
    if (def.check === 'less_than') max = Number(def.value);
    if (def.check === 'number_format') whole = true;
    if (def.check === 'multiple_of') step = Number(def.value);
  }
  if (whole) return fc.integer({ min, max });
  if (step !== undefined)
    return fc.integer({ min: Math.ceil(min * 10), max: Math.floor(max * 10) }).map((tenths) => tenths / 10);
  return fc.double({ min, max, noNaN: true }).map((value) => (value === 0 ? 0 : value));
}

/** Any value a schema accepts, as far as it can be read off the schema; the caller filters by the schema itself. */
function valuesOf(schema: Described): fc.Arbitrary<unknown> {
  const { def } = schema;
  switch (def.type) {
    case 'readonly':
    case 'optional':
      return valuesOf(def.innerType ?? schema);
    case 'object': {
      const shape = def.shape ?? {};
      const required = Object.keys(shape).filter((key) => shape[key]?.def.type !== 'optional');
      return fc.record(Object.fromEntries(Object.entries(shape).map(([key, of]) => [key, valuesOf(of)])), {
        requiredKeys: required,
      });
    }
    case 'union':
      return fc.oneof(...(def.options ?? []).map(valuesOf));
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries ?? {}));
    case 'literal':
      return fc.constantFrom(...(def.values ?? []));
    case 'array':
      return fc.array(valuesOf(def.element ?? schema), { maxLength: 4 });
    case 'record':
      return fc.dictionary(texts, valuesOf(def.valueType ?? schema), { maxKeys: 4, noNullPrototype: true });
    case 'boolean':
      return fc.boolean();
    case 'number':
      return numbers(schema);
    case 'custom':
      return dates;
    default:
      return strings(schema);
  }
}

const bodiesOf = (kind: KindName): fc.Arbitrary<unknown> => {
  const { body } = kindNamed(kind);
  return valuesOf(body as unknown as Described)
    .filter((value) => body.safeParse(value).success)
    .map((value) => body.parse(value));
};

const moments: fc.Arbitrary<string> = fc.oneof(
  dates,
  fc
    .tuple(dates, fc.integer({ min: 0, max: 1439 }), fc.constantFrom('+00:00', '+01:00', '-05:00'))
    .map(([date, minute, offset]) => {
      const two = (value: number) => String(value).padStart(2, '0');
      return `${date}T${two(Math.floor(minute / 60))}:${two(minute % 60)}:00.000${offset}`;
    }),
  fc.constantFrom('2027-06-28T10:51:07.250+01:00', '2027-01-28T10:51:00.000Z', 'not a date'),
);

/** The field by which a kind names other entries. */
export const referring: Partial<Record<KindName, string>> = {
  'results-signed': 'results',
  withdrawal: 'entry',
  'symptom-cleared': 'entry',
  'prescriber-decision': 'about',
  'second-check': 'preparation',
  'looked-again': 'about',
};

export const draftsOf = (kind: KindName): fc.Arbitrary<NotedDraft> =>
  fc
    .record(
      {
        body: bodiesOf(kind),
        effectiveAt: moments,
        zone: fc.constantFrom('Europe/London', 'Europe/London', 'Europe/Paris'),
        id: fc.stringMatching(/^[a-z][a-z0-9]{0,3}$/),
        author: fc.record({
          staff: fc.constantFrom('nurse', 'jo', 'staff 12', 'signed'),
          role: fc.constantFrom(...roles),
        }),
        deviceAt: fc.constant('2026-03-03T09:00:00.000Z'),
        recordedAt: fc.constant('2026-03-03T09:00:01.000Z'),
        subject: fc.constantFrom<Subject>('patient/person', 'patient/person', 'session/thornbeck-2027-01-28'),
      },
      { requiredKeys: ['body', 'effectiveAt', 'zone', 'subject'] },
    )
    .map((parts) => ({ ...parts, kind, shape: kindNamed(kind).shape }));

/** Small ledgers whose labels are given once and whose references name lines that are there. */
export const ledgers: fc.Arbitrary<NotedDraft[]> = fc
  .tuple(
    fc.array(fc.constantFrom(...kindNames).chain(draftsOf), { minLength: 1, maxLength: 8 }),
    fc.array(fc.nat(), { minLength: 24, maxLength: 24 }),
  )
  .map(([drafts, picks]) => {
    const labelled = drafts.map((draft, index) =>
      draft.id === undefined ? draft : { ...draft, id: `${draft.id}${index}` },
    );
    const ids = labelled.flatMap((draft) => draft.id ?? []);
    let pick = 0;
    const anyId = (): string | undefined => ids[(picks[pick++ % picks.length] ?? 0) % Math.max(ids.length, 1)];
    return labelled.flatMap((draft): NotedDraft[] => {
      const field = referring[draft.kind as KindName];
      const id = anyId();
      const body = draft.body as object;
      if (field !== undefined && id === undefined) return [];
      if (field === 'results') return [{ ...draft, body: { ...body, results: [id] } }];
      if (field !== undefined) return [{ ...draft, body: { ...body, [field]: id } }];
      return [(picks[pick % picks.length] ?? 0) % 5 === 0 && id !== undefined ? { ...draft, amends: id } : draft];
    });
  });
