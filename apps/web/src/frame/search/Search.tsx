/* oxlint-disable jsx-a11y/prefer-tag-over-role, jsx-a11y/no-noninteractive-element-to-interactive-role -- a combobox after the ARIA practices: HTML has no list whose options hold two lines */
import { useNavigate } from '@tanstack/react-router';
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { dotted } from '../../words/texts.ts';
import css from './Search.module.css';
import { useFound } from './use-found.ts';

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));

/** Finds a person from anywhere: name, former name, number, birth date. Ctrl K or / leads here. */
export function Search() {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  /** Where the keys led here from: Escape leads back. */
  const cameFrom = useRef<Element>(null);
  const navigate = useNavigate();
  const [typed, setTyped] = useState('');
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const { found, settled, trouble } = useFound(typed);
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent): void => {
      const asked =
        (event.key === 'k' && (event.ctrlKey || event.metaKey)) || (event.key === '/' && !typing(event.target));
      if (!asked) return;
      event.preventDefault();
      if (document.activeElement !== input.current) cameFrom.current = document.activeElement;
      input.current?.focus();
      input.current?.select();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  const go = (index: number): void => {
    const person = found[index];
    if (person === undefined) return;
    setOpen(false);
    setTyped('');
    input.current?.blur();
    void navigate({ to: '/people/$patient', params: { patient: person.patient } });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setOpen(true);
      const step = event.key === 'ArrowDown' ? 1 : -1;
      setAt((before) => (found.length === 0 ? 0 : (before + step + found.length) % found.length));
    } else if (event.key === 'Enter') {
      event.preventDefault();
      go(at);
    } else if (event.key === 'Escape') {
      // Not the search field's own clearing: that would leave the focus in an empty field that looks closed.
      event.preventDefault();
      setOpen(false);
      setTyped('');
      input.current?.blur();
      if (cameFrom.current instanceof HTMLElement && cameFrom.current.isConnected) cameFrom.current.focus();
      cameFrom.current = null;
    }
  };
  const shown = open && typed.trim().length > 1;
  return (
    <search className={css['search']}>
      <label className="unseen" htmlFor={`${id}-input`}>
        Find a person
      </label>
      <input
        ref={input}
        id={`${id}-input`}
        className={css['input']}
        type="search"
        role="combobox"
        placeholder="Find a person: name, number, birth date"
        autoComplete="off"
        spellCheck={false}
        aria-expanded={shown}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={shown && found[at] !== undefined ? `${id}-${at}` : undefined}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(0);
          setOpen(true);
        }}
        onFocus={() => setOpen(true)}
        onBlur={() => setOpen(false)}
        onKeyDown={onKeyDown}
      />
      <kbd className={css['key']} aria-hidden="true">
        /
      </kbd>
      {shown && (
        <ul className={css['list']} role="listbox" id={`${id}-list`} aria-label="People found">
          {found.map((person, index) => (
            // A combobox: its keys are handled by the field.
            // oxlint-disable-next-line jsx-a11y/click-events-have-key-events -- the keys are handled by the field, as a combobox wants
            <li
              key={person.patient}
              id={`${id}-${index}`}
              role="option"
              tabIndex={-1}
              aria-selected={index === at}
              className={css['option']}
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => go(index)}
            >
              <strong>{person.name}</strong>{' '}
              {person.matched !== '' && person.matched !== 'name' && <em>{person.matched}</em>}
              <span>{dotted(person.born, person.number, person.standing)}</span>
            </li>
          ))}
          {found.length === 0 && (
            <li className={css['none']} role="option" aria-selected="false" aria-disabled="true">
              {trouble === null
                ? settled
                  ? 'Nobody found. Try the number or the birth date.'
                  : 'looking …'
                : trouble.message}
            </li>
          )}
        </ul>
      )}
    </search>
  );
}
