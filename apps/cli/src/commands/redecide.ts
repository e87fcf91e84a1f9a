/** Decides everyone again from the notes: what an adopted protocol makes of the whole register. */
import { verdicts } from '@twelvemonth/clinical';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, dateOption, readOptions } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { redecide } from '../redecide.ts';

/** Told this often, in people. */
const TOLD_EVERY = 5_000;

export const redecideCommand: Command = {
  summary: 'decide everyone again under what is in force',
  help: `twelvemonth redecide [options]

Works out everyone's verdict of today and window again from the notes, beside a running server or without one, and counts
them. Progress is told on standard error; Ctrl-C stops it after the people in hand, and what was counted is printed.
Ends with 1 if it was stopped.

  --against VERSION  count how many the unit's protocol of that version would decide otherwise
  --today DATE       the day asked on (today at the unit)
  --json             the counts as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      against: { type: 'string' },
      today: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    const today = dateOption('today', values.today);
    let stopped = false;
    const stop = (): void => void (stopped = true);
    process.once('SIGINT', stop);
    try {
      const found = await withNotes(values, output, async (reader) =>
        redecide(reader, {
          today,
          against: values.against,
          told: (done, of) => {
            if (done % TOLD_EVERY < 200 || done === of) output.aside(`${done} of ${of}`);
          },
          isStopped: () => stopped,
        }),
      );
      const isWhole = found.done === found.people;
      if (values.json) output.out(jsonText(found));
      else {
        const rows = [
          ...verdicts.map((verdict): [string, string] => [verdict, String(found.verdicts[verdict])]),
          ['with a window', String(found.withWindow)],
          ['left out', String(found.leftOut)],
          ...(found.otherwise === undefined
            ? []
            : [
                [`verdict otherwise under ${values.against}`, String(found.otherwise.verdict)],
                [`window otherwise under ${values.against}`, String(found.otherwise.window)],
              ]),
        ];
        output.out(columnsText([isWhole ? 'everyone' : 'stopped', `${found.done} of ${found.people}`], rows));
      }
      return isWhole ? exitCodes.done : exitCodes.no;
    } finally {
      process.removeListener('SIGINT', stop);
    }
  },
};
