import { useState } from 'react';
import { Field, type FieldWords } from '../../fields/Field.tsx';
import fieldCss from '../../fields/Field.module.css';

/** The separator between the fields of a code, as a sign one can see; scanners send it as Ctrl and ], some as F8. */
const separatorShown = '\u241D';

type Props = FieldWords & { readonly busy: boolean; readonly onScan: (code: string) => void };

/**
 * A scanner is a keyboard: it types the code and ends with Enter, which here reads the code and never sends the form. The
 * control character between two fields would be lost in a text field, so it is caught and shown.
 */
export function ScanField({ busy, onScan, ...words }: Props) {
  const [typed, setTyped] = useState('');
  return (
    <Field {...words}>
      {(wired) => (
        <input
          {...wired}
          className={fieldCss['input']}
          style={{ minHeight: '48px' }}
          type="text"
          inputMode="none"
          autoComplete="off"
          spellCheck={false}
          // oxlint-disable-next-line jsx-a11y/no-autofocus -- the scanner types where the focus is
          autoFocus
          value={typed}
          aria-busy={busy}
          onChange={(event) => setTyped(event.target.value.replaceAll('\u001D', separatorShown))}
          onKeyDown={(event) => {
            if ((event.ctrlKey && event.key === ']') || event.key === 'F8') {
              event.preventDefault();
              setTyped((before) => before + separatorShown);
            }
            if (event.key !== 'Enter') return;
            event.preventDefault();
            if (!busy) onScan(event.currentTarget.value);
            setTyped('');
          }}
        />
      )}
    </Field>
  );
}
