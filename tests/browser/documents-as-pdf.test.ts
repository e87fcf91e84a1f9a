/**
 * What goes to paper, as the browser prints it to a PDF: tagged, titled, in its language, with headings that skip no level, fonts
 * inside it, and the text in the order of the page. The structure is read by Poppler's own tools where they are there.
 */
import type { WrittenLetterView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { referralOf, sessionOn, setUp, workUp } from '../../apps/server/test/support/own-server.ts';
import { missingPoppler, readByPoppler } from '../support/poppler.ts';
import { type Service, service, tablet } from '../support/service.ts';

let at: Service;
const pack = '/api/people/wilhelmina/patient-pack/document';
const record = (kind: string, body: object) => ({
  name: 'record',
  patient: 'wilhelmina',
  line: { kind, body, effectiveAt: '2026-11-25' },
});
const contact = {
  address: '1 Heron Street, Thornbeck',
  dentist: 'Mill Lane Dental Practice',
  familyDoctor: 'Dr A. Penrose, Thornbeck Surgery',
};
const unitLetters = { postalAddress: '4 Weir Lane, Thornbeck', language: 'en-GB', answerWithinDays: 14 };
let dentist = '';

beforeAll(async () => {
  at = await service();
  const { server } = at;
  await setUp(server);
  const { units } = await server.read<{ units: Record<string, unknown>[] }>('/api/settings', 'lead');
  const { unit: _u, protocolVersion: _v, protocolReviewBy: _r, protocolUnsigned: _s, ...body } = units[0] ?? {};
  await server.done('lead', { name: 'set unit', unit: 'thornbeck', body: { ...body, letters: unitLetters } });
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina');
  await server.done('nurse', sessionOn('s1', '2026-12-03'));
  await server.done('clerk', { name: 'book', patient: 'wilhelmina', session: 's1', place: 1 });
  await server.done('clerk', record('contact', contact));
  const { sheet, text } = await server.read<WrittenLetterView>(
    '/api/people/wilhelmina/written-letter?to=dentist&about=request',
  );
  const letter = { to: 'dentist', about: 'request', version: sheet.version, text, sheet, chaseOn: '2026-12-09' };
  dentist = (await server.done('nurse', record('letter', letter))).entries[0]?.id ?? '';
});
afterAll(() => at.close());

async function pdfOf(path: string): Promise<Buffer> {
  const answer = await at.server.ask(path, { as: 'nurse' });
  expect([path, answer.statusCode]).toEqual([path, 200]);
  const page = await at.visitor(tablet);
  await page.setContent(answer.body);
  const pdf = await page.pdf({ preferCSSPageSize: true, tagged: true, outline: true });
  await page.context().close();
  return pdf;
}

const missing = missingPoppler();
if (missing !== undefined)
  it(`OPTIONAL, NOT RUN HERE: PDFs by Poppler (${missing})`, () => expect(missing).toMatch(/is not here/));

const documents: readonly (readonly [string, () => string, string, RegExp, number])[] = [
  ['the pack', () => `${pack}?liver=fine`, 'en-GB', /^Getting ready for your drip · /, 3],
  ['the pack in American English, very large', () => `${pack}?size=very+large&language=en-US`, 'en-US', /^Getting /, 3],
  ['the easy page', () => `${pack}?easy=yes&size=large&liver=fine`, 'en-GB', /^Your drip on one page$/, 1],
  ['the questions on paper', () => '/api/people/wilhelmina/own-page/questions', 'en-GB', /^Before your visit/, 1],
  [
    'a letter with its form',
    () => `/api/people/wilhelmina/letters/${dentist}/document`,
    'en-GB',
    /^Please check teeth/,
    2,
  ],
  ['the whole notes', () => '/api/people/wilhelmina/notes', 'en-GB', /^Notes of Wilhelmina/, 1],
];

describe.each(documents)('%s', (_, path, language, title, leastPages) => {
  it('is tagged, titled and in its language', async () => {
    const pdf = await pdfOf(path());
    const raw = pdf.toString('latin1');
    expect(raw).toMatch(/\/MarkInfo <<\/Type \/MarkInfo\s*\/Marked true>>/);
    expect(raw).toContain(`/Lang (${language})`);
    expect(raw.match(/\/Type \/Page\b/g)?.length).toBeGreaterThanOrEqual(leastPages);
    if (missing !== undefined) return;
    const { tagged, title: titled, pages, headings, elements, fontsNotEmbedded, text } = readByPoppler(pdf);
    expect([tagged, fontsNotEmbedded]).toEqual([true, []]);
    expect(titled).toMatch(title);
    expect(pages).toBeGreaterThanOrEqual(leastPages);
    expect(headings[0]).toBe(1);
    const skipped = headings.filter((level, index) => level > (headings[index - 1] ?? 0) + 1);
    expect([headings.length > 0, skipped]).toEqual([true, []]);
    // A table has headings, a list its items: none of one without the other.
    const has = (name: string): boolean => (elements.get(name) ?? 0) > 0;
    expect([has('TH'), has('LI')]).toEqual([has('Table'), has('L')]);
    expect(text).toContain('Wilhelmina Arkwright-Poe');
  });
});
